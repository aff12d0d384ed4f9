import { TICKS_PER_S, type ControlChange, type Controls, type Moment } from '../dive/index.ts';
import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import type { PairSide } from '../panels/index.ts';

/** A diver's presses up to a tick: how often any valve was worked, and for how long in all, seconds. */
export function pressesUpTo(changes: readonly ControlChange[], tick: number): { count: number; seconds: number } {
  let [count, ticks] = [0, 0];
  for (const works of VALVES) {
    let fromTick: number | null = null;
    for (const { tick: at, controls } of changes) {
      if (at >= tick) break;
      if (works(controls)) fromTick ??= at;
      else if (fromTick !== null) {
        [count, ticks] = [count + 1, ticks + at - fromTick];
        fromTick = null;
      }
    }
    if (fromTick !== null) [count, ticks] = [count + 1, ticks + tick - fromTick];
  }
  return { count, seconds: ticks / TICKS_PER_S };
}

const VALVES: readonly ((controls: Controls) => boolean)[] = [
  (c) => c.jacketAdd === 1,
  (c) => c.jacketVent !== 0,
  (c) => c.oral === 1,
  (c) => c.suitAdd === 1,
  (c) => c.suitVent === 1,
  (c) => c.diluent === 1,
  (c) => c.noseVent === 1,
];

/** What one of two divers is compared by at a moment: depth, speed, presses, and the gas that went out of his cylinders, m³ at the surface. */
export function sideOf({ rig, state, tick, changes }: Moment, fullMol: number): PairSide {
  const usedMol = fullMol - cylindersMol(state.cylinderMol);
  return {
    depthM: state.depthM,
    speedMps: state.speedMps,
    presses: pressesUpTo(changes, tick),
    gasUsedM3: Math.max(0, (usedMol * rig.gasJPerMol) / STANDARD_PRESSURE_PA),
  };
}

/** All gas in the cylinders, moles. */
export function cylindersMol(cylinderMol: readonly number[]): number {
  return cylinderMol.reduce((sum, mol) => sum + mol, 0);
}
