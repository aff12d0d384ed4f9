import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import { isTooSteep } from './geometry.ts';
import type { RateLimits, StageView } from './view.ts';

/** Depth of the line at a moment, metres. */
export function depthAtM(recording: Recording, s: number): number {
  const row = (s * TICKS_PER_S - recording.startTick) / TICKS_PER_ROW;
  const at = (i: number) => recording.at(Math.min(Math.max(i, 0), recording.rows - 1), 'depthM');
  const low = Math.floor(row);
  return at(low) + (at(low + 1) - at(low)) * (row - low);
}

/** The row of a recording that was the last at a tick. */
export function rowAtTick(recording: Recording, tick: number): number {
  const row = Math.floor((tick - recording.startTick) / TICKS_PER_ROW);
  return Math.min(Math.max(row, 0), recording.rows - 1);
}

/** The limits under which the line was drawn at a moment. */
export function limitsAt({ limits, limitsBefore }: StageView, s: number): RateLimits {
  let found = limits;
  for (const before of limitsBefore ?? []) if (before.fromS <= s) found = before.limits;
  return found;
}

/** A run of the track that is all single or all doubled, as x, y pairs. */
export interface Stretch {
  readonly doubled: boolean;
  readonly points: readonly number[];
}

/** Splits a polyline of seconds and depths where it turns steeper than allowed, or back; neighbours share a point. */
export function stretchesOf(
  seconds: readonly number[],
  depthsM: readonly number[],
  limitsAt: (s: number) => RateLimits,
): Stretch[] {
  const out: { doubled: boolean; points: number[] }[] = [];
  for (let i = 1; i < seconds.length; i++) {
    const speed = (depthsM[i]! - depthsM[i - 1]!) / (seconds[i]! - seconds[i - 1]!);
    const limits = limitsAt(seconds[i]!);
    const doubled = isTooSteep(speed, limits.upMps, limits.downMps);
    const last = out[out.length - 1];
    if (last?.doubled === doubled) last.points.push(seconds[i]!, depthsM[i]!);
    else out.push({ doubled, points: [seconds[i - 1]!, depthsM[i - 1]!, seconds[i]!, depthsM[i]!] });
  }
  return out;
}

/** The same stretches without those too short to be seen, which take the kind of the one before. */
export function calmed(stretches: readonly Stretch[], leastS: number): Stretch[] {
  const out: { doubled: boolean; points: number[] }[] = [];
  stretches.forEach(({ doubled, points }, i) => {
    const lasts = points[points.length - 2]! - points[0]!;
    const inner = i > 0 && i < stretches.length - 1;
    const last = out[out.length - 1];
    if (last && (last.doubled === doubled || (inner && lasts < leastS))) last.points.push(...points.slice(2));
    else out.push({ doubled, points: [...points] });
  });
  return out;
}
