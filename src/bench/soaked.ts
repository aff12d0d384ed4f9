import { areaOf, below, type Area, type Point } from './section.ts';

/** Water in a hollow. */
export interface Soaked extends Area {
  /** Depth of its surface, in the frame of the outlines. */
  readonly surfaceYM: number;
}

/** Of the water that would run over a sharp edge without friction so much does. Textbooks of hydraulics, 0.60 to 0.62 (recalled). */
const WEIR = 0.61;
/** A level is found to within this, metres. */
const FOUND_M = 1e-9;

/** How so much water lies in a hollow, level whatever its attitude. @param waterM2 no more than the hollow holds */
export function waterIn(hollow: readonly Point[], waterM2: number): Soaked {
  const ys = hollow.map(({ yM }) => yM);
  let high = Math.min(...ys);
  let low = Math.max(...ys);
  if (waterM2 <= 0) return { areaM2: 0, xM: hollow[0]!.xM, yM: low, surfaceYM: low };
  while (low - high > FOUND_M) {
    const middle = (low + high) / 2;
    if (areaOf(below(hollow, middle)).areaM2 > waterM2) high = middle;
    else low = middle;
  }
  return { ...areaOf(below(hollow, high)), areaM2: waterM2, surfaceYM: high };
}

/**
 * Water in a hollow after a while: what runs in over the lower rim from outside, or out over it. Air that cannot get to the
 * upper rim stays, so that a tray turned over keeps some.
 * @param hollow its first and last points are the rims
 * @param outsideYM depth of the surface outside
 */
export function soakedM2(
  hollow: readonly Point[],
  waterM2: number,
  outsideYM: number,
  gravityMps2: number,
  seconds: number,
): number {
  const rims = [hollow[0]!.yM, hollow[hollow.length - 1]!.yM];
  const [upperYM, lowerYM] = [Math.min(...rims), Math.max(...rims)];
  const mostM2 = areaOf(below(hollow, upperYM)).areaM2;
  const inside = waterIn(hollow, Math.min(waterM2, mostM2));
  const weirM2 = (headM: number) => (2 / 3) * WEIR * Math.sqrt(2 * gravityMps2) * headM ** 1.5 * seconds;
  if (outsideYM < lowerYM && outsideYM < inside.surfaceYM) {
    // In until both stand alike, or no more air comes out.
    const level = areaOf(below(hollow, Math.max(outsideYM, upperYM))).areaM2;
    const headM = Math.min(lowerYM, inside.surfaceYM) - outsideYM;
    return Math.max(inside.areaM2, Math.min(level, inside.areaM2 + weirM2(headM)));
  }
  const spillYM = Math.min(outsideYM, lowerYM);
  if (inside.surfaceYM < spillYM) {
    const keptM2 = areaOf(below(hollow, spillYM)).areaM2;
    return Math.max(keptM2, inside.areaM2 - weirM2(spillYM - inside.surfaceYM));
  }
  return Math.min(waterM2, mostM2);
}
