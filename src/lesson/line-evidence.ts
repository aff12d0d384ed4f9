import { pressesOf } from './habit-evidence.ts';
import type { FlyStep, Lesson, MarkId } from './lesson.ts';
import { markLimits } from './limits.ts';
import type { Mark, ReportWord } from './mark.ts';
import { holdOf } from './mark-tasks.ts';
import { stretchesWhere, type Span } from './measures.ts';
import { gapsOf, type RateGap } from './rate-gaps.ts';
import { ROWS_PER_S } from './rows.ts';
import type { LessonRun } from './run.ts';
import { flySteps } from './steps.ts';
import { traceOf, type Flown, type Trace } from './trace.ts';
import { heldOf } from './window-evidence.ts';

/** Where on the line of a flown lesson its marks found what they say: plain data, seconds since the start of the dive. */
export interface LineEvidence {
  readonly tasks: readonly FlownTask[];
  readonly gaps: readonly RateGap[];
  readonly holds: readonly HeldPlace[];
  readonly fins: readonly FinStretch[];
  /** How often gas was let in or out. */
  readonly presses: number;
}

/** What was flown from a moment to another: neighbouring steps of one mark together. */
export interface FlownTask {
  /** The mark's name; the step's title where no mark looks at it. */
  readonly title: string;
  readonly fromS: number;
  readonly toS: number;
  /** The mark's word for this flight; null where no mark looks at it. */
  readonly word: ReportWord | null;
}

/** How a depth was held within the window that a mark looks at. */
export interface HeldPlace {
  readonly fromS: number;
  readonly toS: number;
  readonly atM: number;
  readonly bandM: number;
  /** Typical distance from the depth: the mark's raw value. */
  readonly rmsM: number;
  /** Seconds that do not count as in the band, and where they lie. */
  readonly outS: number;
  readonly out: readonly { readonly fromS: number; readonly toS: number }[];
}

/** Thrust of fins, newtons, up positive, for each tenth of a second from a moment on. */
export interface FinStretch {
  readonly fromS: number;
  readonly upN: readonly number[];
}

/** Reads where on the line the marks of a lesson have their evidence. @param marks what judging it came to */
export function lineEvidence(lesson: Lesson, run: LessonRun, flown: Flown, marks: readonly Mark[]): LineEvidence {
  const trace = traceOf(flown);
  return {
    tasks: tasksOf(lesson, run, marks, trace.rows),
    gaps: gapsOf(lesson, run, trace),
    holds: holdsOf(lesson, run, trace),
    fins: finsOf(trace),
    presses: pressesOf(flown.changes, flown.recording.startTick, trace.rows).length,
  };
}

/** The mark that is named over a step: its hover before the way that led there. */
function markAbout(lesson: Lesson, { id }: FlyStep): MarkId | null {
  const hover = lesson.marks.find((task) => task.mark === 'hover' && task.hold === id);
  const task = hover ?? lesson.marks.find((one) => stepsOf(one).includes(id));
  return task?.mark ?? null;
}

function stepsOf(task: Lesson['marks'][number]): readonly string[] {
  if (task.mark === 'hover') return [task.hold];
  return task.mark === 'descent' ? [task.travel, task.hold] : [task.travel, task.hold, task.surface];
}

function tasksOf(lesson: Lesson, run: LessonRun, marks: readonly Mark[], rows: number): FlownTask[] {
  const tasks: (FlownTask & { readonly mark: MarkId | null })[] = [];
  for (const step of flySteps(lesson)) {
    const phase = run.phases.find(({ id }) => id === step.id);
    if (!phase) continue;
    const mark = markAbout(lesson, step);
    const last = tasks[tasks.length - 1];
    const toS = (phase.toRow ?? rows - 1) / ROWS_PER_S;
    if (mark !== null && last?.mark === mark) tasks[tasks.length - 1] = { ...last, toS };
    else {
      const word = marks.find(({ id }) => id === mark)?.word ?? null;
      tasks.push({ title: mark ?? step.title, mark, fromS: phase.fromRow / ROWS_PER_S, toS, word });
    }
  }
  return tasks.map(({ title, fromS, toS, word }) => ({ title, fromS, toS, word }));
}

function holdsOf(lesson: Lesson, run: LessonRun, trace: Trace): HeldPlace[] {
  const limits = markLimits(lesson.markLimits?.change ?? {});
  const ids = [...new Set(lesson.marks.map(({ hold }) => hold))];
  return ids.flatMap((id) => {
    const { goal, reachedRow } = holdOf(lesson, run, id);
    if (reachedRow === null) return [];
    const { window, rmsM, out, outS } = heldOf(trace, goal, reachedRow, limits);
    const { atM, bandM } = goal;
    return [{ ...secondsOf(window), atM, bandM, rmsM, outS, out: out.map(secondsOf) }];
  });
}

function finsOf(trace: Trace): FinStretch[] {
  const upN = (row: number) => {
    const grown = (sum: Float64Array) => sum[row]! - sum[row - 1]!;
    return (grown(trace.finsUpNs) - grown(trace.finsDownNs)) * ROWS_PER_S;
  };
  return stretchesWhere(1, trace.rows, (row) => upN(row) !== 0).map(({ from, to }) => ({
    fromS: (from - 1) / ROWS_PER_S,
    upN: Array.from({ length: to - from }, (_, i) => upN(from + i)),
  }));
}

function secondsOf({ from, to }: Span): { readonly fromS: number; readonly toS: number } {
  return { fromS: from / ROWS_PER_S, toS: to / ROWS_PER_S };
}
