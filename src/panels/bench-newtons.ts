import type { Placed } from '../bench/index.ts';
import { addUpWith } from './adding-up.ts';

/** Slower than this a thing rests, m/s. */
export const REST_MPS = 4e-3;
/** Closer than this to the bottom a thing lies on it, lower over the water it is under it, metres. */
export const ON_M = 2e-3;
/** Within this share of its weight a thing is neutral. */
export const NEUTRAL = 2e-3;
/** Lifted by less than this a thing is out of the water, newtons. */
export const DRY_N = 1e-3;
/** Within this share of it a thing at the surface bobs about the place where it floats. */
const BOBS = 0.1;
/** More digits than these are not written after the point. */
const MOST_DIGITS = 3;

/** A force alone: "3.4 N", "0.04 N", "2.4 mN". */
export function forceText(newtons: number): string {
  const size = Math.abs(newtons);
  if (size < 0.01 && size > 5e-5) return `${(size * 1000).toFixed(1)} mN`;
  return `${size.toFixed(size < 1 ? 2 : size < 100 ? 1 : 0)} N`;
}

/** Whether a thing moves up and down about the place where it floats. */
export function bobs({ weightN, buoyantN, freeboardM }: Placed): boolean {
  return Math.abs(weightN - buoyantN) < BOBS * weightN && freeboardM > ON_M;
}

/** The forces on a thing in words, and what is left of them. */
export interface Newtons {
  readonly weight: string;
  readonly water: string;
  readonly balance: string;
  readonly left: string;
  /** Another force beside them, in as many digits; where it is what the water does, in the very same. */
  readonly beside: (newtons: number) => string;
}

/**
 * The forces on a thing, in as many digits as it takes for those that are written to add up: 3.4 N less 2.0 N are not 1.5 N,
 * but 3.43 N less 1.96 N are 1.47 N. While one of them changes from frame to frame they are written each alone.
 */
export function newtonsOf(one: Placed): Newtons {
  const { weightN, buoyantN, balanceN } = one;
  const leftN = buoyantN + balanceN - weightN;
  const even = Math.abs(leftN) < NEUTRAL * weightN;
  // What hangs still is held by what the water leaves: the last swing of the spring would keep the three from adding up.
  const pullN = balanceN > 0 && even ? weightN - buoyantN : balanceN;
  // What is left of them is written only of what is neither even nor afloat.
  const parts = [buoyantN, pullN, -weightN, even || (balanceN === 0 && bobs(one)) ? 0 : -leftN];
  const hangs = balanceN > 0 && even && buoyantN > DRY_N;
  const digits = changes(one, even) ? undefined : (digitsFor(parts) ?? (hangs ? 2 : undefined));
  const text = (newtons: number) =>
    digits === undefined ? forceText(newtons) : `${Math.abs(newtons).toFixed(digits)} N`;
  const water = text(buoyantN);
  const beside = (newtons: number) => (Math.abs(newtons - buoyantN) < NEUTRAL * weightN ? water : text(newtons));
  // Three rounded numbers need not add up in any digits: then what pulls is what the other two leave, as they are written.
  const pulls = hangs && digits !== undefined ? parseFloat(text(weightN)) - parseFloat(water) : pullN;
  return { weight: text(weightN), water, balance: text(pulls), left: text(leftN), beside };
}

function changes({ balanceN, speedMps, freeboardM }: Placed, even: boolean): boolean {
  return balanceN > 0 ? speedMps >= REST_MPS || !even : speedMps > REST_MPS && freeboardM > ON_M;
}

/** The fewest digits after the point in which parts that come to nothing do so as they are written, and the least is not naught. */
function digitsFor(parts: readonly number[]): number | undefined {
  const least = Math.min(...parts.map(Math.abs).filter((size) => size > DRY_N));
  for (let digits = least < 0.01 ? 3 : least < 1 ? 2 : 1; digits <= MOST_DIGITS; digits++)
    if (addUpWith(digits, parts)) return digits;
  return undefined;
}
