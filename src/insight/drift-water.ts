import { foamM3, type Rig } from '../diver/index.ts';
import { boylePaM3 } from '../dive/index.ts';
import type { Column, WaterAt } from '../water/index.ts';
import type { Way } from './means.ts';

/** The pieces of a column, from the surface down, as plain rows of numbers: a look ahead asks for its water twice a step. */
export interface Pieces {
  readonly fromM: Float64Array;
  readonly fromPa: Float64Array;
  readonly densityKgPerM3: Float64Array;
  readonly slopeKgPerM4: Float64Array;
  readonly halfG: number;
}

/** The pieces of a column. */
export function piecesOf({ segments, gravityMps2 }: Column): Pieces {
  return {
    fromM: Float64Array.from(segments, ({ fromM }) => fromM),
    fromPa: Float64Array.from(segments, ({ pressurePa }) => pressurePa),
    densityKgPerM3: Float64Array.from(segments, ({ densityKgPerM3 }) => densityKgPerM3),
    slopeKgPerM4: Float64Array.from(segments, ({ slopeKgPerM4 }) => slopeKgPerM4),
    halfG: gravityMps2 / 2,
  };
}

/** The piece in which a depth lies. */
function pieceAt(fromM: Float64Array, depthM: number): number {
  let i = fromM.length - 1;
  while (i > 0 && fromM[i]! > depthM) i--;
  return i;
}

/** Writes what `waterAt` does. */
export function waterIn(pieces: Pieces, depthM: number, out: WaterAt): void {
  const depth = depthM > 0 ? depthM : 0;
  const i = pieceAt(pieces.fromM, depth);
  const below = depth - pieces.fromM[i]!;
  const top = pieces.densityKgPerM3[i]!;
  const density = top + pieces.slopeKgPerM4[i]! * below;
  out.densityKgPerM3 = density;
  out.pressurePa = pieces.fromPa[i]! + pieces.halfG * below * (top + density);
}

/**
 * What the water that is still to come displaces, kg, up positive the way that is wanted, where it holds him best: his gas
 * stays and is pressed together.
 * @param fixedM3 what does not change on the way: solid parts and lungs
 */
export function bestDisplacedKg(
  rig: Rig,
  pieces: Pieces,
  depthM: number,
  herePa: number,
  way: Way,
  jacketMol: number,
  suitMol: number,
  fixedM3: number,
): number {
  const { drysuit, foam, gasJPerMol: gasJ, jacket } = rig;
  const { fromM, fromPa, densityKgPerM3, slopeKgPerM4 } = pieces;
  const boyle = boylePaM3(rig);
  const here = pieceAt(fromM, depthM);
  let most = -Infinity;
  for (let i = here; i >= 0 && i < fromM.length; i += way) {
    // He comes to a piece at its top, or at its foot; the best of it may lie at its other end.
    const p = i === here ? herePa : fromPa[way > 0 ? i : i + 1]!;
    const top = densityKgPerM3[i]!;
    const foot = i + 1 < fromM.length ? top + slopeKgPerM4[i]! * (fromM[i + 1]! - fromM[i]!) : top;
    let volumeM3 = fixedM3 + boyle / p + Math.min((jacketMol * gasJ) / p, jacket.capacityM3);
    if (drysuit) volumeM3 += Math.min(Math.max((suitMol * gasJ) / p, drysuit.minimumM3), drysuit.capacityM3);
    if (foam.softness !== 1) volumeM3 += foamM3(foam, p) - foam.solidM3;
    most = Math.max(most, way * (way > 0 ? Math.max(top, foot) : Math.min(top, foot)) * volumeM3);
  }
  return most;
}
