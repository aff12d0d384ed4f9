import { instantOf, midBreathM3, netForceN, rigOf, type Rig, type Setup } from '../../src/diver/index.ts';
import { loadSetupText } from '../../src/diver/file.ts';
import {
  advance,
  restingControls,
  startState,
  type Controls,
  type DiveState,
  type Start,
} from '../../src/dive/index.ts';
import type { StoppingAsk } from '../../src/insight/index.ts';
import { READY_TEXTS } from '../fixtures/setups/texts.ts';
import type { Chance } from '../reference/chance.ts';

/** All our own setups by their id. */
export const READY: ReadonlyMap<string, Setup> = new Map(
  [...READY_TEXTS].map(([id, text]) => [id, loadSetupText(text)]),
);

/** The rigs of all our own setups. */
export const RIGS: ReadonlyMap<string, Rig> = new Map([...READY].map(([id, setup]) => [id, rigOf(setup)]));

/** A moment of a dive, what the diver was doing, and what is asked. */
export interface Moment {
  readonly id: string;
  readonly rig: Rig;
  readonly state: DiveState;
  readonly controls: Controls;
  readonly ask: StoppingAsk;
}

const USUAL_BARS: readonly [number, number] = [5, 232];

/**
 * A moment by chance in one of these setups, anywhere in the column, in any attitude and phase of the breath, up to 1 m/s
 * either way, half of them with lead to spare; half with any gas in the jacket, half with what about balances the diver there.
 */
export function chanceMoment(chance: Chance, ids: readonly string[] = [...READY.keys()], bars = USUAL_BARS): Moment {
  const id = chance.one(ids);
  const rig = chance.percent(50) ? RIGS.get(id)! : heavier(READY.get(id)!, chance.between(0, 8));
  const pitchDeg = chance.one([0, 0, 0, 20, -20, 60, -60, 90, chance.whole(-90, 90)]);
  const middleCl = Math.round(midBreathM3(rig) * 1e5);
  const controls: Controls = {
    ...restingControls(chance.percent(60) ? middleCl : chance.whole(230, 520)),
    pitchDeg,
    breath: chance.percent(80) ? 0 : chance.whole(1, 2),
    jacketAdd: chance.percent(15) ? 1 : 0,
    finsN: chance.percent(15) ? chance.whole(-45, 45) : 0,
    ledge: chance.whole(0, 1),
  };
  const depthM = chance.between(0.9, rig.bottomM - 1.4);
  const start = {
    depthM,
    lungM3: chance.between(1.8e-3, 5.8e-3),
    ...(rig.drysuit ? { suitGasM3: chance.between(rig.drysuit.minimumM3, 14e-3) } : {}),
    cylinderBar: chance.between(...bars),
    pitchDeg,
  };
  const { residualM3, capacityM3 } = rig.jacket;
  const jacketM3 = chance.percent(50)
    ? chance.between(residualM3, capacityM3 * chance.one([0.05, 0.2, 0.4, 1]))
    : Math.min(Math.max(balancingM3(rig, start) + chance.between(-4e-3, 4e-3), residualM3), capacityM3);
  const state = startState(rig, { ...start, jacketM3 });
  // Some seconds of the dive bring breath, attitude and flags to where a dive has them.
  advance(rig, state, { ...controls, jacketAdd: 0 }, chance.whole(0, 720));
  if (state.resting === 0) state.speedMps = chance.percent(70) ? chance.between(-1, 1) : chance.between(-0.1, 0.1);
  return { id, rig, state, controls, ask: chanceAsk(chance, state.depthM) };
}

/** The rig of a setup with so many kilograms more on the belt. */
export function heavier(setup: Setup, surplusKg: number): Rig {
  return rigOf({ ...setup, lead: [...setup.lead, { massKg: surplusKg, place: 'belt', releasable: true }] });
}

/** Gas in the jacket that balances the diver at mid-breath, m³ at that depth; it may come out negative. */
function balancingM3(rig: Rig, start: Start): number {
  const short = netForceN(rig, instantOf(rig, { ...start, lungM3: midBreathM3(rig), jacketM3: 0 }));
  return -short / (1000 * rig.column.gravityMps2);
}

function chanceAsk(chance: Chance, depthM: number): StoppingAsk {
  return {
    lungs: chance.percent(70)
      ? { leastM3: 1.8e-3, mostM3: 5.8e-3 }
      : { leastM3: chance.between(1.5e-3, 2.4e-3), mostM3: chance.between(4e-3, 6.3e-3) },
    reactionS: chance.whole(0, 100) / 20,
    below: chance.percent(70) ? { kind: 'ground' } : { kind: 'depth', depthM: depthM + chance.between(0.2, 6) },
    above: chance.percent(70) ? { kind: 'head-out' } : { kind: 'rate', mps: chance.one([0.15, 0.3, 0.6]) },
  };
}
