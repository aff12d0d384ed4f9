import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  AIR_KG_PER_MOL,
  compressionFactor,
  molarMassKgPerMol,
  vesselMol,
  vesselPressurePa,
} from '../../src/gas/index.ts';

// Lemmon, Jacobsen, Penoncello & Friend 2000, J. Phys. Chem. Ref. Data 29:331; coefficients read, evaluated [derived].
// Columns: bar absolute, Z at 283.15 K, 293.15 K, 300 K.
const LEMMON = [
  [1.013, 0.9995, 0.9996, 0.9997],
  [50, 0.9832, 0.9879, 0.9908],
  [100, 0.98, 0.9881, 0.9931],
  [150, 0.9911, 1.001, 1.007],
  [200, 1.0161, 1.026, 1.0321],
  [232, 1.0383, 1.0475, 1.0532],
  [250, 1.0526, 1.0612, 1.0666],
  [300, 1.0976, 1.1043, 1.1084],
] as const;
const KELVIN = [283.15, 293.15, 300] as const;

describe('air under pressure', () => {
  test('vesselPressurePa() stays within 0.22 % of the reference equation over its table', () => {
    let worst = 0;
    for (const [bar, ...factors] of LEMMON)
      factors.forEach((z, i) => {
        const kelvin = KELVIN[i]!;
        const mol = (bar * 1e5) / (z * (287.049 * AIR_KG_PER_MOL) * kelvin);
        worst = Math.max(worst, Math.abs(vesselPressurePa(mol, 1, kelvin) / (bar * 1e5) - 1));
      });
    // The table has four decimals: half a unit of the last is 0.005 %.
    expect(worst).toBeLessThan(0.0022 + 0.00005);
    expect(worst).toBeGreaterThan(0.0005);
  });

  test('vesselMol() undoes vesselPressurePa() to 1e-12', () => {
    const bar = fc.double({ min: 0.5, max: 330, noNaN: true });
    const kelvin = fc.double({ min: 273.15, max: 313.15, noNaN: true });
    const litres = fc.double({ min: 1, max: 24, noNaN: true });
    fc.assert(
      fc.property(bar, kelvin, litres, (p, t, l) => {
        const mol = vesselMol(p * 1e5, l * 1e-3, t);
        expect(Math.abs(vesselPressurePa(mol, l * 1e-3, t) / (p * 1e5) - 1)).toBeLessThan(1e-12);
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  test('vesselPressurePa() rises with the amount everywhere the fit holds', () => {
    for (const kelvin of [273.15, 293.15, 313.15]) {
      let last = -1;
      for (let mol = 0; mol < 170; mol++) {
        const pressure = vesselPressurePa(mol, 0.012, kelvin);
        expect(pressure).toBeGreaterThan(last);
        last = pressure;
      }
    }
  });

  test('compressionFactor() is the documented polynomial: by hand 1.034842 at 200 kg/m³ and 40 °C, 1.018544 at 260 and 5 °C', () => {
    // x = 2, t = 20: 1 − 0.055354 + 0.026342 + 0.0475336 + 0.0163202; x = 2.6, t = −15:
    // 1 − 0.0719602 − 0.0256835 + 0.0803318 + 0.0358556 = 1.0185437.
    expect(compressionFactor(200, 313.15)).toBeCloseTo(1.034842, 5);
    expect(compressionFactor(260, 278.15)).toBeCloseTo(1.0185437, 5);
  });

  test('compressionFactor() is 1 for thin gas', () => {
    expect(compressionFactor(0, 288.15)).toBe(1);
  });

  test('vesselMol() refuses pressures that the fit does not cover', () => {
    for (const pressure of [-1, 6e7, NaN]) expect(() => vesselMol(pressure, 0.012, 293)).toThrow(RangeError);
  });
});

describe('mixtures', () => {
  test('molarMassKgPerMol() takes 20.9–21.0 % for air', () => {
    for (const percent of [20.9, 20.95, 21]) expect(molarMassKgPerMol(percent)).toBe(AIR_KG_PER_MOL);
  });

  // Molar masses of oxygen and nitrogen 31.9988 and 28.0134 g/mol [read]; air keeps its argon, so mixing is from air.
  test('molarMassKgPerMol() of pure oxygen is that of oxygen', () => {
    expect(Math.abs(molarMassKgPerMol(100) - 31.9988e-3)).toBeLessThan(2e-6);
  });

  test('molarMassKgPerMol() refuses shares that are none', () => {
    for (const percent of [-1, 101, NaN]) expect(() => molarMassKgPerMol(percent)).toThrow(RangeError);
  });

  test('enriched air of 32 % is compressed too little: Z high by less than 0.012 at 232 bar and 0.016 at 300 bar', () => {
    // Amagat mixture of the reference equations of nitrogen and oxygen [derived]; the limit that LIMITS.md states.
    const z = (bar: number) => compressionFactor(vesselMol(bar * 1e5, 1, 293.15) * AIR_KG_PER_MOL, 293.15);
    expect(z(232) - 1.0355).toBeLessThan(0.012);
    expect(z(300) - 1.0889).toBeLessThan(0.016);
    expect(z(300) - 1.0889).toBeGreaterThan(0.008);
  });
});
