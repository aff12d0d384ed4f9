import { describe, expect, test } from 'vitest';
import { bodySurfaceM2, dryLungVolumesL, rigOf, tissueDensityKgPerM3 } from '../../src/diver/index.ts';
import { EXAMPLE, changed } from '../reference/rigs.ts';

describe('body', () => {
  // Siri 1961 [recalled]: %F = 495/D − 450.
  test('tissueDensityKgPerM3() inverts %F = 495/D − 450', () => {
    for (const percent of [5, 21.43, 25, 40])
      expect(495 / (tissueDensityKgPerM3(percent) / 1000) - 450).toBeCloseTo(percent, 9);
  });

  // Hall et al. 2021, Eur Respir J 57:2000289, equations read, spline term 0 [derived]; here to every printed digit.
  test.each([
    [
      'male',
      30,
      178,
      { totalL: 6.68, functionalResidualL: 3.34, residualL: 1.43, expiratoryReserveL: 1.66, vitalL: 5.58 },
    ],
    [
      'male',
      45,
      180,
      { totalL: 7.27, functionalResidualL: 3.61, residualL: 1.8, expiratoryReserveL: 1.57, vitalL: 5.43 },
    ],
    [
      'female',
      30,
      165,
      { totalL: 5.02, functionalResidualL: 2.61, residualL: 1.18, expiratoryReserveL: 1.26, vitalL: 4.11 },
    ],
    [
      'female',
      45,
      168,
      { totalL: 5.46, functionalResidualL: 2.88, residualL: 1.49, expiratoryReserveL: 1.15, vitalL: 3.93 },
    ],
  ] as const)(
    'dryLungVolumesL() of a %s of %i years, %i cm agrees to the printed digit',
    (sex, age, height, printed) => {
      const volumes = dryLungVolumesL(sex, age, height);
      for (const [name, litres] of Object.entries(printed))
        expect(Math.abs(volumes[name as keyof typeof volumes] - litres), name).toBeLessThan(0.0051);
    },
  );

  // Girandola et al. 1977, abstract read: total −5.6 %, residual +6.7 %; end-expiratory × 0.81 is common practice.
  test('rigOf() with sex and age shrinks the total by 5.6 % and grows the residual by 6.7 %', () => {
    const { lungs } = rigOf(changed(EXAMPLE, { diver: { sex: 'female', ageYears: 45, heightCm: 168 } }));
    const dry = dryLungVolumesL('female', 45, 168);
    expect(lungs.totalM3 * 1e3).toBeCloseTo(dry.totalL * 0.944, 12);
    expect(lungs.residualM3 * 1e3).toBeCloseTo(dry.residualL * 1.067, 12);
    expect(lungs.endExpiratoryM3 * 1e3).toBeCloseTo(dry.functionalResidualL * 0.81, 12);
  });

  test('bodySurfaceM2() rises with mass and height', () => {
    expect(bodySurfaceM2(80, 178)).toBeGreaterThan(bodySurfaceM2(75, 178));
    expect(bodySurfaceM2(75, 180)).toBeGreaterThan(bodySurfaceM2(75, 178));
  });

  test('tissueDensityKgPerM3() and dryLungVolumesL() refuse what their equations do not cover', () => {
    for (const percent of [-1, 81, NaN]) expect(() => tissueDensityKgPerM3(percent)).toThrow(RangeError);
    expect(() => dryLungVolumesL('male', 17, 178)).toThrow(RangeError);
    expect(() => dryLungVolumesL('male', 30, 129)).toThrow(RangeError);
    expect(() => dryLungVolumesL('male', NaN, 178)).toThrow(RangeError);
  });
});
