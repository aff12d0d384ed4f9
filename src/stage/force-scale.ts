import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import type { DepthForce } from './view.ts';

/** Metres between two arrows of the column: the least step at which they do not crowd. */
export function arrowStepM(pxPerM: number, leastPx: number): number {
  return [1, 2, 3, 5, 10].find((m) => m * pxPerM >= leastPx) ?? 20;
}

/** Forces for which an arrow may fill the room between two, kgf. */
const FULL_KGF = [0.5, 1, 2, 3, 5, 8, 12, 20];

/**
 * Pixels a kgf of the column's arrows: that of the arrow on the diver, or less where the greatest would not fit between two; in
 * few steps, so that the scale does not creep as the forces change.
 */
export function pxPerKgfOf(greatestKgf: number, roomPx: number, mostPx: number): number {
  const full = FULL_KGF.find((kgf) => kgf >= greatestKgf * 0.8) ?? FULL_KGF[FULL_KGF.length - 1]!;
  return Math.min(mostPx, roomPx / full);
}

/** Greatest force in a picture, kgf; the picture is widened to whole five metres, so that the answer changes seldom. */
export function greatestKgf(arrows: readonly DepthForce[], topM: number, bottomM: number): number {
  const [from, to] = [Math.floor(topM / 5) * 5, Math.ceil(bottomM / 5) * 5];
  const seen = arrows.filter(({ depthM }) => depthM >= from && depthM <= to);
  return seen.reduce((most, { netN }) => Math.max(most, Math.abs(netN)), 0) / STANDARD_GRAVITY_MPS2;
}

/** Whole kilograms whose bar is long enough to compare with. */
export function barKg(pxPerKgf: number, leastPx: number): number {
  return [1, 2, 5, 10].find((kg) => kg * pxPerKgf >= leastPx) ?? 20;
}

/** Depths at which the force changes its sign, by straight lines between the given ones, shallow first. */
export function crossingsM(arrows: readonly DepthForce[]): number[] {
  const out: number[] = [];
  for (let i = 1; i < arrows.length; i++) {
    const [a, b] = [arrows[i - 1]!, arrows[i]!];
    if (a.netN === 0) out.push(a.depthM);
    else if (a.netN * b.netN < 0) out.push(a.depthM + ((b.depthM - a.depthM) * a.netN) / (a.netN - b.netN));
  }
  return out;
}
