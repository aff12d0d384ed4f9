import { describe, expect, test } from 'vitest';
import { exampleWith, ran, resultOf, useFolder, type PrintedFlight } from './fixture.ts';
import { jacketNeutralL, type PrintedInsight } from './insight-fixture.ts';

const file = useFolder();

interface PrintedForces {
  readonly netN: number;
  readonly pressurePa: number;
  readonly parts: readonly { readonly part: string; readonly weightN: number }[];
}

// Deep, so that no bottom cuts off what the landmarks say of 46 m.
const SUITS = {
  five: { bottomM: 100 },
  'two-piece': { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1, bottomM: 100 },
} as const;
const LEAD_KG = { five: 3.73, 'two-piece': 8.14 } as const;

/** Neutral with the jacket at mid-breath and 120 bar, as the landmarks are. */
function neutralAt(depth: number, suit: keyof typeof SUITS, surplusKg: number): PrintedInsight & { jacketL: number } {
  const path = file('suit.yaml', exampleWith(SUITS[suit], LEAD_KG[suit] + surplusKg));
  const words = [path, '--depth', depth, '--cylinder', 120, '--lungs', 3.2];
  const jacketL = jacketNeutralL(words);
  return { ...resultOf<PrintedInsight>('insight', ...words, '--jacket', jacketL), jacketL };
}

describe('insight', () => {
  // Landmarks of the physics, derived there; seconds printed to a tenth.
  test.each<[keyof typeof SUITS, number, number]>([
    ['five', 0, 8.8],
    ['five', 8, 5.5],
    ['two-piece', 0, 6.6],
    ['two-piece', 8, 4.9],
  ])('%s with %s kg too much falls away from 5 m e-fold in %s s', (suit, surplusKg, eFoldingS) => {
    const seen = neutralAt(5, suit, surplusKg);
    expect(Math.abs(seen.netN)).toBeLessThan(1e-6);
    expect(Math.abs(seen.eFoldingS! - eFoldingS)).toBeLessThanOrEqual(0.1);
    expect(seen.growthPerS! * seen.eFoldingS!).toBeCloseTo(1, 12);
    expect(seen.doublingS! / seen.eFoldingS!).toBeCloseTo(Math.log(2), 12);
    expect(seen.periodS).toBeNull();
    const here = seen.neutral.find(({ depthM }) => Math.abs(depthM - 5) < 1e-3)!;
    expect(here.stable).toBe(false);
    expect(here.eFoldingS).toBeCloseTo(seen.eFoldingS!, 3);
  });

  // Landmarks of the physics, derived there; the depths are printed to a tenth, that of 46 m whole.
  test.each<[keyof typeof SUITS, number, number, number, number]>([
    ['five', 0, 4.8, 46, 0.5],
    ['five', 8, 7.7, 16.1, 0.1],
    ['two-piece', 0, 6.8, 20.7, 0.1],
    ['two-piece', 8, 8.2, 14.3, 0.1],
  ])('%s with %s kg too much: breath reaches from %s to %s m about 10 m', (suit, surplusKg, fromM, toM, byM) => {
    const { breathReachM, breathReachesM, jacketL } = neutralAt(10, suit, surplusKg);
    const middle = resultOf<{ pressurePa: number }>('forces', file('suit.yaml'), '--depth', 10);
    expect(Math.abs(breathReachM![0] - fromM)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(breathReachM![1] - toM)).toBeLessThanOrEqual(byM);
    expect(breathReachesM).toContainEqual(breathReachM);
    // At its ends nothing pulls with the least and with the most in the lungs, the jacket's gas being what it was.
    const path = file('suit.yaml');
    const at = (depth: number, lungs: number) => {
      const words = ['forces', path, '--depth', depth, '--cylinder', 120, '--lungs', lungs];
      const { pressurePa } = resultOf<{ pressurePa: number }>(...words);
      return resultOf<{ netN: number }>(...words, '--jacket', (jacketL * middle.pressurePa) / pressurePa).netN;
    };
    expect(Math.abs(at(breathReachM![0], 1.8))).toBeLessThan(1e-3);
    expect(Math.abs(at(breathReachM![1], 5.8))).toBeLessThan(1e-3);
  });

  // Landmarks of the physics, derived there.
  test.each([
    [0, 1.8],
    [8, 8.9],
  ])(
    '%s kg too much in 5 mm wants %s L in the jacket at 10 m, and its share of steepness is (rho g)^2 V / p',
    (kg, l) => {
      const { jacketL, shares, kNPerM } = neutralAt(10, 'five', kg);
      expect(Math.abs(jacketL - l)).toBeLessThanOrEqual(0.05);
      const { densityKgPerM3, pressurePa } = resultOf<{ densityKgPerM3: number; pressurePa: number }>(
        ...['forces', file('w.yaml', exampleWith({})), '--depth', 10],
      );
      const perM3 = (densityKgPerM3 * 9.80665) ** 2 / pressurePa;
      expect(shares['jacket']! / (perM3 * jacketL * 1e-3)).toBeCloseTo(1, 3);
      expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(kNPerM, 9);
    },
  );

  test('kNPerM is minus the change of the net force with depth, gases kept', () => {
    // The jacket keeps its moles: its litres go as one over the pressure. The lungs keep theirs too: what their gas weighs more
    // in the ledger of a deeper moment is taken off.
    const at = (depth: number, jacketL: number) =>
      resultOf<PrintedForces>(...['forces', 'temperate-sea', '--lungs', 3.2, '--depth', depth, '--jacket', jacketL]);
    const lungsN = ({ parts }: PrintedForces) => parts.find(({ part }) => part === 'lungs')!.weightN;
    const middle = at(12, 4);
    const movedN = (depth: number) => {
      const there = at(depth, (4 * middle.pressurePa) / at(depth, 0).pressurePa);
      return there.netN + lungsN(there) - lungsN(middle);
    };
    const words = ['insight', 'temperate-sea', '--lungs', 3.2, '--depth', 12, '--jacket', 4];
    const { kNPerM, netN } = resultOf<PrintedInsight>(...words);
    expect(netN).toBeCloseTo(middle.netN, 9);
    expect(kNPerM).toBeCloseTo(-(movedN(12.002) - movedN(11.998)) / 0.004, 6);
  });

  test('forecasts the depths that the dive itself comes to', () => {
    // A closed loop: its breath moves no volume, so that both begin in the same state.
    const { samples } = resultOf<PrintedFlight>(
      ...['dive', 'closed-loop', '--from', 9, '--seconds', 10, '--every', 1, '--level'],
    );
    const { forecastM } = resultOf<PrintedInsight>('insight', 'closed-loop', '--depth', 9);
    expect(forecastM).toHaveLength(10);
    forecastM.forEach((depthM, i) => expect(Math.abs(depthM - samples[i + 1].depthM)).toBeLessThan(0.001));
  });

  test('lists the means from the gentlest, and says so when none but some stop the diver', () => {
    const heavy = file('heavy.yaml', exampleWith({ cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 }, 12.14));
    const { way, stopping, pricePerSecondM, caution } = resultOf<PrintedInsight>(
      ...['insight', heavy, '--depth', 12, '--speed', 0.3, '--reaction', 2],
    );
    expect(way).toBe(1);
    expect(stopping.map(({ means }) => means)).toEqual(['none', 'breath', 'fins', 'gas', 'all', 'lead']);
    const [none, breath, , gas, all] = stopping;
    expect([none, breath].map(({ stops, depthM, timeS }) => ({ stops, depthM, timeS }))).toEqual(
      Array(2).fill({ stops: false, depthM: null, timeS: null }),
    );
    for (const row of [gas, all]) {
      expect(row.stops).toBe(true);
      expect(row.depthM).toBeGreaterThan(12);
      expect(row.timeS).toBeGreaterThan(2);
      expect(row.peakMps).toBeGreaterThanOrEqual(0.3);
    }
    expect(all.depthM!).toBeLessThan(gas.depthM!);
    expect(pricePerSecondM).toBeGreaterThan(0.3);
    expect(caution).toContain('Not for planning dives');
  });

  test('a gas stop is where the dive turns with the same hands', () => {
    const path = file('stop.yaml', exampleWith({}, 9));
    // A dive begins at the end of a breath out, 2.7 L: about that both breathe.
    const words = ['insight', path, '--depth', 8, '--lungs', 2.7, '--reaction', 1.5];
    const gas = resultOf<PrintedInsight>(...words).stopping.find(({ means }) => means === 'gas')!;
    const controls = file('c.yaml', '- { tS: 0, lungsL: 2.7 }\n- { tS: 1.5, jacketAdd: true }\n');
    const { samples } = resultOf<PrintedFlight>(
      ...['dive', path, '--from', 8, '--seconds', 40, '--every', 0.1, '--level', '--controls', controls],
    );
    const turn = samples.find(({ speedMps, tS }) => tS > 1.5 && speedMps <= 0)!;
    expect(gas.stops).toBe(true);
    expect(Math.abs(gas.depthM! - turn.depthM)).toBeLessThan(0.05);
    expect(Math.abs(gas.timeS! - turn.tS)).toBeLessThan(0.3);
  });

  test('a rising diver is told so; lead is none of his means, and a rate is stricter than the head out', () => {
    const words = ['insight', 'two-piece', '--depth', 9, '--jacket', 6, '--speed', -0.2] as const;
    const out = resultOf<PrintedInsight>(...words);
    const rate = resultOf<PrintedInsight>(...words, '--above', 'rate');
    expect(out.way).toBe(-1);
    expect(out.stopping.map(({ means }) => means)).not.toContain('lead');
    const stops = ({ stopping }: PrintedInsight) => stopping.filter((row) => row.stops).map(({ means }) => means);
    // Whoever never rises faster than 18 m/min has a peak of no more.
    for (const { stops: does, peakMps } of rate.stopping) if (does) expect(peakMps).toBeLessThanOrEqual(0.3);
    for (const { stops: does, peakMps } of rate.stopping) if (peakMps > 0.3) expect(does).toBe(false);
    expect(stops(out).length).toBeGreaterThan(0);
  });

  test('a floor is not passed: fewer means stop before 10.8 m than before 18 m', () => {
    const path = file('floor.yaml', exampleWith({}, 8));
    const stopsBy = (floor: number) =>
      resultOf<PrintedInsight>('insight', path, '--depth', 10, '--floor', floor).stopping.filter(({ stops }) => stops);
    const strict = stopsBy(10.8);
    const mild = stopsBy(18);
    expect(strict.length).toBeLessThan(mild.length);
    for (const { depthM } of strict) expect(depthM).toBeLessThan(10.8);
    for (const { depthM } of mild) expect(depthM).toBeLessThan(18);
  });

  test('takes the lungs it is given for the reach', () => {
    const words = ['insight', 'temperate-sea', '--depth', 10, '--jacket', 2] as const;
    const wide = resultOf<PrintedInsight>(...words).breathReachM!;
    const narrow = resultOf<PrintedInsight>(...words, '--least', 2.5, '--most', 4).breathReachM!;
    expect(narrow[0]).toBeGreaterThan(wide[0]);
    expect(narrow[1]).toBeLessThan(wide[1]);
  });

  test('answers of a drysuit and a closed loop are finite numbers or null', () => {
    for (const words of [
      ['drysuit-membrane', '--depth', 12, '--suit-gas', 9],
      ['closed-loop', '--depth', 6],
      ['halocline', '--depth', 8],
    ]) {
      const { out } = ran('insight', ...words);
      const nulls = [...out.matchAll(/"(\w+)": null/g)].map(([, key]) => key);
      for (const key of nulls)
        expect([
          'eFoldingS',
          'periodS',
          'doublingS',
          'growthPerS',
          'breathReachM',
          'depthM',
          'timeS',
          'deepestM',
          'shallowestM',
          'pricePerSecondM',
        ]).toContain(key);
    }
  });
});

describe('insight refuses with exit 2 and one line', () => {
  test.each<[what: string, words: (string | number)[], says: RegExp]>([
    ['no depth', [], /--depth is missing/],
    ['a depth below the bottom', ['--depth', 41], /--depth: found "41"; allowed: from -0.6 to 40/],
    ['a depth in the air', ['--depth', -1], /--depth: found "-1"; allowed: a number from -0.6/],
    ['too fast', ['--depth', 5, '--speed', 4], /--speed: found "4"; allowed: a number from -3 to 3/],
    ['lungs larger than the chest', ['--depth', 5, '--lungs', 7], /--lungs: found "7"; allowed: from 1.5 to 6.3/],
    ['a jacket that is too full', ['--depth', 5, '--jacket', 19], /--jacket: found "19"; allowed: from 0 to 18/],
    ['suit gas without a drysuit', ['--depth', 5, '--suit-gas', 4], /--suit-gas: this setup has no drysuit/],
    ['a cylinder past the law of gas', ['--depth', 5, '--cylinder', 400], /from 0 to 328/],
    ['half a degree', ['--depth', 5, '--pitch', 7.5], /--pitch: found "7.5"; allowed: a whole number/],
    ['a reaction before now', ['--depth', 5, '--reaction', -1], /--reaction: found "-1"; allowed: a number from 0/],
    ['a floor above the diver', ['--depth', 5, '--floor', 4], /--floor: found "4"; allowed: from 5 to 40/],
    ['a floor in the waves', ['--depth', 0, '--floor', 0.5], /--floor: found "0.5"; allowed: a number from 1 to 150/],
    ['a limit that there is none of', ['--depth', 5, '--above', 'rat'], /"rat": write rate; allowed: head-out, rate/],
    ['a limit far from all', ['--depth', 5, '--above', 'q'], /found "q"; allowed: head-out, rate/],
    ['least lungs below what stays', ['--depth', 5, '--least', 1], /--least: found "1"; allowed: from 1.5 to 6.3/],
    ['most lungs beyond the chest', ['--depth', 5, '--most', 6.5], /--most: found "6.5"; allowed: from 1.5 to 6.3/],
    ['least above most', ['--depth', 5, '--least', 5.9], /--least: found "5.9"; allowed: less than --most, here 5.8/],
  ])('%s', (_, words, says) => {
    const { code, out, err } = ran('insight', 'temperate-sea', ...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err.match(/\n/g)).toHaveLength(1);
  });

  test('lungs of a closed loop', () => {
    for (const option of ['--lungs', '--least', '--most']) {
      const { code, err } = ran('insight', 'closed-loop', '--depth', 5, option, 3);
      expect(code).toBe(2);
      expect(err).toMatch(new RegExp(`${option}: not on a closed loop`));
    }
  });
});
