import { rowsOf } from './goal.ts';
import type { Trace } from './trace.ts';

/** Rows from the first up to, not including, the last. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A measured value and the row on which the evidence for it is plainest. */
export interface Measured {
  readonly value: number;
  readonly row: number | null;
}

/** 1 at or below `good`, 0 at or above `bad`, straight between. */
export function lin(x: number, good: number, bad: number): number {
  return Math.min(Math.max((bad - x) / (bad - good), 0), 1);
}

/** Whether a value keeps a limit; a billionth above is rounding. */
export function keeps(value: number, limit: number): boolean {
  return value <= limit + 1e-9;
}

/**
 * Distance from a depth on each row of a window, metres; three bands where it was not held, or something carried the diver. What
 * carried him since the depth was reached, before the window opened, is added at the end: it set the place.
 */
export function distances(
  trace: Trace,
  window: Span,
  atM: number,
  bandM: number,
  reachedRow = window.from,
): Float64Array {
  let carried = 0;
  for (let row = reachedRow; row < Math.min(window.from, trace.rows); row++) carried += trace.contact[row]!;
  return Float64Array.from({ length: window.to - window.from + carried }, (_, i) => {
    if (i >= window.to - window.from) return 3 * bandM;
    const row = window.from + i;
    return row >= trace.rows || trace.contact[row] === 1 ? 3 * bandM : Math.abs(trace.depthM[row]! - atM);
  });
}

/** Mean of a function of the distances. */
export function meanOf(distancesM: Float64Array, of: (distanceM: number) => number): number {
  let sum = 0;
  for (const distance of distancesM) sum += of(distance);
  return distancesM.length > 0 ? sum / distancesM.length : 0;
}

/** Row of the greatest value in a span; null in an empty one. */
export function worstRow(span: Span, rows: number, of: (row: number) => number): Measured {
  let value = -Infinity;
  let row: number | null = null;
  for (let i = span.from; i < Math.min(span.to, rows); i++) {
    const here = of(i);
    if (here > value) {
      value = here;
      row = i;
    }
  }
  return { value, row };
}

/** What a running sum grew by over a span. */
export function grownBy(sum: Float64Array, span: Span): number {
  const last = Math.min(span.to, sum.length - 1);
  return last > span.from ? sum[last]! - sum[span.from]! : 0;
}

/** Seconds of a span as far as it was recorded. */
export function recordedS(trace: Trace, span: Span): number {
  return Math.max(0, Math.min(span.to, trace.rows - 1) - span.from) / rowsOf(1);
}

/**
 * Litres, at the depth of the moment, that were let in and later out again: each add fills a stock, each vent empties it first
 * and counts. The row is that of the vent that counts most.
 */
export function toAndFroL(trace: Trace, span: Span): Measured {
  let stock = 0;
  let value = 0;
  let most = 0;
  let row: number | null = null;
  for (let i = span.from + 1; i <= Math.min(span.to, trace.rows - 1); i++) {
    stock += (trace.letInM3[i]! - trace.letInM3[i - 1]!) * 1e3;
    const counts = Math.min((trace.letOutM3[i]! - trace.letOutM3[i - 1]!) * 1e3, stock);
    stock -= counts;
    value += counts;
    if (counts > most) {
      most = counts;
      row = i;
    }
  }
  return { value, row };
}

/** A stretch that was faster than a limit over 3 s, and the metres that it led further than the limit allows. */
export interface Excess extends Span {
  readonly metres: number;
}

/** Every stretch of a span that was faster than a limit, in order. @param way 1 down, -1 up */
export function excesses(trace: Trace, span: Span, limitMps: number, way: 1 | -1): Excess[] {
  const found: { from: number; to: number; metres: number }[] = [];
  for (let row = span.from; row < Math.min(span.to, trace.rows); row++) {
    const over = way * trace.slowMps[row]! - limitMps;
    if (over <= 0) continue;
    const last = found[found.length - 1];
    if (last?.to === row) {
      last.to = row + 1;
      last.metres += over / rowsOf(1);
    } else found.push({ from: row, to: row + 1, metres: over / rowsOf(1) });
  }
  return found;
}

/** Metres climbed faster than a limit, and where it was exceeded most. */
export function excessClimbM(trace: Trace, span: Span, limitMps: number): Measured {
  const most = worstRow(span, trace.rows, (row) => -trace.slowMps[row]!);
  const value = excesses(trace, span, limitMps, -1).reduce((sum, { metres }) => sum + metres, 0);
  return { value, row: value > 0 ? most.row : null };
}

/** The stretches of rows of which something is so. */
export function stretchesWhere(from: number, to: number, is: (row: number) => boolean): Span[] {
  const found: { from: number; to: number }[] = [];
  for (let row = from; row < to; row++) {
    if (!is(row)) continue;
    const last = found[found.length - 1];
    if (last?.to === row) last.to = row + 1;
    else found.push({ from: row, to: row + 1 });
  }
  return found;
}
