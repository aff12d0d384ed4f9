import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  LUNG_K,
  TOP_LEVEL_M,
  emergedM3,
  foamM3,
  instantOf,
  jacketM3,
  loopM3,
  lungMol,
  lungOverpressurePa,
  rigOf,
  suitGasM3,
  suitSqueezePa,
} from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { EXAMPLE, changed, setupOf } from '../reference/rigs.ts';

const GRAVITY = 9.80665;
const DRY = setupOf('\nsuit: { kind: drysuit }');
const LOOP = setupOf('\napparatus: loop');

describe('gas in bags', () => {
  const depth = fc.double({ min: 0, max: 40, noNaN: true });
  const litres = fc.double({ min: 0.1, max: 17, noNaN: true });

  test('jacketM3(), suitGasM3() and loopM3() give back the volume that instantOf() was asked for', () => {
    fc.assert(
      fc.property(depth, litres, (depthM, l) => {
        const rigs = { jacket: rigOf(EXAMPLE), dry: rigOf(DRY), loop: rigOf(LOOP) };
        const pressure = pressurePa(rigs.jacket.column, depthM);
        const suitM3 = Math.max(4, l) * 1e-3;
        const loop = Math.min(8, l) * 1e-3;
        const jacket = instantOf(rigs.jacket, { depthM, jacketM3: l * 1e-3 });
        expect(jacketM3(rigs.jacket, jacket.jacketMol, pressure)).toBeCloseTo(l * 1e-3, 14);
        const dry = instantOf(rigs.dry, { depthM, suitGasM3: suitM3 });
        expect(suitGasM3(rigs.dry, dry.suitMol, pressure)).toBeCloseTo(suitM3, 14);
        const closed = instantOf(rigs.loop, { depthM, loopM3: loop });
        expect(loopM3(rigs.loop, closed.loopMol, pressure)).toBeCloseTo(loop, 14);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test('every bag follows p V = constant between its limits', () => {
    const rig = rigOf(DRY);
    const { suitMol, jacketMol } = instantOf(rig, { depthM: 3, suitGasM3: 12e-3, jacketM3: 6e-3 });
    const p = (depthM: number) => pressurePa(rig.column, depthM);
    const product = p(3) * 12e-3;
    for (const depthM of [0.5, 5, 12]) {
      expect(suitGasM3(rig, suitMol, p(depthM)) * p(depthM)).toBeCloseTo(product, 9);
      expect(jacketM3(rig, jacketMol, p(depthM)) * p(depthM)).toBeCloseTo(product / 2, 9);
    }
  });

  test('suitGasM3() stays at the least loft, and suitSqueezePa() grows by ρ g per metre below it', () => {
    const rig = rigOf(DRY);
    const { suitMol } = instantOf(rig, { depthM: 5, suitGasM3: 4e-3 });
    const density = rig.column.segments[0]!.densityKgPerM3;
    expect(suitSqueezePa(rig, suitMol, pressurePa(rig.column, 5))).toBeCloseTo(0, 6);
    expect(suitSqueezePa(rig, suitMol, pressurePa(rig.column, 4))).toBe(0);
    for (const depthM of [6, 12, 25]) {
      expect(suitGasM3(rig, suitMol, pressurePa(rig.column, depthM))).toBe(4e-3);
      const squeeze = suitSqueezePa(rig, suitMol, pressurePa(rig.column, depthM));
      expect(squeeze).toBeCloseTo(density * GRAVITY * (depthM - 5), 4);
    }
  });

  test('lungMol() leaves out the vapour: 3.2 L at the surface hold 0.1179 mol', () => {
    expect(LUNG_K).toBe(310.15);
    // (101325 − 6270 Pa)·0.0032 m³ ÷ (8.314462618·310.15 J/mol) [derived]
    expect(lungMol(rigOf(EXAMPLE), 3.2e-3, 101325)).toBeCloseTo(0.11796, 5);
  });

  test('lungOverpressurePa() of full lungs held is the fall of ambient pressure', () => {
    const rig = rigOf(EXAMPLE);
    const p = (depthM: number) => pressurePa(rig.column, depthM);
    const mol = lungMol(rig, 6.3e-3, p(10));
    for (const up of [0, 0.5, 1.2, 4])
      expect(lungOverpressurePa(rig, mol, 6.3e-3, p(10 - up))).toBeCloseTo(p(10) - p(10 - up), 5);
  });
});

describe('foam', () => {
  test('foamM3() at softness 1 is the two-phase Boyle limit, softer pressure share keeps more gas', () => {
    const foam = { solidM3: 2e-3, gasM3: 4e-3, softness: 1 };
    expect(foamM3(foam, 101325)).toBeCloseTo(6e-3, 15);
    expect(foamM3(foam, 202650)).toBeCloseTo(4e-3, 15);
    expect(foamM3({ ...foam, softness: 0.8 }, 202650)).toBeCloseTo(2e-3 + 4e-3 / 1.8, 15);
  });

  // Common practice gives 3.5–5 kgf for a 5 mm suit and 9–13 kgf for a 7 mm two-piece; no source.
  test.each([
    [5, 1.35, 3.5, 5],
    [7, 2.1, 9, 13],
  ])('a %i mm suit of %f m² lifts %f–%f kgf at the surface of the sea', (thicknessMm, areaM2, least, most) => {
    const rig = rigOf(changed(EXAMPLE, { suit: { thicknessMm, areaM2 } as never }));
    const suit = rig.solids.find(({ part }) => part === 'suit')!;
    const liftKgf = foamM3(rig.foam, 101325) * rig.column.segments[0]!.densityKgPerM3 - suit.massKg;
    expect(liftKgf).toBeGreaterThan(least);
    expect(liftKgf).toBeLessThan(most);
  });
});

describe('above the waterline', () => {
  test('emergedM3() upright is 4.5 L with the head out, 10.5 L with the shoulders out, 40.5 L half a metre on', () => {
    for (const [heightM, litres] of [
      [0, 0],
      [0.24, 4.5],
      [0.4, 10.5],
      [0.9, 40.5],
    ] as const)
      expect(emergedM3(0.65 - heightM, 1) * 1e3).toBeCloseTo(litres, 9);
  });

  test('emergedM3() level is 0.4 m² times the height, and nothing below 0.65 m', () => {
    expect(emergedM3(0.15, 0)).toBeCloseTo(0.04, 12);
    expect(emergedM3(TOP_LEVEL_M, 0)).toBe(0);
    expect(emergedM3(0.66, 1)).toBe(0);
  });

  test('emergedM3() never falls on the way up', () => {
    const sine = fc.double({ min: -1, max: 1, noNaN: true });
    const depthM = fc.double({ min: -0.6, max: 0.7, noNaN: true });
    fc.assert(
      fc.property(depthM, sine, (z, sin) => {
        expect(emergedM3(z - 0.01, sin)).toBeGreaterThanOrEqual(emergedM3(z, sin));
      }),
      { seed: 4, numRuns: 400 },
    );
  });
});
