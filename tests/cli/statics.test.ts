import { describe, expect, test } from 'vitest';
import { exampleWith, ran, resultOf, useFolder } from './fixture.ts';

const file = useFolder();

interface Water {
  readonly densityKgPerM3: number;
  readonly surfacePressurePa: number;
  readonly pressurePa: number;
}

interface Part extends Readonly<Record<'massKg' | 'volumeL' | 'weightN' | 'buoyancyN', number>> {
  readonly part: string;
}

interface Forces {
  readonly depthM: number;
  readonly pressurePa: number;
  readonly densityKgPerM3: number;
  readonly netN: number;
  readonly netKgf: number;
  readonly parts: readonly Part[];
}

const partOf = (forces: Forces, name: string) => forces.parts.find(({ part }) => part === name)!;

const FIVE_MM = exampleWith({});
const ALUMINIUM = exampleWith({
  material: 'aluminium',
  waterL: 11.1,
  emptyKg: 15.1,
  externalL: 16.5,
  workingBar: 207,
  fillBar: 207,
});
const TWO_PIECE = exampleWith({ cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 });
const FRESH = exampleWith({ salinityPsu: 0, temperatureC: 8, thicknessMm: 7 });

describe('water', () => {
  // Fofonoff & Millard 1983, UNESCO Tech. Pap. Mar. Sci. 44, p. 19, check values at one atmosphere (read).
  test.each([
    [0, 5, 999.96675],
    [0, 25, 997.04796],
    [35, 25, 1023.34306],
  ])('gives the published density at %s psu and %s °C', (salinity, temperature, expected) => {
    const { densityKgPerM3 } = resultOf<Water>(
      'water',
      '--salinity',
      salinity,
      '--temperature',
      temperature,
      '--depth',
      0,
    );
    expect(densityKgPerM3).toBeCloseTo(expected, 3);
  });

  test('gives the standard atmosphere at an altitude, and adds the weight of the water above', () => {
    const at = (depth: number) =>
      resultOf<Water>('water', '--salinity', 0, '--temperature', 4, '--depth', depth, '--altitude', 5000);
    // U.S. Standard Atmosphere 1976, table at 5000 m geometric: 5.4048e4 Pa (read).
    expect(Math.abs(at(0).surfacePressurePa - 54048)).toBeLessThan(5);
    expect(at(0).pressurePa).toBe(at(0).surfacePressurePa);
    expect(at(20).pressurePa - at(0).pressurePa).toBeCloseTo(20 * 9.80665 * at(0).densityKgPerM3, 6);
  });

  test('takes negative numbers as they are written', () => {
    expect(
      resultOf<Water>('water', '--salinity', 35, '--temperature', -1.5, '--depth', 0).densityKgPerM3,
    ).toBeGreaterThan(1028);
  });
});

describe('forces', () => {
  test('lists parts whose buoyancy less weight is the net force, up positive', () => {
    const forces = resultOf<Forces>('forces', file('five.yaml', FIVE_MM), '--depth', 10);
    const sum = forces.parts.reduce((n, part) => n + part.buoyancyN - part.weightN, 0);
    expect(forces.netN).toBeCloseTo(sum, 9);
    expect(forces.netKgf).toBeCloseTo(forces.netN / 9.80665, 12);
    for (const part of forces.parts) {
      expect(part.weightN).toBeCloseTo(part.massKg * 9.80665, 9);
      expect(part.buoyancyN).toBeCloseTo((part.volumeL / 1000) * forces.densityKgPerM3 * 9.80665, 9);
    }
  });

  test('one litre of breath is 1.026 kilograms of pull in sea water, less the gas that it weighs', () => {
    // Landmark of the physics: 1.026 kgf. The litre of gas at 2 bar weighs 2.3 g.
    const at = (lungs: number) => resultOf<Forces>('forces', 'temperate-sea', '--depth', 10, '--lungs', lungs).netKgf;
    expect(at(4.2) - at(3.2)).toBeCloseTo(1.026 - 0.0023, 3);
  });

  test('a 12 L cylinder from 200 to 50 bar loses 2.10 kg', () => {
    const massAt = (bar: number) =>
      partOf(resultOf<Forces>('forces', file('five.yaml', FIVE_MM), '--depth', 5, '--cylinder', bar), 'cylinder-1')
        .massKg;
    // Landmark of the physics, ±0.05 kg.
    expect(Math.abs(massAt(200) - massAt(50) - 2.1)).toBeLessThan(0.01);
  });

  test.each([
    // Neutral with the jacket at mid-breath, 120 bar, lead solved as usual: jacket gas at 10 m (landmarks, derived).
    [0, 1.8],
    [8, 8.9],
  ])('%s kg too much with a 5 mm suit want %s L in the jacket at 10 m', (surplusKg, jacketL) => {
    const path = file('surplus.yaml', exampleWith({}, 3.73 + surplusKg));
    const at = (jacket: number) =>
      resultOf<Forces>('forces', path, '--depth', 10, '--cylinder', 120, '--jacket', jacket).netN;
    expect(at(jacketL - 0.06)).toBeLessThan(0);
    expect(at(jacketL + 0.06)).toBeGreaterThan(0);
  });

  test('counts a diver at the surface as wholly submerged', () => {
    const forces = resultOf<Forces>('forces', 'temperate-sea', '--depth', 0);
    expect(forces.parts.map(({ part }) => part)).not.toContain('above-water');
    expect(forces.parts.every(({ buoyancyN }) => buoyancyN >= 0)).toBe(true);
  });

  test('puts the litres asked for into lungs, jacket and drysuit', () => {
    const words = [
      'forces',
      'drysuit-membrane',
      '--depth',
      12,
      '--lungs',
      4,
      '--jacket',
      2.5,
      '--suit-gas',
      9,
    ] as const;
    const forces = resultOf<Forces>(...words);
    expect(partOf(forces, 'lungs').volumeL).toBeCloseTo(4, 12);
    expect(partOf(forces, 'jacket-gas').volumeL).toBeCloseTo(2.5, 12);
    expect(partOf(forces, 'suit-gas').volumeL).toBeCloseTo(9, 12);
    // Below the least loft, here 4 L, the suit shrinks no further: it holds less gas in the same room.
    const squeezed = resultOf<Forces>(...words.slice(0, -1), 3);
    expect(partOf(squeezed, 'suit-gas').volumeL).toBeCloseTo(4, 12);
    expect(partOf(squeezed, 'suit-gas').massKg).toBeCloseTo(partOf(forces, 'suit-gas').massKg / 3, 12);
  });
});

describe('weigh', () => {
  // Landmarks of the physics, derived there with an own script; tolerance ±0.05 kg.
  test.each([
    ['5 mm, sea', FIVE_MM, 3.73],
    ['7 mm two-piece, sea', TWO_PIECE, 8.14],
    ['7 mm one-piece, fresh water of 8 °C', FRESH, 2.14],
    ['5 mm, sea, 11.1 L aluminium', ALUMINIUM, 6.51],
  ])('finds the lead of %s', (_, text, expected) => {
    const { leadKg } = resultOf<{ leadKg: number }>('weigh', file('weigh.yaml', text), '--lungs', 3.2);
    expect(Math.abs(leadKg - expected)).toBeLessThanOrEqual(0.05);
  });

  test('makes the diver neutral: with that lead the net force at that moment is nothing', () => {
    const { leadKg } = resultOf<{ leadKg: number }>(
      ...['weigh', file('w.yaml', FIVE_MM), '--at', 8, '--reserve', 80, '--lungs', 2.5],
    );
    const path = file('neutral.yaml', exampleWith({}, leadKg));
    const words = ['forces', path, '--depth', 8, '--cylinder', 80, '--lungs', 2.5, '--jacket', 0];
    expect(resultOf<Forces>(...words).netN).toBeCloseTo(0, 9);
  });

  test('goes below zero for a diver who is too heavy without lead, and says what it reckoned with', () => {
    const path = file(
      'none.yaml',
      exampleWith({ kind: 'none', bodyFatPercent: 5 }).replace(/^ {2}(cut|thick|area|foam|gasFr).*\n/gm, ''),
    );
    const result = resultOf<Record<string, number>>('weigh', path);
    expect(result['leadKg']).toBeLessThan(0);
    expect(result).toMatchObject({ depthM: 5, reserveBar: 50, lungsL: 3.2, ownLeadKg: 5 });
    expect(result['surplusKg']).toBeCloseTo(5 - result['leadKg'], 12);
    expect(String(result['caution'])).toContain('Not for planning dives');
  });

  test('reckons a closed loop without lungs', () => {
    expect(resultOf<{ lungsL: null }>('weigh', 'closed-loop').lungsL).toBeNull();
    expect(ran('weigh', 'closed-loop', '--lungs', 3).code).toBe(2);
  });
});
