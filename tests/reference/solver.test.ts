import { afterAll, describe, expect, test } from 'vitest';
import {
  Dive,
  advance,
  restingControls,
  startState,
  withMishaps,
  type Controls,
  type DiveState,
  type Start,
} from '../../src/dive/index.ts';
import { instantOf, netForceN, type Rig, type Setup } from '../../src/diver/index.ts';
import { integrate } from './adaptive.ts';
import { systemOf, type Press } from './equations.ts';
import { depthByLedgerM } from './ledger-steps.ts';
import { EXAMPLE, changed, setupOf, weighed } from './rigs.ts';

const ALUMINIUM = {
  ...EXAMPLE,
  cylinders: [
    {
      material: 'aluminium',
      waterL: 11.1,
      emptyKg: 15.1,
      externalL: 16.5,
      workingBar: 207,
      fillBar: 207,
      o2Percent: 21,
    },
  ],
} as Setup;
const DRYSUIT: Setup = { ...EXAMPLE, suit: setupOf('\nsuit: { kind: drysuit, shell: membrane }').suit };

const HALOCLINE = changed(EXAMPLE, {
  water: {
    layers: [
      { fromM: 0, salinityPsu: 5, temperatureC: 18, mixingM: 0 },
      { fromM: 7, salinityPsu: 34, temperatureC: 10, mixingM: 2 },
    ],
  },
});

/** Nothing pressed, breathing about mid-breath. */
const BREATHING = restingControls(320);

/** The jacket (or suit) volume that makes a rig neutral at a depth at the lungs' middle, m³. */
function neutralM3(rig: Rig, depthM: number, bag: 'jacketM3' | 'suitGasM3' = 'jacketM3'): number {
  let [low, high] = [0, 18e-3];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (netForceN(rig, instantOf(rig, { depthM, [bag]: middle })) < 0) low = middle;
    else high = middle;
  }
  return low;
}

/** The step's own answer. */
function stepped(rig: Rig, start: Start, presses: readonly Press[], seconds: number, locked: boolean): DiveState {
  const state = startState(rig, start);
  presses.forEach(({ fromS, controls }, i) => {
    const untilS = presses[i + 1]?.fromS ?? seconds;
    advance(rig, state, controls, Math.round((untilS - fromS) * 120), undefined, locked);
  });
  return state;
}

/** Millimetres between the step and the adaptive solver at the end. */
function offMm(rig: Rig, start: Start, presses: readonly Press[], seconds = 60, locked = false): number {
  const { derivative, start: y, edges } = systemOf(rig, startState(rig, start), presses, seconds, locked);
  const reference = integrate(derivative, y, edges);
  const state = stepped(rig, start, presses, seconds, locked);
  return Math.abs(reference[0]! - state.depthM) * 1e3;
}

// What was measured, for the limits page: shown once at the end.
const measured: string[] = [];
const note = (what: string, mm: number) => measured.push(`  ${what}: ${mm.toExponential(1)} mm`);
afterAll(() => void process.stdout.write(`\nThe step against the reference solver:\n${measured.join('\n')}\n`));

const still = (controls: Controls = BREATHING): Press[] => [{ fromS: 0, controls }];

/** One control changed between two times. */
const pressed = (fromS: number, toS: number, press: Partial<Controls>): Press[] => [
  { fromS: 0, controls: BREATHING },
  { fromS, controls: { ...BREATHING, ...press } },
  { fromS: toS, controls: BREATHING },
];

const weighedRig = weighed(EXAMPLE);
const heavyRig = weighed(EXAMPLE, 4);
const dryRig = weighed(DRYSUIT, 2);
const aluRig = weighed(ALUMINIUM);
const layeredRig = weighed(HALOCLINE, 1);
const hover = (rig: Rig, depthM: number): Start => ({ depthM, jacketM3: neutralM3(rig, depthM) });

/** Name, rig, how it begins. */
const BREATHED: readonly (readonly [string, Rig, Start])[] = [
  ['a hover begun at 8 m', weighedRig, hover(weighedRig, 8)],
  ['a descent from 1.5 m', weighedRig, { depthM: 1.5 }],
  [
    'an ascent from 18 m with gas left in the jacket',
    weighedRig,
    { depthM: 18, jacketM3: neutralM3(weighedRig, 16.5) },
  ],
  ['four kilograms too much, hovering at 8 m', heavyRig, hover(heavyRig, 8)],
  ['four kilograms too much, sinking from 1.5 m', heavyRig, { depthM: 1.5 }],
  ['a drysuit begun at 8 m', dryRig, { depthM: 8, suitGasM3: neutralM3(dryRig, 8, 'suitGasM3') }],
  ['aluminium, begun at 8 m', aluRig, hover(aluRig, 8)],
  ['sinking from 3 m into a mixing zone', layeredRig, { depthM: 3 }],
];

describe('the step against an adaptive high-order solver on the ledger’s equations', () => {
  test.each(BREATHED)('%s, a minute of automatic breathing: within 0.01 mm', (name, rig, start) => {
    const mm = offMm(rig, start, still());
    note(name, mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('inflator pressed for 2 s at about 13 m, sinking heavy, 30 s', () => {
    const mm = offMm(heavyRig, { depthM: 12 }, pressed(5, 7, { jacketAdd: 1 }), 30);
    note('inflator', mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('rear vent open for 1 s while hovering heavy at 8 m, 30 s', () => {
    const mm = offMm(heavyRig, hover(heavyRig, 8), pressed(5, 6, { jacketVent: 2 }), 30);
    note('vent', mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('drysuit inlet pressed for 2 s at 12 m, 30 s', () => {
    const mm = offMm(dryRig, { depthM: 12, suitGasM3: 6e-3 }, pressed(5, 7, { suitAdd: 1 }), 30);
    note('suit inlet', mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('a drysuit whose exhaust passes gas, upright', () => {
    const start: Start = { depthM: 18, suitGasM3: 12e-3, pitchDeg: 90 };
    const mm = offMm(dryRig, start, still({ ...BREATHING, pitchDeg: 90 }), 20, true);
    note('suit exhaust', mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('turning under a steady torque', () => {
    const presses = still({ ...BREATHING, attitude: 1, torqueNm: 25 });
    const mm = offMm(weighedRig, hover(weighedRig, 8), presses, 20);
    note('torque', mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('turning head-up on command', () => {
    const turned = { ...BREATHING, pitchDeg: 60 };
    const mm = offMm(
      weighedRig,
      hover(weighedRig, 8),
      [
        { fromS: 0, controls: BREATHING },
        { fromS: 2, controls: turned },
      ],
      20,
    );
    note('turn', mm);
    expect(mm).toBeLessThan(0.01);
  });
});

describe('what goes wrong against the same solver', () => {
  test('a nudge of 40 N s downwards in a quarter of a second at 8 m, 20 s', () => {
    const mm = offMm(weighedRig, hover(weighedRig, 8), pressed(2, 2.25, { nudgeUpN: -160 }), 20);
    note('nudge', mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('water that sinks at 12 m/min from one moment to the next, and rests again after 6 s', () => {
    const mm = offMm(weighedRig, hover(weighedRig, 8), pressed(2, 8, { waterDownMmps: 200 }), 20);
    note('current at once', mm);
    expect(mm).toBeLessThan(0.01);
  });

  test('a down-current that sets in over a second: twentieths of a second stand for a smooth ramp within 0.1 mm', () => {
    const start = hover(weighedRig, 8);
    const mishap = { kind: 'current', atS: 2, downMps: 0.2, forS: 8 } as const;
    const dive = new Dive(weighedRig, startState(weighedRig, start), BREATHING);
    while (dive.tick < 20 * 120) {
      dive.steer(withMishaps(BREATHING, [mishap], dive.state));
      dive.advance(6);
    }
    const ramp = (s: number) => Math.min(Math.max(s, 0), 1);
    const smooth = (s: number) => [0.2 * (ramp(s - 2) - ramp(s - 10)), s > 2 && s < 3 ? 0.2 : s > 10 && s < 11 ? -0.2 : 0] as const;
    const presses = [0, 2, 3, 10, 11].map((fromS) => ({ fromS, controls: BREATHING, water: smooth }));
    const { derivative, start: y, edges } = systemOf(weighedRig, startState(weighedRig, start), presses, 20);
    const mm = Math.abs(integrate(derivative, y, edges)[0]! - dive.state.depthM) * 1e3;
    note('current that sets in over a second', mm);
    expect(mm).toBeLessThan(0.1);
    expect(dive.state.depthM).toBeGreaterThan(9.5);
  });
});

describe('halving the step', () => {
  test.each(BREATHED)(
    '%s: the same steps on a rebuilt ledger agree to 1e-7 mm, half steps within 0.01 mm',
    (name, rig, start) => {
      const from = startState(rig, start);
      const { depthM } = stepped(rig, start, still(), 60, false);
      const wholeMm = Math.abs(depthByLedgerM(rig, from, 320, 60, 1 / 120) - depthM) * 1e3;
      const halfMm = Math.abs(depthByLedgerM(rig, from, 320, 60, 1 / 240) - depthM) * 1e3;
      note(`halved step, ${name}`, halfMm);
      expect(wholeMm).toBeLessThan(1e-7);
      expect(halfMm).toBeLessThan(0.01);
    },
  );
});
