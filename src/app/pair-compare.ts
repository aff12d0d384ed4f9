import { TICKS_PER_S, type ControlChange, type Controls, type Moment } from '../dive/index.ts';
import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import type { PairSide } from '../panels/index.ts';

const VALVES: readonly ((controls: Controls) => boolean)[] = [
  (c) => c.jacketAdd === 1,
  (c) => c.jacketVent !== 0,
  (c) => c.oral === 1,
  (c) => c.suitAdd === 1,
  (c) => c.suitVent === 1,
  (c) => c.diluent === 1,
  (c) => c.noseVent === 1,
];

/** A diver's presses: how often any valve was worked, and for how long in all. It goes on from where it counted last. */
export class PressCount {
  #changes: readonly ControlChange[] = [];
  #next = 0;
  #last = -Infinity;
  #count = 0;
  #ticks = 0;
  /** From when each valve is held; null where it is not. */
  #held: (number | null)[] = [];

  /** Presses before a tick, seconds; one that is held on counts up to it. */
  upTo(changes: readonly ControlChange[], tick: number): PairSide['presses'] {
    if (changes !== this.#changes || tick < this.#last) this.#begin(changes);
    this.#last = tick;
    // A change before the present tick is never taken back.
    for (; this.#next < changes.length && changes[this.#next]!.tick < tick; this.#next++)
      this.#take(changes[this.#next]!);
    const lasting = this.#held.reduce<number>((sum, from) => (from === null ? sum : sum + tick - from), 0);
    return { count: this.#count, seconds: (this.#ticks + lasting) / TICKS_PER_S };
  }

  #begin(changes: readonly ControlChange[]): void {
    this.#changes = changes;
    this.#next = this.#count = this.#ticks = 0;
    this.#held = VALVES.map(() => null);
  }

  #take({ tick, controls }: ControlChange): void {
    VALVES.forEach((works, i) => {
      const from = this.#held[i] ?? null;
      if (works(controls) === (from !== null)) return;
      if (from === null) this.#count++;
      else this.#ticks += tick - from;
      this.#held[i] = from === null ? tick : null;
    });
  }
}

/**
 * What one of two divers is compared by at a moment: depth, speed, presses, and the gas that went out of his cylinders, m³ at the surface.
 * @param fullMol what was in them at the start
 * @param presses his count, kept from moment to moment
 */
export function sideOf({ rig, state, tick, changes }: Moment, fullMol: number, presses: PressCount): PairSide {
  const usedMol = fullMol - cylindersMol(state.cylinderMol);
  return {
    depthM: state.depthM,
    speedMps: state.speedMps,
    presses: presses.upTo(changes, tick),
    gasUsedM3: Math.max(0, (usedMol * rig.gasJPerMol) / STANDARD_PRESSURE_PA),
  };
}

/** All gas in the cylinders, moles. */
export function cylindersMol(cylinderMol: readonly number[]): number {
  return cylinderMol.reduce((sum, mol) => sum + mol, 0);
}
