import type { Rig } from '../diver/index.ts';
import type { Lesson } from './lesson.ts';
import { flySteps } from './steps.ts';
import { hashOfText } from './text-hash.ts';

/** Digits that count: the last bits of a rig differ between engines, which changes nothing of what was asked. */
const DIGITS = 9;

/** Counts the changes of the marks' formulas: flights that were marked by others are not compared. Raise it with every change. */
const FORMULAS = 3;

/**
 * What a lesson is flown under, as a hash of 16 hexadecimal digits: diver and water, start, tasks, marks, their formulas and limits. Flights are
 * compared only where it is the same; words, questions and gauges do not count, and a start that is left to chance is one start.
 */
export function flownUnder(lesson: Lesson, rig: Rig): string {
  const { id, start, marks, markLimits } = lesson;
  const tasks = flySteps(lesson).map(({ id, goal, limits, keep, events }) => [id, goal, limits, keep, events]);
  const all = [FORMULAS, id, rig, start, tasks, marks, markLimits?.change ?? null];
  const text = JSON.stringify(all, (key, value: unknown) => (WORDS.has(key) ? undefined : rounded(value)));
  return hashOfText(text);
}

/** Keys of mere words. */
const WORDS: ReadonlySet<string> = new Set(['says', 'name', 'note']);

function rounded(value: unknown): unknown {
  return typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : value;
}
