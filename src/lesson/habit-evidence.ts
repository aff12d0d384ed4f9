import { HEAD_OUT_M } from '../diver/index.ts';
import { TICKS_PER_ROW, type ControlChange } from '../dive/index.ts';
import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import { rowsOf } from './goal.ts';
import type { HabitId } from './habit-kinds.ts';
import type { Lesson } from './lesson.ts';
import type { Span } from './measures.ts';
import type { LessonRun } from './run.ts';
import { flySteps } from './steps.ts';
import type { Flown, Trace } from './trace.ts';

/** A stretch of the dive with one thing to do in it. A climb ends where the head comes out. */
export type Stretch = Span &
  (
    | { readonly kind: 'climb' | 'descent'; readonly toM: number }
    | { readonly kind: 'hold'; readonly atM: number; readonly bandM: number; readonly afterClimb: boolean }
  );

/** A button held down: gas in (1) or out (−1). */
export interface Press extends Span {
  readonly way: -1 | 1;
  readonly seconds: number;
}

/** A moment of a habit. */
export interface Found extends Span {
  readonly id: HabitId;
  /** A statement, without its full stop. */
  readonly words: string;
}

/** What detectors look at. */
export interface Evidence {
  readonly trace: Trace;
  /** Net force at mid-lung, kilograms of pull, up positive. */
  readonly lightKgf: Float64Array;
  /** Litres let in and out on each row, at the depth of the moment. */
  readonly inL: Float64Array;
  readonly outL: Float64Array;
  /** Mean lung volume, m³, over the last 6 s: about one breath, so that breathing alone does not show. */
  readonly lungMeanM3: Float64Array;
  readonly midLungM3: number;
  readonly stretches: readonly Stretch[];
  readonly presses: readonly Press[];
}

/** Gathers the evidence of a flown lesson. */
export function evidenceOf(lesson: Lesson, run: LessonRun, flown: Flown, trace: Trace, midLungM3: number): Evidence {
  return {
    trace,
    midLungM3,
    lightKgf: trace.midNetN.map((netN) => netN / STANDARD_GRAVITY_MPS2),
    inL: growths(trace.letInM3),
    outL: growths(trace.letOutM3),
    lungMeanM3: meanOver(trace.lungM3, rowsOf(6)),
    stretches: stretchesOf(lesson, run, trace),
    presses: pressesOf(flown.changes, flown.recording.startTick, trace.rows),
  };
}

/** What a running sum in m³ grew by on each row, litres. */
function growths(sum: Float64Array): Float64Array {
  return sum.map((now, row) => (row === 0 ? 0 : (now - sum[row - 1]!) * 1e3));
}

/** Mean over the last so many rows, or over those so far. */
export function meanOver(column: Float64Array, rows: number): Float64Array {
  let sum = 0;
  return column.map((now, row) => {
    sum += now;
    if (row >= rows) sum -= column[row - rows]!;
    return sum / Math.min(row + 1, rows);
  });
}

function stretchesOf(lesson: Lesson, run: LessonRun, trace: Trace): Stretch[] {
  const steps = flySteps(lesson);
  const stretches: Stretch[] = [];
  for (const phase of run.phases) {
    const goal = steps.find(({ id }) => id === phase.id)?.goal;
    const from = phase.fromRow;
    const to = Math.min(phase.toRow ?? trace.rows, trace.rows);
    if (!goal || from >= to) continue;
    const before = stretches[stretches.length - 1];
    if (goal.kind === 'hold')
      stretches.push({
        kind: 'hold',
        from,
        to,
        atM: goal.atM,
        bandM: goal.bandM,
        afterClimb: before?.kind === 'climb',
      });
    else if (goal.kind === 'travel')
      stretches.push({ kind: goal.toM < trace.depthM[from]! ? 'climb' : 'descent', from, to, toM: goal.toM });
    else if (goal.kind === 'float' && trace.depthM[from]! > HEAD_OUT_M) {
      let out = from;
      while (out < to && trace.depthM[out]! >= HEAD_OUT_M) out++;
      stretches.push({ kind: 'climb', from, to: out, toM: 0 });
    }
  }
  return stretches;
}

/** Every press of a button that moves gas, whatever the vessel. */
export function pressesOf(changes: readonly ControlChange[], startTick: number, rows: number): Press[] {
  const presses: Press[] = [];
  const row = (tick: number) => Math.min(Math.max((tick - startTick) / TICKS_PER_ROW, 0), rows - 1);
  const endTick = startTick + (rows - 1) * TICKS_PER_ROW;
  for (const way of [1, -1] as const) {
    let since: number | null = null;
    for (const { tick, controls } of [...changes, { tick: endTick, controls: null }]) {
      const down =
        controls !== null &&
        (way > 0
          ? controls.jacketAdd + controls.oral + controls.suitAdd > 0
          : controls.jacketVent + controls.suitVent > 0);
      if (down) since ??= tick;
      else if (since !== null) {
        const seconds = (tick - since) / (TICKS_PER_ROW * rowsOf(1));
        if (tick > since) presses.push({ way, from: Math.floor(row(since)), to: Math.ceil(row(tick)), seconds });
        since = null;
      }
    }
  }
  return presses.sort((a, b) => a.from - b.from);
}
