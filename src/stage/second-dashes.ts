import { SECONDS_PER_METRE_LAW } from './geometry.ts';

/** Ink and gaps of the second diver's line, in units: a dash, a dot, a dash. Neither a ghost's long dash nor the dots of a forecast. */
export const DASH_DOT = [22, 7, 4.5, 7] as const;

/** A stretch of ink: seconds and depths in pairs. */
export interface Dash {
  readonly points: readonly number[];
  /** Steeper than its limit, on the whole. */
  readonly speedMps: number;
}

/** Length of a line on paper up to a row, in metres of depth: a second counts as the law of the paper has it, so that it holds at any zoom. */
export function lengthTo(before: number, fromM: number, toM: number, seconds: number): number {
  return before + Math.hypot(seconds * SECONDS_PER_METRE_LAW, toM - fromM);
}

/**
 * Cuts a line into the dashes and dots of its pattern, counted along the line from its beginning, so that pieces of it that are drawn
 * by themselves join.
 * @param lengths along the line up to each point, metres, rising
 * @param patternM dashes and gaps in turn, metres
 */
export function dashesAlong(
  seconds: readonly number[],
  depthsM: readonly number[],
  lengths: readonly number[],
  patternM: readonly number[],
): Dash[] {
  const period = patternM.reduce((sum, one) => sum + one, 0);
  const [from, to] = [lengths[0] ?? 0, lengths.at(-1) ?? 0];
  const out: Dash[] = [];
  for (let turn = Math.floor(from / period); turn * period < to; turn++) {
    let at = turn * period;
    patternM.forEach((long, i) => {
      const [begin, end] = [Math.max(at, from), Math.min(at + long, to)];
      at += long;
      if (i % 2 === 0 && end - begin > period * 1e-3) out.push(dashOf(seconds, depthsM, lengths, begin, end));
    });
  }
  return out;
}

function dashOf(
  seconds: readonly number[],
  depthsM: readonly number[],
  lengths: readonly number[],
  begin: number,
  end: number,
): Dash {
  const spot = (length: number): readonly [s: number, depthM: number] => {
    const after = Math.max(
      lengths.findIndex((one) => one >= length),
      1,
    );
    const [low, high] = [lengths[after - 1]!, lengths[after]!];
    const share = high > low ? (length - low) / (high - low) : 0;
    const between = (values: readonly number[]) =>
      values[after - 1]! + (values[after]! - values[after - 1]!) * Math.min(Math.max(share, 0), 1);
    return [between(seconds), between(depthsM)];
  };
  const [first, last] = [spot(begin), spot(end)];
  const points = [...first];
  lengths.forEach((length, i) => {
    if (length > begin && length < end) points.push(seconds[i]!, depthsM[i]!);
  });
  points.push(...last);
  return { points, speedMps: (last[1] - first[1]) / Math.max(last[0] - first[0], 1e-6) };
}
