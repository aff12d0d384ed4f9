import { describe, expect, test } from 'vitest';
import { exampleWith, ran, resultOf, useFolder } from './fixture.ts';

const file = useFolder();

interface Change {
  readonly change: string;
  readonly leadKg: number;
  readonly deltaKg: number;
}
interface Check extends Readonly<Record<'coveredKgf' | 'atEyesKgf', number>> {
  readonly cylinder: string;
  readonly breath: string;
  readonly lungsL: number | null;
  readonly floats: boolean;
  readonly waterlineM: number | null;
  readonly word: string;
}
type Depth = Readonly<
  Record<
    'depthM' | 'suitLossKgf' | 'jacketL' | 'jacketSurfaceL' | 'leftKgf' | 'ventPerMetreL' | 'ventPerMetreSurfaceL',
    number
  >
>;
interface Weighed {
  readonly leadKg: number;
  readonly caution: string;
  readonly changes?: readonly Change[];
  readonly check?: readonly Check[];
  readonly swing?: { readonly cylinderLossKgf: number; readonly depths: readonly Depth[] };
}

describe('weigh --changes', () => {
  const { leadKg, changes, caution } = resultOf<Weighed>('weigh', 'temperate-sea', '--changes');
  const rowOf = (start: string) => changes!.find(({ change }) => change.startsWith(start))!;

  test('gives each change in words, its lead, and that less the lead without it', () => {
    for (const row of changes!) {
      expect(Object.keys(row)).toEqual(['change', 'leadKg', 'deltaKg']);
      expect(row.deltaKg).toBe(row.leadKg - leadKg);
    }
    expect(rowOf('fresh water').change).toBe('fresh water instead of sea water');
  });

  test('finds what a setup file with that change alone is weighed at', () => {
    const weighedAt = (values: Record<string, string | number>) =>
      resultOf<Weighed>('weigh', file('one.yaml', exampleWith(values))).leadKg;
    expect(rowOf('fresh water').leadKg).toBeCloseTo(weighedAt({ salinityPsu: 0 }), 12);
    expect(rowOf('7 mm one-piece').leadKg).toBeCloseTo(weighedAt({ thicknessMm: 7 }), 12);
    expect(rowOf('body fat of 30 %').leadKg).toBeCloseTo(weighedAt({ bodyFatPercent: 30 }), 12);
    const cylinder = { material: 'aluminium', waterL: 11.1, emptyKg: 15.1, externalL: 16.5, workingBar: 207 };
    expect(rowOf('11.1 L aluminium').leadKg).toBeCloseTo(weighedAt(cylinder), 12);
  });

  test('weighs changes where the lead is weighed', () => {
    const words = ['weigh', 'temperate-sea', '--at', 12, '--reserve', 90, '--lungs', 4];
    const there = resultOf<Weighed>(...words, '--changes');
    expect(there.leadKg).toBe(resultOf<Weighed>(...words).leadKg);
    const full = there.changes!.find(({ change }) => change.startsWith('weighed with'))!;
    expect(full.change).toBe('weighed with 200 bar, as filled, instead of 90 bar left');
    const asFilled = resultOf<Weighed>('weigh', 'temperate-sea', '--at', 12, '--reserve', 200, '--lungs', 4);
    expect(full.leadKg).toBeCloseTo(asFilled.leadKg, 12);
    expect(there.changes!.some(({ change }) => change.startsWith('lungs'))).toBe(false);
  });

  test('says that it chooses no lead, and what altitude is', () => {
    expect(caution).toMatch(/Not for planning dives, choosing lead .* thought experiment/);
    expect(changes!.some(({ change }) => change.includes('altitude'))).toBe(true);
  });
});

describe('weigh --check', () => {
  test('tells how the diver floats, and warns of a held breath', () => {
    const { check, caution } = resultOf<Weighed>('weigh', 'temperate-sea', '--check');
    expect(check!.map(({ cylinder, breath, lungsL }) => [cylinder, breath, lungsL])).toEqual([
      ['full', 'breathed out', 1.5],
      ['full', 'normal breath', expect.closeTo(3.7, 12)],
      ['full', 'full breath', 6.3],
      ['reserve', 'breathed out', 1.5],
      ['reserve', 'normal breath', expect.closeTo(3.7, 12)],
      ['reserve', 'full breath', 6.3],
    ]);
    for (const { floats, waterlineM, word, coveredKgf, atEyesKgf } of check!) {
      expect(floats).toBe(coveredKgf >= 0);
      expect(waterlineM === null).toBe(!floats);
      expect(word === 'goes under').toBe(!floats);
      // The head to the eyes displaces 2.25 L, the half of 4.5 L.
      expect(coveredKgf - atEyesKgf).toBeCloseTo(2.25 * 1.026, 1);
    }
    expect(check![4]!.word).toBe('at eye level');
    expect(check![3]!.word).toBe('goes under');
    expect(caution).toContain('Never hold your breath on scuba');
  });

  test('uses the lead of the setup, and the reserve asked for', () => {
    const line = (...words: (string | number)[]) => resultOf<Weighed>('weigh', ...words, '--check').check![4]!;
    expect(line('pair-heavy').coveredKgf).toBeLessThan(line('pair-light').coveredKgf - 3.5);
    expect(line('temperate-sea', '--reserve', 150).coveredKgf).toBeLessThan(line('temperate-sea').coveredKgf - 1);
  });

  test('has no lungs to tell on a closed loop', () => {
    const { check } = resultOf<Weighed>('weigh', 'closed-loop', '--check');
    expect(check!.map(({ breath, lungsL }) => [breath, lungsL])).toEqual([
      ['any breath', null],
      ['any breath', null],
    ]);
  });
});

describe('weigh --swing', () => {
  test('gives what is lost and what the jacket takes, by depth, in litres and kilograms of pull', () => {
    const { swing } = resultOf<Weighed>('weigh', 'temperate-sea', '--swing');
    expect(swing!.cylinderLossKgf).toBeCloseTo(2.1, 1);
    expect(swing!.depths.map(({ depthM }) => depthM)).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40]);
    for (const at of swing!.depths) {
      const bar = (101325 + 1025.9727538653833 * 9.80665 * at.depthM) / 101325;
      expect(at.jacketSurfaceL / at.jacketL).toBeCloseTo(bar, 9);
      expect(at.ventPerMetreSurfaceL / at.ventPerMetreL).toBeCloseTo(bar, 9);
      expect(at.leftKgf).toBe(0);
    }
  });

  test('its litres make the force ledger’s sum nothing', () => {
    const { swing } = resultOf<Weighed>('weigh', 'pair-heavy', '--swing', '--cylinder', 120);
    for (const { depthM, jacketL } of swing!.depths) {
      const words = ['forces', 'pair-heavy', '--depth', depthM, '--cylinder', 120, '--jacket', jacketL];
      expect(resultOf<{ netKgf: number }>(...words).netKgf).toBeCloseTo(0, 9);
    }
  });

  test('with 120 bar the jacket holds 1.8 L at 10 m', () => {
    // Landmark of the physics for the 5 mm diver with the lead solved [derived], 20 g more in the ready setup.
    const { swing } = resultOf<Weighed>('weigh', 'temperate-sea', '--swing', '--cylinder', 120);
    expect(Math.abs(swing!.depths[2]!.jacketL - 1.8)).toBeLessThan(0.1);
  });

  test('goes as deep as the setup does', () => {
    expect(resultOf<Weighed>('weigh', 'pool', '--swing').swing!.depths.map(({ depthM }) => depthM)).toEqual([0, 4]);
  });
});

describe('weigh', () => {
  test('without flags says nothing of them, with all says all', () => {
    const plain = resultOf<Weighed>('weigh', 'twin');
    expect(plain).not.toHaveProperty('changes');
    expect(plain).not.toHaveProperty('check');
    expect(plain).not.toHaveProperty('swing');
    const all = resultOf<Weighed>('weigh', 'twin', '--changes', '--check', '--swing');
    expect(all).toMatchObject({ ...plain, caution: expect.stringContaining(plain.caution) as string });
    expect([all.changes!.length, all.check!.length, all.swing!.depths.length].every((n) => n > 5)).toBe(true);
  });

  test('counts a diver weighed at the surface as wholly submerged: foam at its largest, the most lead', () => {
    const leadAt = (depthM: number) => resultOf<Weighed>('weigh', 'temperate-sea', '--at', depthM).leadKg;
    // Between the surface and 5 m the foam loses 4.39 L·(1 − p₀/p), and lead pulls 0.91 of its mass.
    const lossKg = (4.3875 * 1.02597 * (1 - 101325 / (101325 + 1025.97 * 9.80665 * 5))) / (1 - 1025.97 / 11340);
    expect(leadAt(0) - leadAt(5)).toBeGreaterThan(lossKg);
    expect(leadAt(0) - leadAt(5)).toBeLessThan(lossKg + 0.05);
    expect(leadAt(0.1)).toBeLessThan(leadAt(0));
  });

  test.each<[what: string, words: string[], says: RegExp]>([
    ['cylinder pressure without the swing', ['--cylinder', '120'], /--cylinder: only with --swing/],
    ['cylinder pressure past the law of gas', ['--swing', '--cylinder', '400'], /--cylinder: .*from 0 to 328/],
    ['a value for a flag', ['--changes=all'], /--changes: found "all"/],
    ['a flag that there is none of', ['--chnges'], /--chnges: write --changes/],
  ])('refuses %s on one line', (_, words, says) => {
    const { code, out, err } = ran('weigh', 'pool', ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err.match(/\n/g)).toHaveLength(1);
  });

  test('--help tells every key of the result', () => {
    const { out } = ran('weigh', '--help');
    const all = resultOf<Weighed>('weigh', 'twin', '--changes', '--check', '--swing');
    const keys = (value: unknown): string[] =>
      Array.isArray(value)
        ? keys(value[0])
        : typeof value === 'object' && value !== null
          ? Object.entries(value).flatMap(([key, inner]) => [key, ...keys(inner)])
          : [];
    for (const key of keys(all)) expect(out).toContain(key);
  });
});
