import type { Rig } from '../diver/index.ts';
import { TICKS_PER_S } from '../dive/index.ts';
import { flyLesson, type FlownLesson } from './fly.ts';
import type { Lesson } from './lesson.ts';
import type { LessonResult } from './mark.ts';
import type { LessonRun } from './run.ts';
import type { Flyer, Proof } from './watch.ts';

/** Share of seeds on which what is expected must come. */
export const MOST = 0.95;

/** What came of one flyer over some seeds. */
export interface Flights {
  readonly passed: number;
  readonly flown: number;
  /** Ids of marks, steps and habits that went wrong, with in how many flights. */
  readonly faults: ReadonlyMap<string, number>;
  /** Mean of each mark, by its id. */
  readonly scores: ReadonlyMap<string, number>;
  readonly longestS: number;
}

/** Flies a lesson once for each seed. */
export function flights(lesson: Lesson, rig: Rig, by: Flyer, seeds: readonly number[]): Flights {
  const faults = new Map<string, number>();
  const scores = new Map<string, number>();
  let passed = 0;
  let longestS = 0;
  for (const seed of seeds) {
    const flown = flyLesson(lesson, rig, by, seed);
    if (flown.verdict === 'pass') passed++;
    for (const fault of faultsOf(flown)) faults.set(fault, (faults.get(fault) ?? 0) + 1);
    for (const { id, score } of flown.marks) scores.set(id, (scores.get(id) ?? 0) + score / seeds.length);
    longestS = Math.max(longestS, flown.dive.tick / TICKS_PER_S);
  }
  return { passed, flown: seeds.length, faults, scores, longestS };
}

/** Ids of what went wrong in a flown lesson. */
function faultsOf({ marks, demands, habits, run }: LessonResult & Pick<FlownLesson, 'run'>): Set<string> {
  return new Set([
    ...marks.filter(({ ok }) => !ok).map(({ id }) => id),
    ...demands.filter(({ met }) => !met).map(({ id }) => id),
    ...habits.map(({ id }) => id),
    ...missedSteps(run),
  ]);
}

function missedSteps({ phases }: LessonRun): string[] {
  return phases.filter(({ met }) => !met).map(({ id }) => id);
}

/** Whether flights came to what a proof says: on 95 of 100 seeds, and with the fault that it names. */
export function asExpected({ comes, fault }: Proof, { passed, flown, faults }: Flights): boolean {
  if (comes === 'pass') return passed >= MOST * flown;
  return flown - passed >= MOST * flown && (fault === '' || (faults.get(fault) ?? 0) >= MOST * flown);
}
