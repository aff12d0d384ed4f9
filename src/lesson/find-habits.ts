import { midBreathM3 } from '../diver/index.ts';
import { ROWS_PER_S } from './goal.ts';
import { evidenceOf, type Evidence, type Found } from './habit-evidence.ts';
import { lateFirstAction, noBreath, pressOvershoots, stopLeft, upAndDown } from './habit-holds.ts';
import { HABIT_KINDS } from './habit-kinds.ts';
import { kicksWhileHeavy, untilItMoves, wrongWay } from './habit-presses.ts';
import { allVented, jacketAsLift, stopAndGo, ventsLate } from './habit-ways.ts';
import type { Lesson } from './lesson.ts';
import type { Habit } from './mark.ts';
import type { LessonRun } from './run.ts';
import type { Flown, Trace } from './trace.ts';

/** Every habit that the rows of a flown lesson show, each once, at its first moment. */
export function findHabits(lesson: Lesson, run: LessonRun, flown: Flown, trace: Trace): Habit[] {
  const evidence = evidenceOf(lesson, run, flown, trace, midBreathM3(flown.rig));
  const all = [
    ...untilItMoves(evidence),
    ...kicksWhileHeavy(evidence),
    ...wrongWay(evidence),
    ...ofStretches(evidence),
  ];
  const first = all.sort((a, b) => a.from - b.from).filter((one, i) => all.findIndex(({ id }) => id === one.id) === i);
  return first.map(habitOf);
}

function ofStretches(evidence: Evidence): Found[] {
  return evidence.stretches.flatMap((stretch) => {
    if (stretch.kind === 'hold')
      return [pressOvershoots, upAndDown, lateFirstAction, noBreath, stopLeft].flatMap((look) =>
        look(evidence, stretch),
      );
    if (stretch.kind === 'descent') return allVented(evidence, stretch);
    return [jacketAsLift, ventsLate, stopAndGo].flatMap((look) => look(evidence, stretch));
  });
}

/** A moment as the debrief opens it: a statement where the detector may state, or else its question. */
export function habitOf({ id, from, to, words }: Found): Habit {
  const { question, states } = HABIT_KINDS[id];
  return { id, fromS: from / ROWS_PER_S, toS: to / ROWS_PER_S, words: states ? words : question, states, question };
}
