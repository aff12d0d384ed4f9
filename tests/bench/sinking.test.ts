import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Sinking, terminalMps, type Drop, type FallWater } from '../../src/bench/index.ts';

const drop: Drop = {
  massKg: 2,
  densityKgPerM3: 11340,
  longM: 0.126,
  highM: 0.088,
  depthM: 3,
  besideM: -0.3,
  speedMps: 0,
  turn: 0.4,
  turnRadps: 2,
};
const water: FallWater = { densityKgPerM3: 1025, gravityMps2: 9.80665, groundM: 20 };

describe('Sinking', () => {
  test('reaches the speed at which drag carries weight less lift, whatever it weighs and wherever it falls', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.25, max: 5, noNaN: true }),
        fc.double({ min: 1.6, max: 10, noNaN: true }),
        (massKg, gravityMps2) => {
          const here = { ...water, gravityMps2, groundM: 60 };
          const way = new Sinking({ ...drop, massKg }, here);
          // A last centimetre a second comes late where gravity is weak.
          const speed = (way.at(12).depthM - way.at(8).depthM) / 4;
          // m g (1 − ρw/ρ) = ½ ρw c A v², written out once more by hand.
          const volume = massKg / 11340;
          const pull = massKg * gravityMps2 * (1 - 1025 / 11340);
          expect(0.5 * 1025 * 1.05 * volume ** (2 / 3) * speed ** 2).toBeCloseTo(pull, 1);
          expect(terminalMps({ massKg, densityKgPerM3: 11340 }, here)).toBeCloseTo(speed, 3);
        },
      ),
      { numRuns: 12 },
    );
  });

  test('falls from rest as the closed form has it: v = vt tanh(a t / vt), with the water that moves along', () => {
    const way = new Sinking({ ...drop, turnRadps: 0, turn: 0 }, { ...water, groundM: 60 });
    const vt = terminalMps(drop, water);
    const volume = drop.massKg / drop.densityKgPerM3;
    const a = ((drop.massKg - 1025 * volume) * water.gravityMps2) / (drop.massKg + 0.67 * 1025 * volume);
    for (const s of [0.2, 0.5, 1, 2, 4]) {
      const fallen = (vt ** 2 / a) * Math.log(Math.cosh((a * s) / vt));
      // A step of the library is first order: half a step of speed, and as much again where drag grows.
      expect(Math.abs(way.at(s).depthM - drop.depthM - fallen)).toBeLessThan(0.012);
    }
  });

  test('comes to lie on the ground, broadside, and stays', () => {
    const way = new Sinking(drop, water);
    const { depthM, turn, besideM } = way.rest();
    expect(depthM + drop.highM / 2).toBeCloseTo(water.groundM, 2);
    expect(Math.abs(Math.sin(turn))).toBeLessThan(0.02);
    expect(Math.abs(besideM - drop.besideM)).toBeLessThan(0.2);
    expect(way.at(90)).toEqual(way.rest());
  });

  test('shows the same place at the same moment, whatever was looked at before', () => {
    const one = new Sinking(drop, water);
    const other = new Sinking(drop, water);
    other.rest();
    for (const s of [0, 0.37, 1.2, 3.3, 5.9, 6.4, 30]) expect(other.at(s)).toEqual(one.at(s));
    expect(one.at(0).depthM).toBe(drop.depthM);
  });

  test('lies on a piece that came down before, not in it', () => {
    const first = new Sinking({ ...drop, turn: 0, turnRadps: 0 }, water).rest();
    const second = new Sinking({ ...drop, turn: 0, turnRadps: 0 }, water, [{ drop, pose: first }]).rest();
    expect(first.depthM - second.depthM).toBeGreaterThan(drop.highM * 0.95);
  });
});
