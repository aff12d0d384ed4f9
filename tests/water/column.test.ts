import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  atmospherePa,
  layeredColumn,
  pressurePa,
  uniformColumn,
  waterAt,
  waterDensityKgPerM3,
  type Column,
  type Layer,
} from '../../src/water/index.ts';

const G = 9.80665;
const ATM_PA = 101325;

/** ∫ρ g dz by Simpson's rule, written apart from the column: it only asks for densities. */
function quadraturePa(column: Column, depthM: number, cutsM: readonly number[]): number {
  const density = (z: number) => waterAt(column, z, { densityKgPerM3: 0, pressurePa: 0 }).densityKgPerM3;
  const edges = [0, ...cutsM.filter((cut) => cut > 0 && cut < depthM), depthM];
  let sum = ATM_PA;
  for (let i = 1; i < edges.length; i++) {
    const from = edges[i - 1]!;
    const width = edges[i]! - from;
    // Just inside the piece: at a sharp boundary the density jumps.
    const [a, m, b] = [from + width * 1e-9, from + width / 2, from + width * (1 - 1e-9)].map(density);
    sum += (G * width * (a! + 4 * m! + b!)) / 6;
  }
  return sum;
}

const LAYERS: readonly Layer[] = [
  { fromM: 0, salinityPsu: 8, temperatureC: 19, mixingM: 0 },
  { fromM: 7, salinityPsu: 30, temperatureC: 12, mixingM: 2 },
  { fromM: 15, salinityPsu: 35, temperatureC: 6, mixingM: 0 },
];
const CUTS = [6, 8, 15];

describe('hydrostatics', () => {
  test('pressurePa() rises by density times gravity per metre in one water', () => {
    const column = uniformColumn(1025, ATM_PA, G);
    for (const depthM of [0, 1, 12.5, 40])
      expect(pressurePa(column, depthM)).toBeCloseTo(ATM_PA + 1025 * G * depthM, 6);
  });

  test('pressurePa() is the integral of density through layers and mixing zones', () => {
    const column = layeredColumn(LAYERS, ATM_PA, G);
    for (const depthM of [0.5, 5.9, 6.4, 7, 7.9, 8.5, 14.999, 15.001, 30])
      expect(Math.abs(pressurePa(column, depthM) - quadraturePa(column, depthM, CUTS))).toBeLessThan(1e-3);
  });

  test('waterAt() is halfway between the layers in the middle of a mixing zone', () => {
    const column = layeredColumn(LAYERS, ATM_PA, G);
    const middle = (waterDensityKgPerM3(8, 19) + waterDensityKgPerM3(30, 12)) / 2;
    expect(waterAt(column, 7, { densityKgPerM3: 0, pressurePa: 0 }).densityKgPerM3).toBeCloseTo(middle, 9);
  });

  test('pressurePa() never falls with depth and has no jump, whatever the layers', () => {
    const layers = fc
      .array(
        fc.record({
          salinityPsu: fc.integer({ min: 0, max: 40 }),
          temperatureC: fc.integer({ min: 0, max: 30 }),
          mixingM: fc.double({ min: 0, max: 1.5, noNaN: true }),
        }),
        { minLength: 1, maxLength: 5 },
      )
      .map((list) => list.map((layer, i) => ({ ...layer, fromM: i * 4 })));
    fc.assert(
      fc.property(layers, fc.double({ min: 0, max: 25, noNaN: true }), (list, depthM) => {
        const column = layeredColumn(list, ATM_PA, G);
        const rise = pressurePa(column, depthM + 1e-4) - pressurePa(column, depthM);
        expect(rise).toBeGreaterThan(0.9 * 990 * G * 1e-4);
        expect(rise).toBeLessThan(1.1 * 1040 * G * 1e-4);
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  test('waterAt() above the surface is the surface', () => {
    const column = layeredColumn(LAYERS, ATM_PA, G);
    const out = waterAt(column, -0.4, { densityKgPerM3: 0, pressurePa: 0 });
    expect(out).toEqual({ densityKgPerM3: waterDensityKgPerM3(8, 19), pressurePa: ATM_PA });
  });
});

describe('what a column refuses', () => {
  test.each([-1, NaN, Infinity])('pressurePa() refuses a depth of %s', (depthM) => {
    expect(() => pressurePa(uniformColumn(1025, ATM_PA, G), depthM)).toThrow(RangeError);
  });

  test('layeredColumn() refuses layers out of order, mixing into one another, or not from the surface', () => {
    const [first, second] = LAYERS;
    expect(() => layeredColumn([], ATM_PA, G)).toThrow(RangeError);
    expect(() => layeredColumn([second!], ATM_PA, G)).toThrow(RangeError);
    expect(() => layeredColumn([first!, { ...second!, fromM: 0 }], ATM_PA, G)).toThrow(RangeError);
    expect(() => layeredColumn([first!, second!, { ...second!, fromM: 8, mixingM: 1 }], ATM_PA, G)).toThrow(RangeError);
  });

  test('uniformColumn() refuses density, pressure and gravity of nothing', () => {
    expect(() => uniformColumn(0, ATM_PA, G)).toThrow(RangeError);
    expect(() => uniformColumn(1025, 0, G)).toThrow(RangeError);
    expect(() => uniformColumn(1025, ATM_PA, 0)).toThrow(RangeError);
  });

  test('waterDensityKgPerM3() and atmospherePa() refuse what their equations do not cover', () => {
    expect(() => waterDensityKgPerM3(43, 10)).toThrow(RangeError);
    expect(() => waterDensityKgPerM3(35, 41)).toThrow(RangeError);
    expect(() => waterDensityKgPerM3(NaN, 10)).toThrow(RangeError);
    expect(() => atmospherePa(11001)).toThrow(RangeError);
    expect(() => atmospherePa(NaN)).toThrow(RangeError);
  });
});

describe('EOS-80 at one atmosphere', () => {
  // Fofonoff & Millard 1983, UNESCO Tech. Pap. Mar. Sci. 44, p. 19 check table [read]; 27.67547 = σ of S 35, T 5.
  test('waterDensityKgPerM3() gives the printed 1027.67547 kg/m³ of S 35, T 5', () => {
    expect(waterDensityKgPerM3(35, 5)).toBeCloseTo(1027.67547, 5);
  });

  // Tanaka et al. 2001, Metrologia 38:301 [recalled]: agrees to 0.002 kg/m³ up to 25 °C.
  test.each([4, 10, 15, 20, 25])('waterDensityKgPerM3() of fresh water agrees with a second equation at %i °C', (t) => {
    const other = 999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)));
    expect(Math.abs(waterDensityKgPerM3(0, t) - other)).toBeLessThan(0.002);
  });
});
