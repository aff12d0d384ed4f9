import {
  Dive,
  TICKS_PER_S,
  direction,
  floatingDepthM,
  midBreathCl,
  restingControls,
  startState,
  ventFor,
  type Controls,
  type Start,
} from '../../../src/dive/index.ts';
import { instantOf, netForceN, rigOf, type Rig, type Setup } from '../../../src/diver/index.ts';
import closedLoop from '../../../src/diver/setups/closed-loop.yaml';
import drysuitFoam from '../../../src/diver/setups/drysuit-foam.yaml';
import firstDive from '../../../src/diver/setups/first-dive.yaml';
import noSuit from '../../../src/diver/setups/no-suit.yaml';
import temperateSea from '../../../src/diver/setups/temperate-sea.yaml';
import twin from '../../../src/diver/setups/twin.yaml';
import twoPieceHeavy from '../../../src/diver/setups/two-piece-heavy.yaml';

const setups: Readonly<Record<string, Setup>> = Object.fromEntries(
  Object.entries({ closedLoop, drysuitFoam, firstDive, noSuit, temperateSea, twin, twoPieceHeavy }).map(
    ([name, setup]) => [name, setup as Setup],
  ),
);

/** What happens in a dive of the test page: where it begins, which depth is sought, what is forced at which second. */
export interface Script {
  readonly setup: string;
  /** What of the setup is otherwise. */
  readonly kit?: (setup: Setup) => Setup;
  readonly start: Start;
  /** Depth that a clumsy pilot seeks with short presses, if any. */
  readonly seekM?: number;
  readonly pitchDeg?: number;
  readonly floating?: boolean;
  /** Controls from a second to another. */
  readonly acts?: readonly (readonly [fromS: number, toS: number, controls: Partial<Controls>])[];
}

export const scripts: Readonly<Record<string, Script>> = {
  hover: { setup: 'temperateSea', start: { depthM: 3, jacketM3: 1e-3, speedMps: 0.25 }, seekM: 8 },
  surface: { setup: 'firstDive', start: { depthM: 0.4, jacketM3: 8e-3, pitchDeg: 90 }, pitchDeg: 90, floating: true },
  descent: {
    setup: 'firstDive',
    start: { depthM: 0.6, jacketM3: 2e-3, pitchDeg: 90 },
    pitchDeg: 90,
    acts: [[0, 4, { jacketVent: 1 }]],
  },
  ascent: {
    setup: 'firstDive',
    start: { depthM: 11, jacketM3: 6e-3 },
    pitchDeg: 60,
    acts: [
      [3, 5, { jacketVent: 1 }],
      [0, 2, { jacketAdd: 1 }],
    ],
  },
  bottom: { setup: 'firstDive', start: { depthM: 10, jacketM3: 0.2e-3 } },
  drop: { setup: 'firstDive', start: { depthM: 8 }, seekM: 8, acts: [[20, 24, { releaseMask: 1 }]] },
  kickUp: { setup: 'temperateSea', start: { depthM: 8, jacketM3: 3e-3 }, pitchDeg: 60, acts: [[0, 60, { finsN: 40 }]] },
  lineHold: { setup: 'firstDive', start: { depthM: 5 }, pitchDeg: 40, acts: [[0, 60, { holdLine: 1 }]] },
  loop: { setup: 'closedLoop', start: { depthM: 6 }, seekM: 8 },
  drysuit: { setup: 'drysuitFoam', start: { depthM: 7 }, seekM: 8 },
  drysuitUp: { setup: 'drysuitFoam', start: { depthM: 7 }, pitchDeg: 75, seekM: 8 },
  twin: { setup: 'twin', start: { depthM: 6 }, seekM: 8 },
  noSuit: { setup: 'noSuit', start: { depthM: 6 }, seekM: 8 },
  runaway: { setup: 'twoPieceHeavy', start: { depthM: 2, jacketM3: 0 } },
  ledge: {
    setup: 'temperateSea',
    kit: (setup) => ({ ...setup, water: { ...setup.water, ledgeM: 7 } }),
    start: { depthM: 5, jacketM3: 0 },
  },
  places: {
    setup: 'firstDive',
    kit: (setup) => ({
      ...setup,
      lead: (['belt', 'belt', 'pocket', 'pocket', 'back', 'ankle'] as const).map((place) => ({
        massKg: 1,
        place,
        releasable: true,
      })),
    }),
    start: { depthM: 6 },
    seekM: 6,
  },
  inflating: { setup: 'firstDive', start: { depthM: 8, jacketM3: 2e-3 }, acts: [[3, 60, { jacketAdd: 1 }]] },
  byMouth: { setup: 'firstDive', start: { depthM: 8, jacketM3: 2e-3 }, acts: [[3, 60, { oral: 1 }]] },
  venting: {
    setup: 'firstDive',
    start: { depthM: 8, jacketM3: 8e-3, pitchDeg: 60 },
    pitchDeg: 60,
    acts: [[3, 60, { jacketVent: 1 }]],
  },
  relief: { setup: 'temperateSea', start: { depthM: 28, jacketM3: 15e-3 }, acts: [[0, 8, { jacketAdd: 1 }]] },
  squeeze: { setup: 'drysuitFoam', start: { depthM: 3, jacketM3: 0, suitGasM3: 2e-3, speedMps: 0.6 } },
  stretched: {
    setup: 'firstDive',
    start: { depthM: 8, jacketM3: 5e-3, lungM3: 5.5e-3 },
    acts: [[0, 60, { breath: 2 }]],
  },
  head90: { setup: 'temperateSea', start: { depthM: 8, pitchDeg: 90 }, pitchDeg: 90 },
  head60: { setup: 'temperateSea', start: { depthM: 8, pitchDeg: 60 }, pitchDeg: 60 },
  head30: { setup: 'temperateSea', start: { depthM: 8, pitchDeg: 30 }, pitchDeg: 30 },
  down30: { setup: 'temperateSea', start: { depthM: 8, pitchDeg: -30 }, pitchDeg: -30 },
  down60: { setup: 'temperateSea', start: { depthM: 8, pitchDeg: -60 }, pitchDeg: -60 },
  down90: { setup: 'temperateSea', start: { depthM: 8, pitchDeg: -90 }, pitchDeg: -90 },
  onBack: { setup: 'temperateSea', start: { depthM: 8, pitchDeg: 180 }, pitchDeg: 180 },
};

/** Jacket gas with which a diver hovers at a depth, m³. */
function neutralJacketM3(rig: Rig, depthM: number): number {
  let [low, high] = [0, rig.jacket.capacityM3];
  for (let i = 0; i < 40; i++) {
    const jacketM3 = (low + high) / 2;
    if (netForceN(rig, instantOf(rig, { depthM, jacketM3 })) < 0) low = jacketM3;
    else high = jacketM3;
  }
  return high;
}

/** A dive under its script. */
export class ScriptedDive {
  readonly dive: Dive;
  readonly #script: Script;
  #pressUntilS = 0;
  #nextS = 1;
  #press: Partial<Controls> = {};

  constructor(name: string) {
    const script = scripts[name];
    if (!script) throw new RangeError(`ScriptedDive: no script ${name}`);
    this.#script = script;
    const setup = setups[script.setup]!;
    const rig = rigOf(script.kit?.(setup) ?? setup);
    const depthM = script.floating ? floatingDepthM(rig, script.start.jacketM3 ?? 0) : script.start.depthM;
    const start = startState(rig, {
      jacketM3: neutralJacketM3(rig, depthM),
      ...script.start,
      depthM,
    });
    this.dive = new Dive(rig, start, this.#controls(rig));
  }

  #controls(rig = this.dive.rig): Controls {
    return { ...restingControls(midBreathCl(rig)), pitchDeg: this.#script.pitchDeg ?? 0 };
  }

  /** Dives on by some ticks, a multiple of six. */
  advance(ticks: number): void {
    const end = this.dive.tick + ticks;
    while (this.dive.tick < end) {
      const s = this.dive.tick / TICKS_PER_S;
      let controls = this.#controls();
      for (const [fromS, toS, act] of this.#script.acts ?? [])
        if (s >= fromS && s < toS) controls = { ...controls, ...act };
      if (this.#script.seekM !== undefined) controls = { ...controls, ...this.#seek(s, this.#script.seekM) };
      this.dive.steer(controls);
      this.dive.advance(6);
    }
  }

  #seek(s: number, seekM: number): Partial<Controls> {
    const { depthM, speedMps } = this.dive.state;
    if (s >= this.#nextS) {
      const error = depthM + speedMps * 9 - seekM;
      const add = error > 0 ? { jacketAdd: 1 } : { jacketVent: ventFor(direction(this.#script.pitchDeg ?? 0).sin) };
      this.#press = Math.abs(error) > 0.4 ? add : {};
      this.#pressUntilS = s + Math.min(0.8, 0.1 + Math.abs(error) * 0.2);
      this.#nextS = s + 2.5;
    }
    return s < this.#pressUntilS ? this.#press : {};
  }
}
