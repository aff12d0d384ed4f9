import membrane from '../../../src/diver/setups/drysuit-membrane.yaml';
import loop from '../../../src/diver/setups/closed-loop.yaml';
import twin from '../../../src/diver/setups/twin.yaml';
import {
  Dive,
  midBreathCl,
  restingControls,
  startState,
  withMishaps,
  type Controls,
  type Mishap,
} from '../../../src/dive/index.ts';
import { rigOf, type Setup } from '../../../src/diver/index.ts';

type Wish = Partial<Record<keyof Controls, number>>;
/** Seconds from the start, and what changes then. */
type Script = readonly (readonly [tS: number, wish: Wish])[];

const drysuit = membrane as Setup;
const closedLoop = loop as Setup;

/** A membrane drysuit in layered water that moves, over a ledge, beside a line, with lead that can go. */
const everything: Setup = {
  ...drysuit,
  water: {
    ...drysuit.water,
    layers: [
      { fromM: 0, salinityPsu: 4, temperatureC: 17, mixingM: 0 },
      { fromM: 6, salinityPsu: 33, temperatureC: 9, mixingM: 1.5 },
      { fromM: 15, salinityPsu: 35, temperatureC: 6, mixingM: 0 },
    ],
    bottomM: 24,
    ledgeM: 12,
    line: true,
    currentDownMps: 0.03,
  },
  lead: [
    { massKg: 3, place: 'belt', releasable: true },
    { massKg: 3.5, place: 'pocket', releasable: true },
    ...drysuit.lead,
  ],
};

interface Scripted {
  readonly setup: Setup;
  readonly seconds: number;
  readonly depthM: number;
  readonly script: Script;
  readonly mishaps?: readonly Mishap[];
}

const SCRIPTS = {
  everything: {
    setup: everything,
    seconds: 180,
    depthM: 2,
    script: [
      [1, { pitchDeg: -50, finsN: 45, suitValveHPa: 30 }],
      [9, { finsN: 100, suitAdd: 1 }],
      [14, { finsN: 0, suitAdd: 0, pitchDeg: 0 }],
      [20, { jacketAdd: 1 }],
      [23.5, { jacketAdd: 0, pitchDeg: 70 }],
      [26, { jacketVent: 1, oral: 1 }],
      [29, { jacketVent: 0, breath: 1, lungCl: 180 }],
      [33, { oral: 0, lungCl: 560, suitValveHPa: 3 }],
      [40, { suitVent: 1 }],
      [44, { suitVent: 0, breath: 0, lungCl: 330, ledge: 0 }],
      [60, { holdLine: 1 }],
      [64, { holdLine: 0, attitude: 1, torqueNm: -55 }],
      [70, { torqueNm: 40, jacketAdd: 1 }],
      [73, { attitude: 0, pitchDeg: 35, jacketAdd: 0 }],
      [85, { breath: 1, lungCl: 520 }],
      [89, { breath: 2, jacketAdd: 1, suitAdd: 1, suitValveHPa: 90 }],
      [95, { releaseMask: 1, finsN: 60, pitchDeg: 90 }],
      [99, { jacketAdd: 0, suitAdd: 0 }],
      [125, { breath: 0, finsN: -30, jacketVent: 1, suitVent: 1 }],
      [140, { jacketVent: 0, suitVent: 0, pitchDeg: -90, finsN: 45, releaseMask: 2 }],
      [160, { pitchDeg: 179, finsN: 0, jacketVent: 2 }],
    ],
  },
  twin: {
    setup: twin as Setup,
    seconds: 180,
    depthM: 12,
    script: [
      [4, { jacketAdd: 1 }],
      [13, { jacketAdd: 0, pitchDeg: 60 }],
      [20, { jacketVent: 1 }],
      [23, { jacketVent: 0, pitchDeg: -20, finsN: 20 }],
      [40, { lungCl: 250, finsN: 0 }],
      [52, { lungCl: 420, jacketAdd: 1 }],
      [53, { jacketAdd: 0 }],
    ],
    mishaps: [
      { kind: 'nudge', atS: 30, upNs: -45 },
      { kind: 'current', atS: 60, downMps: 0.13, forS: 25 },
      { kind: 'gas-low', atS: 75, leftBar: 61 },
      { kind: 'current', atS: 110, downMps: -0.21, forS: 9.3 },
      { kind: 'vent-open', atS: 115, forS: 4 },
      { kind: 'nudge', atS: 119.51, upNs: 33 },
    ],
  },
  loop: {
    // A diluent valve that cannot follow the way down, so that the loop falls short.
    setup: { ...closedLoop, loop: { ...closedLoop.loop!, diluentLps: 0.02 } },
    seconds: 120,
    depthM: 6,
    script: [
      [2, { noseVent: 1 }],
      [4, { noseVent: 0, pitchDeg: -40, finsN: 35 }],
      [30, { diluent: 1, finsN: 0 }],
      [31, { diluent: 0, jacketAdd: 1 }],
      [60, { jacketAdd: 0, pitchDeg: 90 }],
    ],
  },
} as const satisfies Record<string, Scripted>;

export type ScriptName = keyof typeof SCRIPTS;
export const SCRIPT_NAMES = Object.keys(SCRIPTS) as ScriptName[];

/** A dive of a script, in frames of uneven length as a page would run it: what comes out must not depend on them. */
export function scriptedDive(name: ScriptName): Dive {
  const { setup, seconds, depthM, script, mishaps = [] }: Scripted = SCRIPTS[name];
  const rig = rigOf(setup);
  const dive = new Dive(rig, startState(rig, { depthM }), restingControls(midBreathCl(rig)));
  let next = 0;
  let wish: Controls = dive.controls;
  for (let slot = 0; slot < seconds * 20; slot++) {
    for (; next < script.length && script[next][0] * 20 <= slot; next++) wish = { ...wish, ...script[next][1] };
    // A hand that never rests: the level of the breath wanders by a centilitre or two.
    wish = { ...wish, lungCl: wish.lungCl + ((slot * 7) % 5) - 2 };
    dive.steer(withMishaps(wish, mishaps, dive.state));
    for (const ticks of slot % 2 === 0 ? [1, 5] : [2, 2, 2]) {
      dive.advance(ticks);
      // And now and then it presses between two twentieths.
      if (slot % 3 === 0 && !dive.onTwentieth) dive.steer({ ...dive.controls, lungCl: dive.controls.lungCl + 1 });
    }
  }
  return dive;
}
