import { emergedM3, jacketM3, ledger, loopM3, netForceN, suitGasM3, type ForcePart, type Rig } from '../diver/index.ts';
import type { DiveState } from '../dive/index.ts';
import { pullKg, writtenAddingUp, type GasStore, type Pull, type Pulls, type Readings } from '../panels/index.ts';
import { STANDARD_PRESSURE_PA, waterAt } from '../water/index.ts';

/** Order of the ledger's bars: what never changes first, what changes at the free end. */
export const OUT_OF_WATER = 'out of water';
const ORDER = ['body', 'rest', 'lead', 'suit', 'cylinder', 'jacket', 'loop', 'lungs', OUT_OF_WATER];
const GAS_PARTS = new Set(['suit', 'jacket', 'loop', 'lungs']);

/** Heavier than this all under, newtons, a head that is still out of the water is on its way under: half a kilogram. */
const GOING_UNDER_N = -5;

/**
 * What the panels read of a state. Light and heavy are judged in the middle of the breath that is breathed now.
 * @param levelM3 that middle; null where the lungs do what they are told and are taken as they are
 */
export function readingsOf(rig: Rig, state: Readonly<DiveState>, levelM3: number | null): Readings {
  const lift = liftAt(rig, state);
  const offM3 = rig.lungs.open && levelM3 !== null ? levelM3 - state.lungM3 : 0;
  const midNetN = netForceN(rig, state) + offM3 * lift;
  const pulls = pullsOf(ledger(rig, state));
  return {
    depthM: state.depthM,
    speedMps: state.speedMps,
    midNetN,
    judged: rig.lungs.open && levelM3 !== null ? 'mid-breath' : 'now',
    place: placeOf(rig, state, midNetN),
    lungM3: state.lungM3,
    levelM3: levelM3 ?? state.lungM3,
    totalLungM3: rig.lungs.totalM3,
    gas: storesOf(rig, state),
    gasScaleM3: gasScaleM3(rig),
    ...pulls,
  };
}

/** What a cubic metre lifts where he is, newtons. */
function liftAt({ column }: Rig, { depthM }: Readonly<DiveState>): number {
  return waterAt(column, Math.max(depthM, 0), { densityKgPerM3: 0, pressurePa: 0 }).densityKgPerM3 * column.gravityMps2;
}

/**
 * Afloat is who would come up if he were all under. What pulls at the moment tells nothing: who bobs is pulled down half of the
 * time, by what of him is out of the water.
 * @param midNetN net force at mid-breath
 */
export function placeOf(rig: Rig, state: Readonly<DiveState>, midNetN: number): Readings['place'] {
  const outM3 = emergedM3(state.depthM, state.pitchSin);
  const underN = midNetN + outM3 * liftAt(rig, state);
  if (state.resting === 1) return 'on the bottom';
  if (state.resting === 2) return 'on the ledge';
  return outM3 > 0 && underN > GOING_UNDER_N ? 'afloat' : 'under';
}

/**
 * Where the bars of gas end: the most that the kit's largest store can hold, whatever the dive does. What would need more at the
 * surface runs out of the bar, as it would out of the kit.
 */
export function gasScaleM3({ jacket, lungs, loop }: Rig): number {
  return Math.ceil(Math.max(jacket.capacityM3, lungs.totalM3, loop?.capacityM3 ?? 0) * 500) / 500;
}

/** Stores of gas, each at ambient pressure here and, the same moles, at the surface. */
export function storesOf(rig: Rig, state: Readonly<DiveState>): GasStore[] {
  const at = (depthM: number) => waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 }).pressurePa;
  const here = at(Math.max(state.depthM, 0));
  const grows = here / at(0);
  const store = (name: string, hereM3: number): GasStore => ({ name, hereM3, surfaceM3: hereM3 * grows });
  const stores = rig.loop ? [store('loop', loopM3(rig, state.loopMol, here))] : [store('lungs', state.lungM3)];
  stores.push(store('jacket', jacketM3(rig, state.jacketMol, here)));
  if (rig.drysuit) stores.push(store('suit', suitGasM3(rig, state.suitMol, here)));
  else if (rig.foam.gasM3 > 0) {
    const foam = (pressurePa: number) =>
      (rig.foam.gasM3 * STANDARD_PRESSURE_PA) /
      (STANDARD_PRESSURE_PA + rig.foam.softness * (pressurePa - STANDARD_PRESSURE_PA));
    stores.push({ name: 'suit', hereM3: foam(here), surfaceM3: foam(at(0)) });
  }
  return stores;
}

/** The ledger gathered into few parts: what lifts on its own account, and what pulls down. */
export function pullsOf(parts: readonly ForcePart[]): Pulls {
  const sums = new Map<string, number>();
  for (const part of parts) {
    const name = gathered(part.part);
    sums.set(name, (sums.get(name) ?? 0) + pullKg(part.buoyancyN - part.weightN));
  }
  const pulls = ORDER.filter((name) => sums.has(name)).map((name) => ({ name, kg: sums.get(name)! }));
  const side = (way: 1 | -1): Pull[] => {
    const these = pulls.filter(({ kg }) => kg * way > 0);
    const said = writtenAddingUp(these.map(({ kg }) => kg * way));
    return these.map(({ name, kg }, i) => ({
      name,
      kg: kg * way,
      isGas: GAS_PARTS.has(name) && way > 0,
      saidKg: said[i]!,
    }));
  };
  return { up: side(1), down: side(-1) };
}

function gathered(part: string): string {
  if (part === 'tissue' || part === 'gut') return 'body';
  if (part === 'suit' || part === 'suit-gas') return 'suit';
  if (part === 'jacket' || part === 'jacket-gas') return 'jacket';
  if (part.startsWith('cylinder-')) return 'cylinder';
  if (part.startsWith('lead-')) return 'lead';
  if (part === 'above-water') return OUT_OF_WATER;
  return part === 'lungs' || part === 'loop' ? part : 'rest';
}
