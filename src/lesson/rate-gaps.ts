import { HEAD_OUT_M } from '../diver/index.ts';
import { ascentSpan } from './ascent-mark.ts';
import type { Lesson } from './lesson.ts';
import { markLimits } from './limits.ts';
import { ascentTaskOf, holdOf } from './mark-tasks.ts';
import { excesses, type Excess, type Span } from './measures.ts';
import { ROWS_PER_S, rowsOf } from './rows.ts';
import type { FlownPhase, LessonRun } from './run.ts';
import { flySteps } from './steps.ts';
import type { Trace } from './trace.ts';

/**
 * How far a stretch led beyond the steepest line that is allowed. Depths are means over the 3 s by which a speed is judged, and
 * moments the middle of those, so that the gap is what the mark counts.
 */
export interface RateGap {
  readonly way: 'up' | 'down';
  readonly mpmin: number;
  readonly metres: number;
  readonly fromS: number;
  readonly fromM: number;
  readonly toS: number;
  /** Where the steepest line allowed leads, and where the diver was. */
  readonly allowedM: number;
  readonly reachedM: number;
}

/** Climbs of an ascent's mark as it counts them, and of the steps besides whatever is faster than their own limits. */
export function gapsOf(lesson: Lesson, run: LessonRun, trace: Trace): RateGap[] {
  const gaps: RateGap[] = [];
  const limits = markLimits(lesson.markLimits?.change ?? {});
  const marked: Span[] = [];
  for (const task of lesson.marks) {
    if (task.mark !== 'ascent') continue;
    const { goal, reachedRow } = holdOf(lesson, run, task.hold);
    if (reachedRow === null) continue;
    const span = ascentSpan(trace, ascentTaskOf(lesson, run, task, goal, reachedRow));
    marked.push(span);
    gaps.push(
      ...excesses(trace, span, limits.ascentMpmin / 60, -1).map((one) => gapOf(trace, one, limits.ascentMpmin, -1)),
    );
  }
  for (const { id, limits: its } of flySteps(lesson)) {
    const phase = run.phases.find((one) => one.id === id);
    if (!phase) continue;
    const span = underWater(trace, phase);
    const own = (mpmin: number | null, way: 1 | -1) =>
      mpmin === null ? [] : excesses(trace, span, mpmin / 60, way).map((one) => gapOf(trace, one, mpmin, way));
    gaps.push(...own(its.downMpmin, 1));
    if (!marked.some(({ from, to }) => span.from < to && span.to > from)) gaps.push(...own(its.upMpmin, -1));
  }
  return gaps.sort((a, b) => a.fromS - b.fromS);
}

/** Rows of a phase; one that begins under water ends where the head comes out. */
function underWater(trace: Trace, { fromRow, toRow }: FlownPhase): Span {
  const to = Math.min(toRow ?? trace.rows, trace.rows);
  if (trace.depthM[fromRow]! < HEAD_OUT_M) return { from: fromRow, to };
  const out = trace.depthM.subarray(fromRow, to).findIndex((depthM) => depthM < HEAD_OUT_M);
  return { from: fromRow, to: out < 0 ? to : fromRow + out + 1 };
}

function gapOf(trace: Trace, { from, to, metres }: Excess, mpmin: number, way: 1 | -1): RateGap {
  const back = rowsOf(3);
  /** Middle and mean depth of the rows before one. */
  const before = (row: number) => {
    const rows = trace.depthM.subarray(Math.max(0, row - back), Math.max(1, row));
    const first = Math.max(0, row - back);
    return {
      atS: (first + (rows.length - 1) / 2) / ROWS_PER_S,
      depthM: rows.reduce((sum, depthM) => sum + depthM, 0) / rows.length,
    };
  };
  const [begin, end] = [before(from), before(to)];
  const allowedM = begin.depthM + (way * (mpmin / 60) * (to - from)) / ROWS_PER_S;
  return {
    way: way < 0 ? 'up' : 'down',
    mpmin,
    metres,
    fromS: begin.atS,
    fromM: begin.depthM,
    toS: end.atS,
    allowedM,
    reachedM: allowedM + way * metres,
  };
}
