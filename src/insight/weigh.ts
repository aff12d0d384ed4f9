import { LEAD_KG_PER_M3, instantOf, netForceN, type InstantWish, type Rig } from '../diver/index.ts';
import { waterAt } from '../water/index.ts';

/** Where a diver is to be neutral: by default at 5 m with 50 bar left, jacket empty, lungs at mid-breath. */
export interface WeighingAt {
  readonly depthM: number;
  /** Gauge. */
  readonly reserveBar: number;
  readonly lungM3?: number;
}

export const USUAL_WEIGHING: WeighingAt = { depthM: 5, reserveBar: 50 };

/**
 * Mass of lead that makes the diver of a rig neutral, in kilograms, the rig's own lead ignored: the net force without lead
 * divided by what a kilogram of lead pulls in that water, g(1 − ρ/ρ_lead). Negative where the diver is too heavy already.
 * Jacket at its residual volume, drysuit at its least loft, loop at its least volume.
 * @throws {RangeError} when the depth or the pressure is impossible
 */
export function neutralLeadKg(rig: Rig, at: WeighingAt = USUAL_WEIGHING): number {
  const wish: InstantWish = {
    depthM: at.depthM,
    jacketM3: rig.jacket.residualM3,
    cylinderBar: at.reserveBar,
    ...(at.lungM3 === undefined ? {} : { lungM3: at.lungM3 }),
    ...(rig.drysuit ? { suitGasM3: rig.drysuit.minimumM3 } : {}),
    ...(rig.loop ? { loopM3: rig.loop.minimumM3 } : {}),
  };
  const bare = { ...rig, lead: [] };
  const { densityKgPerM3 } = waterAt(rig.column, at.depthM, { densityKgPerM3: 0, pressurePa: 0 });
  return netForceN(bare, instantOf(bare, wish)) / (rig.column.gravityMps2 * (1 - densityKgPerM3 / LEAD_KG_PER_M3));
}
