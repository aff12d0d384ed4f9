import { HEAD_CLEAR_M, TOP_LEVEL_M, TOP_UPRIGHT_M, emergedM3, type Instant, type Rig } from '../diver/index.ts';
import type { Column, WaterSegment } from '../water/index.ts';

/** Between these depths what is out of the water is linear in depth; it goes on upward as it is between the first two. */
const OUTLINE_M = [0, TOP_LEVEL_M, HEAD_CLEAR_M, TOP_UPRIGHT_M];

/**
 * Writes the depths between two at which the net force has a corner or a jump into `out`, ascending, both ends included: outline
 * at the surface, edges of the water, bags that are just full or just at their least.
 */
export function writeCorners(rig: Rig, at: Instant, topM: number, bottomM: number, out: number[]): void {
  out.length = 0;
  out.push(topM, bottomM);
  const { column, gasJPerMol, jacket, drysuit, loop } = rig;
  const corner = (depthM: number) => {
    if (depthM > topM && depthM < bottomM && !out.includes(depthM)) out.push(depthM);
  };
  for (let i = 0; i < OUTLINE_M.length; i++) corner(OUTLINE_M[i]!);
  for (let i = 1; i < column.segments.length; i++) corner(column.segments[i]!.fromM);
  const just = (mol: number, volumeM3: number) => corner(depthOfM(column, (mol * gasJPerMol) / volumeM3));
  just(at.jacketMol, jacket.capacityM3);
  if (drysuit) {
    just(at.suitMol, drysuit.capacityM3);
    just(at.suitMol, drysuit.minimumM3);
  }
  if (loop) just(at.loopMol, loop.capacityM3);
  out.sort(ascending);
}

const ascending = (a: number, b: number) => a - b;

/** Depth at which the water has a pressure, metres; NaN above the surface. */
function depthOfM({ segments, gravityMps2 }: Column, pressurePa: number): number {
  let i = segments.length - 1;
  while (i > 0 && segments[i]!.pressurePa > pressurePa) i--;
  const { fromM, densityKgPerM3: rho, slopeKgPerM4, pressurePa: fromPa } = segments[i]!;
  const overM = (pressurePa - fromPa) / gravityMps2;
  return overM >= 0 ? fromM + (2 * overM) / (rho + Math.sqrt(rho * rho + 2 * slopeKgPerM4 * overM)) : NaN;
}

/** The piece of the column that a depth lies in; at its edge the deeper one. */
export function segmentAt({ segments }: Column, depthM: number): WaterSegment {
  let i = segments.length - 1;
  while (i > 0 && segments[i]!.fromM > depthM) i--;
  return segments[i]!;
}

/** How what is out of the water changes with depth, m³ per metre, never above 0; at a corner that of the deeper side. */
export function emergedPerM(depthM: number, pitchSin: number): number {
  let i = OUTLINE_M.length - 1;
  while (i > 0 && OUTLINE_M[i]! > depthM) i--;
  const fromM = OUTLINE_M[i]!;
  const toM = OUTLINE_M[i + 1];
  return toM === undefined ? 0 : (emergedM3(toM, pitchSin) - emergedM3(fromM, pitchSin)) / (toM - fromM);
}
