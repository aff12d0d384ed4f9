import { LEAD_KG_PER_M3, instantOf, ledger, netOf, type Instant, type InstantWish, type Rig } from '../diver/index.ts';
import { waterAt } from '../water/index.ts';

/** Where a diver is to be neutral: by default at 5 m with 50 bar left, jacket empty, lungs at mid-breath. */
export interface WeighingAt {
  readonly depthM: number;
  /** Gauge. */
  readonly reserveBar: number;
  readonly lungM3?: number;
}

export const USUAL_WEIGHING: WeighingAt = { depthM: 5, reserveBar: 50 };

/** What is said of a weighing beside its depth; `cylinderBar` left out: as filled. */
type Weighed = Omit<InstantWish, 'depthM' | 'jacketM3' | 'suitGasM3' | 'loopM3'>;

/**
 * Mass of lead that makes the diver of a rig neutral, in kilograms, the rig's own lead ignored: the net force without lead
 * divided by what a kilogram of lead pulls in that water, g(1 − ρ/ρ_lead). Negative where the diver is too heavy already.
 * Wholly submerged, also at the surface. Jacket at its residual volume, drysuit at its least loft, loop at its least volume.
 * @throws {RangeError} when the depth or the pressure is impossible
 */
export function neutralLeadKg(rig: Rig, at: WeighingAt = USUAL_WEIGHING): number {
  return leadKgWith(rig, at.depthM, weighedAt(at));
}

/** What a weighing says beside its depth. */
export function weighedAt({ reserveBar, lungM3 }: WeighingAt): Weighed {
  return { cylinderBar: reserveBar, ...(lungM3 === undefined ? {} : { lungM3 }) };
}

/** As {@link neutralLeadKg}, with a cylinder that may be as filled. */
export function leadKgWith(rig: Rig, depthM: number, weighed: Weighed): number {
  const bare = { ...rig, lead: [] };
  const { densityKgPerM3 } = waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 });
  const netN = submergedN(bare, emptied(bare, depthM, weighed));
  return netN / (rig.column.gravityMps2 * (1 - densityKgPerM3 / LEAD_KG_PER_M3));
}

/** The moment at a depth, level, with as little gas as jacket, drysuit and loop can hold. */
export function emptied(rig: Rig, depthM: number, weighed: Weighed): Instant {
  return instantOf(rig, {
    ...weighed,
    depthM,
    jacketM3: rig.jacket.residualM3,
    ...(rig.drysuit ? { suitGasM3: rig.drysuit.minimumM3 } : {}),
    ...(rig.loop ? { loopM3: rig.loop.minimumM3 } : {}),
  });
}

/** Net force on a diver of whom nothing is above the water, newtons, up positive: near the surface that part still counts. */
export function submergedN(rig: Rig, at: Instant): number {
  return netOf(ledger(rig, at).filter(({ part }) => part !== 'above-water'));
}
