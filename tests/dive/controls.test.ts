import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  CONTROL_NAMES,
  CONTROL_RANGES,
  Dive,
  RECORDED,
  copyState,
  degreesOf,
  direction,
  hashOf,
  quantised,
  restingControls,
  rowOf,
  startState,
  type Controls,
} from '../../src/dive/index.ts';
import { stateNumbers, stateOf } from '../../src/dive/state.ts';
import { EXAMPLE, weighed } from '../reference/rigs.ts';

const RIG = weighed(EXAMPLE);
const anyNumber = fc.oneof(fc.double(), fc.constantFrom(NaN, Infinity, -Infinity, -0, 1e300));
const anyControls = fc.record(
  Object.fromEntries(CONTROL_NAMES.map((name) => [name, anyNumber])),
) as fc.Arbitrary<Controls>;

describe('controls', () => {
  test('quantised() gives whole numbers in range whatever comes, and leaves those as they are', () => {
    fc.assert(
      fc.property(anyControls, (controls) => {
        const whole = quantised(controls);
        for (const name of CONTROL_NAMES) {
          const [least, most] = CONTROL_RANGES[name];
          expect(Number.isInteger(whole[name])).toBe(true);
          expect(whole[name]).toBeGreaterThanOrEqual(least);
          expect(whole[name]).toBeLessThanOrEqual(most);
        }
        expect(quantised(whole)).toEqual(whole);
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  test('Dive.steer() counts from the very next tick, whichever that is', () => {
    for (let ticks = 1; ticks <= 12; ticks++) {
      const [dive, left] = [0, 0].map(() => new Dive(RIG, startState(RIG, { depthM: 8 }), restingControls(320)));
      for (const one of [dive!, left!]) one.advance(ticks);
      expect(dive!.onTwentieth).toBe(ticks % 6 === 0);
      dive!.steer({ ...restingControls(320), jacketAdd: 1 });
      for (const one of [dive!, left!]) one.advance(1);
      expect(dive!.state.jacketMol).toBeGreaterThan(left!.state.jacketMol);
      expect(dive!.changes[1]!.tick).toBe(ticks);
    }
  });

  test('Dive.steer() keeps only what differs, and the last word on one tick', () => {
    const dive = new Dive(RIG, startState(RIG, { depthM: 8 }), restingControls(320));
    dive.steer(restingControls(320));
    expect(dive.changes).toHaveLength(1);
    dive.advance(6);
    dive.steer(restingControls(330));
    dive.steer(restingControls(340));
    expect(dive.changes.map(({ controls }) => controls.lungCl)).toEqual([320, 340]);
  });
});

describe('attitude', () => {
  test('direction() is a unit vector that degreesOf() reads back, every degree', () => {
    for (let degrees = -180; degrees <= 180; degrees++) {
      const { cos, sin } = direction(degrees);
      expect(Math.abs(cos * cos + sin * sin - 1)).toBeLessThan(4e-16);
      expect(Math.abs(Math.cos((degrees * Math.PI) / 180) - cos)).toBeLessThan(1e-15);
      expect(Math.abs(Math.sin((degrees * Math.PI) / 180) - sin)).toBeLessThan(1e-15);
      if (Math.abs(degrees) < 180) expect(degreesOf(cos, sin)).toBeCloseTo(degrees, 12);
    }
  });

  test('quarter turns are exact', () => {
    expect([0, 90, 180, -90].map(direction)).toEqual([
      { cos: 1, sin: 0 },
      { cos: 0, sin: 1 },
      { cos: -1, sin: 0 },
      { cos: 0, sin: -1 },
    ]);
  });

  test('direction() refuses fractions and more than half a turn', () => {
    for (const degrees of [0.5, 181, -181, NaN]) expect(() => direction(degrees)).toThrow(RangeError);
  });
});

describe('state and recording', () => {
  test('stateOf() undoes stateNumbers() to the bit, and hashOf() sees a change in the last one', () => {
    const state = startState(RIG, { depthM: 8.123, jacketM3: 1.3e-3 });
    expect(hashOf(stateOf(stateNumbers(state)))).toBe(hashOf(state));
    const nudged = { ...copyState(state), depthM: 8.123 * (1 + 2 ** -52) };
    expect(hashOf(nudged)).not.toBe(hashOf(state));
  });

  test('copyState() shares nothing', () => {
    const state = startState(RIG, { depthM: 8 });
    const copy = copyState(state);
    copy.cylinderMol[0] = 0;
    copy.depthM = 3;
    expect(state.depthM).toBe(8);
    expect(state.cylinderMol[0]).toBeGreaterThan(0);
  });

  test('a recording has a row every twelfth tick, equal to rowOf() the state of that moment', () => {
    const dive = new Dive(RIG, startState(RIG, { depthM: 8 }), restingControls(320));
    const rows = [rowOf(RIG, dive.state)];
    for (let i = 0; i < 40; i++) {
      dive.advance(6);
      if (dive.tick % 12 === 0) rows.push(rowOf(RIG, dive.state));
    }
    expect(dive.recording.rows).toBe(21);
    rows.forEach((row, i) => expect(dive.recording.row(i)).toEqual(row));
    for (const name of RECORDED) expect([...dive.recording.column(name)]).toEqual(rows.map((row) => row[name]));
    expect(() => dive.recording.row(21)).toThrow(RangeError);
  });

  test('Recording.cutAfter() forgets what came after a tick', () => {
    const dive = new Dive(RIG, startState(RIG, { depthM: 8 }));
    dive.advance(120);
    dive.recording.cutAfter(50);
    expect(dive.recording.rows).toBe(5);
    expect(dive.recording.dueTick).toBe(60);
  });
});
