import { jacketM3, midBreathM3, netForceN, rigOf, type Rig, type Setup } from '../diver/index.ts';
import { startState, type Start } from '../dive/index.ts';
import { waterAt } from '../water/index.ts';
import type { BeginStep } from './demonstration.ts';

/** The diver of a step: a ready setup with more lead on its last piece, which is never let go in ours. */
export function shownRig(ready: Setup, moreLeadKg: number): Rig {
  const last = ready.lead.length - 1;
  const lead = ready.lead.map((piece, i) => (i === last ? { ...piece, massKg: piece.massKg + moreLeadKg } : piece));
  return rigOf({ ...ready, lead });
}

/** Where he is put: level and at rest, the jacket empty or with the gas that would make him neutral somewhere. */
export function shownStart(rig: Rig, { atM, neutralAtM }: Pick<BeginStep, 'atM' | 'neutralAtM'>): Start {
  if (neutralAtM === null) return { depthM: atM, jacketM3: 0, pitchDeg: 0 };
  const gasM3 = neutralGasM3(rig, neutralAtM) * (pressurePa(rig, neutralAtM) / pressurePa(rig, atM));
  return { depthM: atM, jacketM3: Math.min(gasM3, rig.jacket.capacityM3), pitchDeg: 0 };
}

/** Neutral, level and at rest at a depth, or just above the ground where the water is shallower. */
export function neutralStart(rig: Rig, depthM: number): Start {
  const atM = Math.min(depthM, rig.bottomM - 1);
  return shownStart(rig, { atM, neutralAtM: atM });
}

/** Jacket gas with which a diver is neutral at a depth, half a breath in and level, m³ there; what never leaves it where he is light. */
export function neutralGasM3(rig: Rig, depthM: number): number {
  const lungs = rig.lungs.open ? { lungM3: midBreathM3(rig) } : {};
  let low = rig.jacket.residualM3;
  let high = rig.jacket.capacityM3;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (netForceN(rig, startState(rig, { depthM, jacketM3: middle, ...lungs })) < 0) low = middle;
    else high = middle;
  }
  return low;
}

/** Jacket gas of a moment, m³. */
export function gasM3(rig: Rig, depthM: number, jacketMol: number): number {
  return jacketM3(rig, jacketMol, pressurePa(rig, Math.max(depthM, 0)));
}

function pressurePa(rig: Rig, depthM: number): number {
  return waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 }).pressurePa;
}
