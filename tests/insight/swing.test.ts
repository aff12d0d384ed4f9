import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantOf, netForceN, rigOf, type Rig } from '../../src/diver/index.ts';
import { swingBudget } from '../../src/insight/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { rigid, sinkingWithN } from '../reference/answers-motion.ts';
import { EXAMPLE, changed, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';
import { allowedOff, input, rowOf } from '../reference/rows.ts';

const RHO = 1025.9727538653833;
const G = 9.80665;
const at = (rig: Rig, depthM: number, cylinderBar?: number) =>
  swingBudget(rig, [depthM], cylinderBar === undefined ? {} : { cylinderBar }).depths[0]!;

describe('what suit and cylinder lose', () => {
  test('the suit loses ρ g A t φ (1 − p₀/p), half of it in the first ten metres', () => {
    const rig = weighed(EXAMPLE);
    for (const { depthM, suitLossN } of swingBudget(rig).depths) {
      const lostM3 = 1.35 * 5e-3 * 0.65 * (1 - 101325 / pressurePa(rig.column, depthM));
      expect(Math.abs(suitLossN - RHO * G * lostM3)).toBeLessThan(1e-9);
    }
    // Foam of 0.65 gas keeps 0.676 of its volume at 10 m of sea [derived], ±0.002.
    const row = rowOf('foam-0.65-10');
    const wholeN = 1.35 * 5e-3 * RHO * G;
    const sea = weighed(changed(EXAMPLE, { water: { densityKgPerM3: 1025 } }));
    const keeps = 1 - at(sea, 10).suitLossN / (wholeN * (1025 / RHO));
    expect(Math.abs(keeps - (row.expected as number))).toBeLessThanOrEqual(allowedOff(row));
  });

  test('without foam the suit loses nothing', () => {
    for (const keys of ['\nsuit: { kind: none }', '\nsuit: { kind: drysuit }'])
      expect(swingBudget(rigOf(setupOf(keys))).depths.map(({ suitLossN }) => suitLossN)).toEqual(Array(9).fill(0));
  });

  test('a 12 L cylinder from 200 to 50 bar loses 2.10 kg; two of them twice that', () => {
    // Landmark of the physics [derived], to the digits printed.
    const lossKg = swingBudget(rigOf(EXAMPLE)).cylinderLossN / G;
    expect(Math.abs(lossKg - 2.1)).toBeLessThan(0.01);
    const twin = rigOf({ ...EXAMPLE, cylinders: [EXAMPLE.cylinders[0]!, EXAMPLE.cylinders[0]!] });
    expect(swingBudget(twin).cylinderLossN / G / lossKg).toBeCloseTo(2, 12);
  });

  test.each(['cyl-Al-80-673', 'cyl-steel-71.2-730', 'cyl-steel-75.8-730', 'cyl-steel-94.6-730'])(
    '%s from full to empty loses the pounds between its printed pulls [read]',
    (id) => {
      // Cylinder table of a printed advanced-diver textbook, ch. 1, p. 5, read; ±0.6 lb as the row says.
      const row = rowOf(id);
      const waterL = input(id, 'internal_in3') * 0.0254 ** 3 * 1e3;
      const fillBar = (input(id, 'pressure_psi') * 6894.757) / 1e5;
      const cylinder = { ...EXAMPLE.cylinders[0]!, waterL, fillBar, workingBar: fillBar };
      const rig = rigOf(changed(EXAMPLE, { water: { temperatureC: 20 }, cylinders: [cylinder] }));
      const lossLb = swingBudget(rig, [0], { reserveBar: 0 }).cylinderLossN / G / 0.45359237;
      expect(Math.abs(lossLb - (row.expected as number))).toBeLessThanOrEqual(allowedOff(row));
    },
  );
});

describe('gas in the jacket', () => {
  test.each([
    [0, 1.8],
    [8, 8.9],
  ])('with %s kg too much a 5 mm diver has %s L in it at 10 m with 120 bar', (surplusKg, litres) => {
    // Landmarks of the physics [derived], to the digits printed.
    expect(Math.abs(at(weighed(EXAMPLE, surplusKg), 10, 120).jacketM3 * 1e3 - litres)).toBeLessThan(0.05);
  });

  test('makes the net force nothing, at every depth below the surface and for every diver', () => {
    const rigs = [
      weighed(EXAMPLE, 2),
      weighed(setupOf('\nsuit: { kind: drysuit }'), 1),
      weighed(setupOf('\napparatus: loop'), 1),
      weighed(changed(EXAMPLE, { jacket: { residualL: 0.5 } }), 3),
    ];
    for (const rig of rigs)
      for (const { depthM, jacketM3, leftN } of swingBudget(rig, [1, 5, 12, 33]).depths) {
        const least = {
          ...(rig.drysuit ? { suitGasM3: rig.drysuit.minimumM3 } : {}),
          ...(rig.loop ? { loopM3: rig.loop.minimumM3 } : {}),
        };
        expect(Math.abs(netForceN(rig, instantOf(rig, { depthM, jacketM3, ...least })))).toBeLessThan(1e-9);
        expect(leftN).toBe(0);
      }
  });

  test('every kilogram too much wants (1 − ρ/ρ_lead)/(ρ − ρ_gas) more of it: 0.89 L', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: 0.1, max: 4, noNaN: true }),
        fc.double({ min: 3, max: 38, noNaN: true }),
        (surplusKg, moreKg, depthM) => {
          const [less, more] = [
            at(weighed(EXAMPLE, surplusKg), depthM),
            at(weighed(EXAMPLE, surplusKg + moreKg), depthM),
          ];
          const gasKgPerM3 = ((101325 + RHO * G * depthM) * 28.9647e-3) / (8.314462618 * 288.15);
          const perKgM3 = (more.jacketM3 - less.jacketM3) / moreKg;
          expect(Math.abs(perKgM3 - (1 - RHO / 11340) / (RHO - gasKgPerM3))).toBeLessThan(1e-8);
          expect(Math.abs(perKgM3 - 0.89e-3)).toBeLessThan(0.005e-3);
        },
      ),
      { seed: 11, numRuns: 100 },
    );
  });

  test('in litres of the surface is V·p/p₀, p₀ one standard atmosphere, on a mountain too', () => {
    for (const altitudeM of [0, 2000]) {
      const rig = weighed(changed(EXAMPLE, { water: { altitudeM } }), 3);
      for (const { depthM, jacketM3, jacketSurfaceM3 } of swingBudget(rig).depths)
        expect(jacketSurfaceM3 / jacketM3).toBeCloseTo(pressurePa(rig.column, depthM) / 101325, 12);
    }
  });

  test('makes the compressible gas of a diver the same at every depth, but for what gas weighs', () => {
    const rig = { ...weighed(EXAMPLE, 3), kgPerMol: 0 };
    const totals = swingBudget(rig, [2, 8, 20, 39]).depths.map(
      ({ depthM, jacketM3 }) => jacketM3 + ((rig.foam.gasM3 + rig.gutM3) * 101325) / pressurePa(rig.column, depthM),
    );
    for (const total of totals) expect(Math.abs(total - totals[0]!)).toBeLessThan(1e-12);
  });

  test('grows with depth, and with the gas in the cylinder by what that weighs over ρ − ρ_gas', () => {
    const rig = weighed(EXAMPLE, 3);
    const full = swingBudget(rig);
    const reserve = swingBudget(rig, undefined, { cylinderBar: 50 });
    full.depths.slice(1).forEach((one, i) => expect(one.jacketM3).toBeGreaterThan(full.depths[i]!.jacketM3));
    full.depths.forEach(({ depthM, jacketM3 }, i) => {
      const gasKgPerM3 = (pressurePa(rig.column, depthM) * rig.kgPerMol) / rig.gasJPerMol;
      const lighterM3 = full.cylinderLossN / G / (RHO - gasKgPerM3);
      expect(Math.abs(jacketM3 - reserve.depths[i]!.jacketM3 - lighterM3)).toBeLessThan(1e-12);
    });
  });

  test('stays within what the jacket holds; the force that is left is said', () => {
    const light = withLeadKg(EXAMPLE, 0);
    const heavy = withLeadKg(EXAMPLE, 30);
    const lightAt = at(light, 3, 50);
    expect(lightAt.jacketM3).toBe(0);
    expect(lightAt.leftN).toBeGreaterThan(0);
    expect(lightAt.leftN).toBeCloseTo(
      netForceN(light, instantOf(light, { depthM: 3, jacketM3: 0, cylinderBar: 50 })),
      9,
    );
    const heavyAt = at(heavy, 20);
    expect(heavyAt.jacketM3).toBe(heavy.jacket.capacityM3);
    expect(heavyAt.leftN).toBeLessThan(0);
    expect(heavyAt.leftN).toBeCloseTo(netForceN(heavy, instantOf(heavy, { depthM: 20, jacketM3: 18e-3 })), 9);
  });
});

describe('gas to vent on the way up', () => {
  test.each(['expand-10-10', 'expand-10-20'])(
    '%s: times the speed it is how fast 10 L of jacket gas grow, where nothing else is compressible [derived]',
    (id) => {
      // dV/dt = V ρ g v/p, ±1 % as the row says.
      const depthM = input(id, 'depth_m');
      const setup = changed(EXAMPLE, { water: { densityKgPerM3: 1025 } });
      const rig = sinkingWithN(setup, 1025 * G * input(id, 'gas_L') * 1e-3, depthM);
      const { jacketM3, ventPerMetreM3 } = at(rig, depthM);
      expect(jacketM3 * 1e3).toBeCloseTo(10, 1);
      const row = rowOf(id);
      const litresPerS = ventPerMetreM3 * 1e3 * input(id, 'ascent_m_s');
      expect(Math.abs(litresPerS - (row.expected as number))).toBeLessThanOrEqual(allowedOff(row));
    },
  );

  test('is V ρ g/p where nothing but the jacket is compressible and gas weighs nothing', () => {
    const rig = { ...rigid(weighed(EXAMPLE, 4)), kgPerMol: 0 };
    for (const { depthM, jacketM3, ventPerMetreM3 } of swingBudget(rig, [1, 10, 30]).depths)
      expect(ventPerMetreM3 / ((jacketM3 * RHO * G) / pressurePa(rig.column, depthM))).toBeCloseTo(1, 7);
  });

  test('adds up over an ascent to what the jacket loses', () => {
    const rig = weighed(EXAMPLE, 2);
    const depthsM = Array.from({ length: 101 }, (_, i) => 5 + i * 0.25);
    const { depths } = swingBudget(rig, depthsM);
    let vented = 0;
    for (let i = 1; i < depths.length; i++)
      vented += ((depths[i]!.ventPerMetreSurfaceM3 + depths[i - 1]!.ventPerMetreSurfaceM3) / 2) * 0.25;
    expect(Math.abs(vented - (depths.at(-1)!.jacketSurfaceM3 - depths[0]!.jacketSurfaceM3))).toBeLessThan(1e-9);
  });

  test('holds a drysuit’s and a loop’s gas too: their volumes grow by V ρ g/p a metre', () => {
    for (const [keys, volumeM3] of [
      ['\nsuit: { kind: drysuit }', 4e-3],
      ['\napparatus: loop', 4e-3],
    ] as const) {
      const rig = weighed(setupOf(keys), 2);
      const [shallow, here, deep] = swingBudget(rig, [9.5, 10, 10.5]).depths;
      const ofJacket = deep!.jacketSurfaceM3 - shallow!.jacketSurfaceM3;
      expect(here!.ventPerMetreSurfaceM3 - ofJacket).toBeCloseTo((volumeM3 * RHO * G) / 101325, 7);
    }
  });

  test('nothing of a jacket that is empty because the diver is too light', () => {
    const lightAt = at(withLeadKg(EXAMPLE, 0), 3, 50);
    expect(lightAt.ventPerMetreM3).toBe(0);
    expect(lightAt.ventPerMetreSurfaceM3).toBe(0);
  });

  test('more lead wants more of it vented, in the same ratio as the jacket holds more', () => {
    const [right, heavy] = [at(weighed(EXAMPLE), 6), at(weighed(EXAMPLE, 6), 6)];
    expect(heavy.ventPerMetreM3).toBeGreaterThan(right.ventPerMetreM3);
    const more = ((heavy.jacketM3 - right.jacketM3) * RHO * G) / pressurePa(weighed(EXAMPLE).column, 6);
    expect((heavy.ventPerMetreM3 - right.ventPerMetreM3) / more).toBeCloseTo(1, 2);
  });
});

describe('depths of the budget', () => {
  test.each([
    [40, [0, 5, 10, 15, 20, 25, 30, 35, 40]],
    [120, [0, 5, 10, 15, 20, 25, 30, 35, 40]],
    [12, [0, 5, 10, 12]],
    [4, [0, 4]],
    [10, [0, 5, 10]],
  ])('over a bottom at %s m are %j', (bottomM, depthsM) => {
    const rig = weighed(changed(EXAMPLE, { water: { bottomM } }));
    expect(swingBudget(rig).depths.map(({ depthM }) => depthM)).toEqual(depthsM);
  });

  test('a depth above the surface, or none, is refused', () => {
    for (const depthM of [-1, NaN, Infinity]) expect(() => swingBudget(rigOf(EXAMPLE), [depthM])).toThrow(RangeError);
  });
});
