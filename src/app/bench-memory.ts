import type { BenchLesson, BenchRun } from '../lesson/bench.ts';

const KEY = 'midwater-bench-lesson';

/** A lesson at the bench as it was left, and whether hands of the program showed something of it: then it is nobody's result. */
export interface LeftAtBench {
  readonly run: BenchRun;
  readonly wasShown: boolean;
}

/** Keeps where a lesson at the bench is for as long as the tab lives; a browser may refuse. */
export function keepBenchRun(view: Window, run: BenchRun, wasShown: boolean): void {
  try {
    view.sessionStorage.setItem(KEY, JSON.stringify({ run, wasShown } satisfies LeftAtBench));
  } catch {
    // It begins anew after a reload, and nothing else is lost.
  }
}

/** What was left of a lesson; undefined where there is nothing, or nothing that fits it. */
export function leftBenchRun(view: Window, lesson: BenchLesson): LeftAtBench | undefined {
  try {
    const found = JSON.parse(view.sessionStorage.getItem(KEY) ?? 'null') as LeftAtBench | null;
    return found && fits(found.run, lesson) ? { run: found.run, wasShown: found.wasShown === true } : undefined;
  } catch {
    return undefined;
  }
}

function fits({ lessonId, step, answers, tries, passedS }: BenchRun, { id, steps }: BenchLesson): boolean {
  const known = [...answers, ...tries].every((one) => steps.some((other) => other.id === one.id));
  return lessonId === id && Number.isInteger(step) && step >= 0 && step <= steps.length && known && passedS >= 0;
}
