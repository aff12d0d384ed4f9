import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  balanceN,
  criticalPa,
  gasM3,
  gasNeutralAtJ,
  hillJ,
  netAtN,
  noReturnM,
  pressureAt,
  runOver,
  surfaceYM,
  weighed,
  type GasBody,
  type Tank,
  type Under,
} from '../../src/bench/index.ts';

const SEA: Under = { densityKgPerM3: 1026, gravityMps2: 9.80665, surfacePa: 101_325 };

describe('gas bodies', () => {
  const bag: GasBody = { massKg: 1, firmM3: 1e-4, gasJ: 0, mostM3: 5e-3 };
  const at5: GasBody = { ...bag, gasJ: gasNeutralAtJ(bag, SEA, 5) };

  test('Boyle: pressure times volume stays while the skin is slack', () => {
    for (const depthM of [1, 5, 10, 20, 40]) {
      const pa = pressureAt(SEA, depthM);
      expect(pa * gasM3(at5, pa)).toBeCloseTo(at5.gasJ, 9);
    }
  });

  test('made neutral at 5 m: light above, heavy below, the more the farther; a rigid ball stays neutral', () => {
    expect(netAtN(at5, SEA, 5)).toBeCloseTo(0, 9);
    expect(netAtN(at5, SEA, 4)).toBeGreaterThan(0);
    // k = ρ² g² V / p, the textbook stiffness of free gas.
    const k = ((SEA.densityKgPerM3 * SEA.gravityMps2) ** 2 * gasM3(at5, pressureAt(SEA, 5))) / pressureAt(SEA, 5);
    expect(-(netAtN(at5, SEA, 5.001) - netAtN(at5, SEA, 4.999)) / 0.002).toBeCloseTo(k, 4);
    const ball: GasBody = { massKg: 1, firmM3: 1 / SEA.densityKgPerM3, gasJ: 0, mostM3: 0 };
    for (const depthM of [5, 20, 40]) expect(netAtN(ball, SEA, depthM)).toBeCloseTo(0, 9);
    expect(criticalPa(ball, SEA.densityKgPerM3)).toBeNull();
  });

  test('the bottle diver: critical pressure and point of no return are where the net force vanishes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.2, noNaN: true }),
        fc.double({ min: 0.3, max: 0.9, noNaN: true }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (massKg, firmShare, depthM) => {
          const firmM3 = (firmShare * massKg) / SEA.densityKgPerM3;
          const made: GasBody = { massKg, firmM3, mostM3: massKg / SEA.densityKgPerM3, gasJ: 0 };
          const body = { ...made, gasJ: gasNeutralAtJ(made, SEA, depthM) };
          expect(criticalPa(body, SEA.densityKgPerM3)! / pressureAt(SEA, depthM)).toBeCloseTo(1, 9);
          expect(noReturnM(body, SEA)).toBeCloseTo(depthM, 6);
          // Squeezed by 10 kPa the point comes up by 10 kPa worth of water.
          const squeezed = { ...SEA, surfacePa: SEA.surfacePa + 1e4 };
          expect(noReturnM(body, SEA)! - noReturnM(body, squeezed)!).toBeCloseTo(
            1e4 / (SEA.densityKgPerM3 * SEA.gravityMps2),
            6,
          );
          expect(netAtN(body, squeezed, depthM)).toBeLessThan(0);
        },
      ),
    );
  });

  test('the hill is the integral of the net force, and highest at the point of no return', () => {
    const steps = 20_000;
    for (const toM of [2, 5, 12, 30]) {
      let sum = 0;
      for (let i = 0; i < steps; i++) sum += (netAtN(at5, SEA, (toM * (i + 0.5)) / steps) * toM) / steps;
      expect(hillJ(at5, SEA, toM)).toBeCloseTo(sum, 5);
    }
    for (const depthM of [1, 4.9, 5.1, 9]) expect(hillJ(at5, SEA, depthM)).toBeLessThan(hillJ(at5, SEA, 5));
  });
});

describe('the spring balance', () => {
  test('(m − ρV)g for 500 bodies, and back to volume and density within 0.1 %', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-5, max: 1e-2, noNaN: true }),
        fc.double({ min: 1100, max: 12_000, noNaN: true }),
        fc.double({ min: 990, max: 1040, noNaN: true }),
        (volumeM3, density, rho) => {
          const massKg = density * volumeM3;
          const air = balanceN({ massKg, submergedM3: 0 }, rho, 9.80665);
          const water = balanceN({ massKg, submergedM3: volumeM3 }, rho, 9.80665);
          expect(water).toBeCloseTo((massKg - rho * volumeM3) * 9.80665, 9);
          const found = weighed(air, water, rho, 9.80665);
          expect(found.volumeM3 / volumeM3).toBeCloseTo(1, 6);
          expect(found.densityKgPerM3 / density).toBeCloseTo(1, 6);
          expect(found.massKg / massKg).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('weighed() throws if water takes nothing off', () => {
    expect(() => weighed(2, 2, 1000, 9.8)).toThrow('a body weighs less in water');
    expect(() => weighed(NaN, 2, 1000, 9.8)).toThrow('NaN N in air');
  });
});

describe('the tank', () => {
  const tank: Tank = { widthM: 1, heightM: 0.6, spoutYM: null, waterM2: 0.5, glassM2: 0 };
  const block = [
    { xM: 0.2, yM: 0.2 },
    { xM: 0.4, yM: 0.2 },
    { xM: 0.4, yM: 0.4 },
    { xM: 0.2, yM: 0.4 },
  ];

  test('the surface rises by what goes under, also where a part stays dry', () => {
    expect(surfaceYM(tank, [])).toBeCloseTo(0.1, 9);
    expect(surfaceYM(tank, [block])).toBeCloseTo(0.1 - 0.04, 8);
    // Half in: 1·(0.6 − y) = 0.35 + 0.2·(0.4 − y) gives y = 0.2125.
    expect(surfaceYM({ ...tank, waterM2: 0.35 }, [block])).toBeCloseTo(0.2125, 8);
  });

  test('with the spout open just what is displaced runs into the glass (Archimedes)', () => {
    const full = runOver({ ...tank, spoutYM: 0.1 }, [], 60);
    expect(full.glassM2).toBeCloseTo(0, 8);
    const after = runOver(full, [block], 120);
    expect(after.glassM2).toBeCloseTo(0.04, 7);
    expect(surfaceYM(after, [block])).toBeCloseTo(0.1, 7);
    expect(runOver(after, [block], 120)).toEqual(expect.objectContaining({ glassM2: expect.closeTo(0.04, 7) }));
  });

  test('over the lip it is lost, and nothing of it is in the glass', () => {
    const brim = runOver({ ...tank, waterM2: 0.6 }, [block], 1);
    expect(brim.glassM2).toBe(0);
    expect(brim.waterM2).toBeCloseTo(0.56, 7);
  });
});
