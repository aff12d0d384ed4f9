import { afterAll, describe, expect, test } from 'vitest';
import {
  advance,
  restingControls,
  startState,
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
