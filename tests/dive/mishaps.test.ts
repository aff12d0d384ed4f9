import { describe, expect, test } from 'vitest';
import {
  Dive,
  advance,
  diveAt,
  quantised,
  replay,
  restingControls,
  startState,
  totalMol,
  withMishaps,
  type Controls,
  type DiveState,
  type Mishap,
} from '../../src/dive/index.ts';
import { ledger, netOf, type ForcePart, type Rig } from '../../src/diver/index.ts';
import { vesselPressurePa } from '../../src/gas/index.ts';
import { STANDARD_PRESSURE_PA } from '../../src/water/index.ts';
import { sinkingWithN } from '../reference/answers-motion.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';
import { STILL } from './press.ts';

const RIG = weighed(EXAMPLE);
/** Nothing in it that water compresses: neutral at every depth. */
const RIGID = sinkingWithN(changed(EXAMPLE, { water: { bottomM: 300 } }), 0, 20);
const rigidState = () => startState(RIGID, { depthM: 20, lungM3: 3.2e-3 });

const sumOf = (parts: readonly ForcePart[], what: 'massKg' | 'buoyancyN') =>
  parts.reduce((sum, part) => sum + part[what], 0);
const displacedKg = (rig: Rig, state: DiveState) => sumOf(ledger(rig, state), 'buoyancyN') / rig.column.gravityMps2;
const inertiaKg = (rig: Rig, state: DiveState) =>
  sumOf(ledger(rig, state), 'massKg') + rig.addedMassLevel * displacedKg(rig, state);
const halfDrag = (rig: Rig) => 0.5 * rig.column.segments[0]!.densityKgPerM3 * rig.dragAreaLevelM2;

/** A dive under mishaps, looked at on every tick on which hands may change. */
function flown(
  rig: Rig,
  start: DiveState,
  wanted: Controls,
  mishaps: readonly Mishap[],
  seconds: number,
  look = (_: Dive) => {},
) {
  const dive = new Dive(rig, start, wanted);
  for (let slot = 0; slot < seconds * 20; slot++) {
    dive.steer(withMishaps(wanted, mishaps, dive.state));
    dive.advance(6);
    look(dive);
  }
  return dive;
}

describe('a nudge', () => {
  test('of J newton seconds gives a diver at rest J / (m + added mass), as v∞·tanh(t/τ) has it with drag', () => {
    const state = rigidState();
    const inertia = inertiaKg(RIGID, state);
    for (const upNs of [40, -40]) {
      const { speedMps } = flown(RIGID, rigidState(), STILL, [{ kind: 'nudge', atS: 0, upNs }], 0.25).state;
      const forceN = -upNs / 0.25;
      const terminal = Math.sqrt(Math.abs(forceN) / halfDrag(RIGID));
      const tanh = terminal * Math.tanh((0.25 * Math.abs(forceN)) / (inertia * terminal));
      // Downwards the form is exact; upwards a little breath leaves as bubbles, which makes him lighter by a hundredth of a gram.
      expect(Math.abs(speedMps - Math.sign(forceN) * tanh)).toBeLessThan(upNs < 0 ? 1e-10 : 1e-7);
      // Drag takes 4 % of it while it lasts.
      expect(Math.abs((speedMps * inertia) / -upNs - 1)).toBeLessThan(0.05);
    }
  });

  test('is over after a quarter of a second on whatever tick it falls, and is told once', () => {
    for (const atS of [1, 1.01, 1.049]) {
      const dive = flown(
        RIG,
        startState(RIG, { depthM: 8 }),
        restingControls(320),
        [{ kind: 'nudge', atS, upNs: 30 }],
        3,
      );
      const pushes = dive.changes.filter(({ controls }) => controls.nudgeUpN !== 0);
      expect(pushes.map(({ controls }) => controls.nudgeUpN)).toEqual([120]);
      const after = dive.changes[dive.changes.indexOf(pushes[0]!) + 1]!;
      expect(after.tick - pushes[0]!.tick).toBe(30);
      expect(dive.events.map(({ kind }) => kind)).toEqual(['nudged-up']);
    }
  });
});

describe('a current', () => {
  test('that is there at once takes a neutral diver along as drag alone does: u − u / (1 + u t ½ρCdA / (m + added mass))', () => {
    const state = rigidState();
    const rate = halfDrag(RIGID) / inertiaKg(RIGID, state);
    for (let second = 1; second <= 60; second++) {
      advance(RIGID, state, { ...STILL, waterDownMmps: 200 }, 120);
      const expected = 0.2 - 0.2 / (1 + 0.2 * rate * second);
      expect(Math.abs(state.speedMps - expected), `after ${second} s`).toBeLessThan(1e-9);
    }
    expect(state.speedMps).toBeGreaterThan(0.18);
  });

  test('that sets in and ebbs carries a neutral diver exactly along: he goes as the water goes, all the time', () => {
    const mishap: Mishap = { kind: 'current', atS: 1, downMps: 0.2, forS: 4 };
    const start = rigidState();
    const waterMps = (s: number) => 0.2 * (Math.min(Math.max(s - 1, 0), 1) - Math.min(Math.max(s - 5, 0), 1));
    const dive = flown(RIGID, start, STILL, [mishap], 8, ({ tick, state }) =>
      expect(Math.abs(state.speedMps - waterMps(tick / 120))).toBeLessThan(2e-4),
    );
    // 0.2 m/s for four seconds, ramps counted half each.
    expect(Math.abs(dive.state.depthM - 20 - 0.8)).toBeLessThan(2e-4);
  });

  test('sinks a diver with a surplus by the speed of the water and his own on top', () => {
    const heavy = sinkingWithN(changed(EXAMPLE, { water: { bottomM: 300 } }), 15, 5);
    const state = startState(heavy, { depthM: 5, lungM3: 3.2e-3 });
    advance(heavy, state, { ...STILL, waterDownMmps: -150 }, 120 * 60);
    expect(state.speedMps).toBeCloseTo(Math.sqrt(15 / halfDrag(heavy)) - 0.15, 8);
  });

  test('is told when it begins and ends; two of them add up, and water that rises is told as such', () => {
    const down: Mishap = { kind: 'current', atS: 0.5, downMps: 0.2, forS: 2 };
    const up: Mishap = { kind: 'current', atS: 5, downMps: -0.1, forS: 1 };
    const start = startState(RIG, { depthM: 8 });
    const both = flown(RIG, start, restingControls(320), [down, up, { ...down, downMps: 0.1 }], 8);
    expect(Math.max(...both.changes.map(({ controls }) => controls.waterDownMmps))).toBe(300);
    expect(both.events.map(({ kind, tick }) => [kind, tick])).toEqual([
      ['down-current', 60],
      ['current-end', 420],
      ['up-current', 600],
      ['current-end', 840],
    ]);
  });
});

describe('gas that runs low', () => {
  test('leaves the pressure said in every cylinder, takes just the gas’s weight, and loses no mole', () => {
    const twin = weighed({
      ...EXAMPLE,
      cylinders: [EXAMPLE.cylinders[0]!, { ...EXAMPLE.cylinders[0]!, waterL: 7, fillBar: 120 }],
    });
    const state = startState(twin, { depthM: 12, jacketM3: 3e-3 });
    const mol = totalMol(state);
    const before = ledger(twin, state);
    const partsBefore = new Map(before.map((part) => [part.part, part]));
    // Nothing but the loss: no time passes in an advance by no tick.
    advance(twin, state, { ...STILL, gasLeftBar: 40 }, 0);
    const after = ledger(twin, state);
    state.cylinderMol.forEach((left, i) =>
      expect(
        vesselPressurePa(left, twin.vessels[i]!.waterM3, twin.waterTemperatureK) - STANDARD_PRESSURE_PA,
      ).toBeCloseTo(40e5, 3),
    );
    const lostKg = state.bubbleMol * twin.kgPerMol;
    expect(lostKg).toBeGreaterThan(2);
    expect(Math.abs(netOf(after) - netOf(before) - lostKg * twin.column.gravityMps2)).toBeLessThan(1e-9);
    for (const part of after) if (!part.part.startsWith('cylinder')) expect(part).toEqual(partsBefore.get(part.part));
    expect(Math.abs(totalMol(state) / mol - 1)).toBeLessThan(1e-12);
  });

  test('loses nothing that is not there, happens once, and is told with its mass', () => {
    const low: Mishap = { kind: 'gas-low', atS: 1, leftBar: 40 };
    const dive = flown(
      RIG,
      startState(RIG, { depthM: 8 }),
      restingControls(320),
      [low, { ...low, atS: 2, leftBar: 60 }],
      3,
    );
    expect(dive.events).toHaveLength(1);
    expect(dive.events[0]).toMatchObject({ kind: 'gas-lost', tick: 120 });
    const bar =
      (vesselPressurePa(dive.state.cylinderMol[0]!, RIG.vessels[0]!.waterM3, RIG.waterTemperatureK) - 101325) / 1e5;
    expect(bar).toBeGreaterThan(38);
    expect(bar).toBeLessThan(40);
    expect(dive.events[0]!.massKg).toBeCloseTo(
      dive.recording.at(0, 'cylinderPa') > 0 ? dive.state.bubbleMol * RIG.kgPerMol : 0,
      1,
    );
  });
});

describe('valves that stick and lead that is lost', () => {
  const start = () => startState(RIG, { depthM: 8, jacketM3: 4e-3 });
  test.each([
    ['inflator-open', 'jacketAdd', 1],
    ['vent-open', 'jacketVent', 2],
    ['suit-inflator-open', 'suitAdd', 1],
  ] as const)('%s works by itself for its time', (kind, control, value) => {
    const dive = flown(RIG, start(), restingControls(320), [{ kind, atS: 1, forS: 2 }], 4);
    expect(dive.changes.map(({ tick, controls }) => [tick, controls[control]])).toEqual([
      [0, 0],
      [120, value],
      [360, 0],
    ]);
  });

  test('vent-shut lets nothing out however it is pressed; the vent that opens is the one over which the gas lies', () => {
    const pressing = { ...restingControls(320), jacketVent: 2 };
    const shut = flown(RIG, start(), pressing, [{ kind: 'vent-shut', atS: 0, forS: 3 }], 3);
    expect(shut.state.letOutM3).toBe(0);
    const upright = startState(RIG, { depthM: 8, jacketM3: 4e-3, pitchDeg: 90 });
    const wanted = { ...restingControls(320), pitchDeg: 90 };
    expect(withMishaps(wanted, [{ kind: 'vent-open', atS: 0, forS: 1 }], upright).jacketVent).toBe(1);
  });

  test('a lost piece stays lost', () => {
    const dive = flown(RIG, start(), restingControls(320), [{ kind: 'lead-lost', atS: 1, piece: 1 }], 3);
    expect(dive.events).toMatchObject([{ kind: 'lead-released', tick: 120, piece: 1 }]);
    expect(dive.state.releasedMask).toBe(1);
    expect(dive.controls.releaseMask).toBe(0);
  });
});

describe('a dive in which things went wrong', () => {
  const all: readonly Mishap[] = [
    { kind: 'nudge', atS: 1, upNs: -40 },
    { kind: 'current', atS: 2, downMps: 0.2, forS: 6 },
    { kind: 'gas-low', atS: 4, leftBar: 40 },
    { kind: 'lead-lost', atS: 5, piece: 1 },
    { kind: 'inflator-open', atS: 9, forS: 2 },
  ];
  const dive = flown(RIG, startState(RIG, { depthM: 8, jacketM3: 2e-3 }), restingControls(320), all, 15);

  test('is replayed to the bit from its run alone, its events too, and taken up at any moment of it', () => {
    const again = replay(dive.run());
    expect(again.hash()).toBe(dive.hash());
    expect(again.events).toEqual(dive.events);
    for (const tick of [120, 126, 240, 246, 480, 486, 600, 606, 1080]) {
      const [taken, cut] = [diveAt(dive, tick), replay(dive.run(), tick)];
      expect(taken.hash()).toBe(cut.hash());
      expect(taken.events, `at ${tick}`).toEqual(cut.events);
      // Flown on with the same hands and the same mishaps it is the same dive.
      while (taken.tick < dive.tick) {
        taken.steer(withMishaps(restingControls(320), all, taken.state));
        taken.advance(6);
      }
      expect(taken.hash()).toBe(dive.hash());
      expect(taken.events).toEqual(dive.events);
    }
  });

  test('costs what its controls say: mishaps that are over, or to come, leave them alone', () => {
    const rest = restingControls(320);
    expect(withMishaps(rest, all, startState(RIG, { depthM: 8 }))).toEqual(rest);
    expect(withMishaps(rest, all, dive.state)).toEqual(rest);
    for (const { controls } of dive.changes) expect(quantised(controls)).toEqual(controls);
  });
});
