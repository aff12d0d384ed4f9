import { instantOf, jacketM3, netForceN, type Instant, type Rig } from '../diver/index.ts';
import { USUAL_LUNGS, breathReachAt, steepnessAt, type LungRange } from '../insight/index.ts';
import type { KitHover } from '../panels/index.ts';
import { pressurePa } from '../water/index.ts';

/** Where hovering is compared, metres, and with what in the cylinders, bar gauge; shallow water is compared half-way down. Chosen. */
const HOVER_M = 10;
const HOVER_BAR = 120;
/** Within this, newtons, forces balance. Chosen. */
const BALANCED_N = 1e-6;

/** Depth of the hover that the changes are compared at. */
export function hoverDepthM(bottomM: number): number {
  return bottomM >= HOVER_M + 1 ? HOVER_M : bottomM / 2;
}

/** A range of lungs for other lungs: as much more as these hold more. */
export function lungsFor({ leastM3, mostM3 }: LungRange, before: Rig, after: Rig): LungRange {
  const share = after.lungs.totalM3 / before.lungs.totalM3;
  return { leastM3: leastM3 * share, mostM3: mostM3 * share };
}

/**
 * The hover of a rig: neutral by gas at half a breath, then what breath reaches and how an offset grows.
 * @param lungs between which volumes the diver breathes
 */
export function hoverOf(rig: Rig, lungs = USUAL_LUNGS, cylinderBar = HOVER_BAR): KitHover {
  const depthM = hoverDepthM(rig.bottomM);
  const { at, balanced } = hoverAt(rig, depthM, cylinderBar);
  return {
    depthM,
    bottomM: rig.bottomM,
    leftN: balanced ? 0 : netForceN(rig, at),
    reachM: breathReachAt(rig, at, lungs),
    lungs,
    doublingS: steepnessAt(rig, at).doublingS,
    openLungs: rig.lungs.open,
  };
}

/**
 * The diver of a rig at a depth, level, half a breath in, balanced by gas as far as it goes: a drysuit takes it up to what its
 * undergarment holds, the jacket the rest; a loop keeps its least.
 * @throws {RangeError} when the depth or the pressure is impossible
 */
export function hoverAt(rig: Rig, depthM: number, cylinderBar: number): { at: Instant; balanced: boolean } {
  const pressure = pressurePa(rig.column, depthM);
  const mol = (volumeM3: number) => (volumeM3 * pressure) / rig.gasJPerMol;
  const at = leastGasAt(rig, depthM, cylinderBar);
  if (rig.drysuit) {
    const { minimumM3, comfortM3 } = rig.drysuit;
    at.suitMol = mol(balancing(rig, at, 'suitMol', mol, minimumM3, Math.max(minimumM3, comfortM3)));
  }
  at.jacketMol = mol(
    balancing(rig, at, 'jacketMol', mol, jacketM3(rig, at.jacketMol, pressure), rig.jacket.capacityM3),
  );
  return { at, balanced: Math.abs(netForceN(rig, at)) < BALANCED_N };
}

/**
 * The diver of a rig at a depth, level, half a breath in, jacket empty, a drysuit and a loop at their least.
 * @throws {RangeError} when the depth or the pressure is impossible
 */
export function leastGasAt(rig: Rig, depthM: number, cylinderBar: number): Instant {
  return instantOf(rig, {
    depthM,
    cylinderBar,
    jacketM3: rig.jacket.residualM3,
    ...(rig.drysuit ? { suitGasM3: rig.drysuit.minimumM3 } : {}),
    ...(rig.loop ? { loopM3: rig.loop.minimumM3 } : {}),
  });
}

/** Volume of one gas that balances, between two limits: force is linear in a volume at one depth, weight of the gas included. */
function balancing(
  rig: Rig,
  at: Instant,
  gas: 'jacketMol' | 'suitMol',
  mol: (volumeM3: number) => number,
  leastM3: number,
  mostM3: number,
): number {
  const least = netForceN(rig, { ...at, [gas]: mol(leastM3) });
  const most = netForceN(rig, { ...at, [gas]: mol(mostM3) });
  if (least >= 0 || most <= least) return leastM3;
  return leastM3 + (mostM3 - leastM3) * Math.min(1, -least / (most - least));
}
