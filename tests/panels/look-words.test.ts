import { describe, expect, test } from 'vitest';
import type { Means, NeutralDepth, Reach, Stopping, StoppingForecast } from '../../src/insight/index.ts';
import {
  neutralWords,
  reachWords,
  recoveryWords,
  steepnessWords,
  stoppingWords,
  unbroken,
} from '../../src/panels/look-words.ts';

const top: NeutralDepth = { depthM: 9.4, stable: false, eFoldingS: 4.6 / Math.LN2, periodS: null };
const layer: NeutralDepth = { depthM: 7.2, stable: true, eFoldingS: null, periodS: 38 };

describe('the sentence of a look', () => {
  test('reachWords() says both ends in metres, or in feet', () => {
    expect(reachWords([6.8, 20.7], [top], 10, 0, 'metric')).toBe(
      'Breath alone balances you from 6.8 to 20.7 m; half a breath is neutral at 9.4 m.',
    );
    // 6.8, 20.7 and 9.4 m ÷ 0.3048: closed form
    expect(reachWords([6.8, 20.7], [top], 10, 0, 'imperial')).toContain(
      'from 22 to 68 ft; half a breath is neutral at 31 ft',
    );
    expect(reachWords(null, [], 10, -30, 'metric')).toContain('heavy whatever you breathe');
  });

  test('neutralWords() tells a hilltop, a layer that holds, and neither', () => {
    expect(neutralWords([top], 9, 0, 'metric')).toBe('Neutral at 9.4 m: off it by 10 cm, twice as far in 4.6 s.');
    expect(neutralWords([layer], 7, 0, 'metric')).toBe('Layer: neutral at 7.2 m holds; you swing once in 38 s.');
    expect(neutralWords([], 7, -9, 'metric')).toContain('heavy all the way down');
    expect(neutralWords([top, layer], 7, 0, 'metric')).toContain('7.2 m');
  });

  test('steepnessWords() gives shares of what drives away, the greatest first', () => {
    const none = { suit: 0, jacket: 0, drysuit: 0, loop: 0, lungs: 0, gut: 0, water: 0, surface: 0 };
    expect(steepnessWords(4.75, { ...none, suit: 2, jacket: 2.75, gut: 0.05 })).toBe(
      'Of the steepness here the jacket makes 57 % and the suit 42 %.',
    );
    expect(steepnessWords(-1, { ...none, suit: 2, water: -3 })).toContain('the denser water below holds');
  });

  const stop = (means: Means, depthM: number | null, timeS: number | null): Stopping => ({
    means,
    stops: depthM !== null,
    depthM,
    timeS,
    peakMps: 0.4,
  });
  const forecast = (rows: readonly Stopping[], pricePerSecondM: number | null = 0.5): StoppingForecast => ({
    way: 1,
    rows,
    pricePerSecondM,
  });
  const late = (...means: Means[]) => means.map((one) => stop(one, null, null));

  test('stoppingWords() names the gentlest that works and those that came too late', () => {
    const rows = [...late('none', 'breath'), stop('fins', 14.2, 9.1), stop('gas', 13, 8), stop('all', 12, 5)];
    expect(stoppingWords(forecast(rows), 'jacket', 10, 'metric')).toBe(
      'Too late for breath; fins stop you at 14.2 m, in 9 s, and each second of waiting costs 0.5 m.',
    );
    const harsher = [...late('none', 'breath', 'fins'), stop('gas', 18, 12), stop('all', 16, 5)];
    expect(stoppingWords(forecast(harsher), 'suit', 10, 'metric')).toMatch(
      /^Too late for breath and fins; the suit and jacket stops you at 18.0 m/,
    );
    expect(
      stoppingWords(forecast(late('none', 'breath', 'fins', 'gas', 'all', 'lead'), null), 'jacket', 10, 'metric'),
    ).toBe('Nothing stops you any more before you reach the floor.');
    expect(stoppingWords(forecast([stop('none', 6.4, 20)]), 'jacket', 5, 'metric')).toBe(
      'Do nothing, and you come to rest at 6.4 m by yourself.',
    );
  });

  const reach = (means: Means, deepestM: number | null, shallowestM: number | null = 0.6): Reach => ({
    means,
    deepestM,
    shallowestM,
  });
  const asked = { lessKg: 4, way: 1, of: 'jacket' } as const;

  test('recoveryWords() compares with less lead while breath is enough', () => {
    const now = [reach('none', 9), reach('breath', 12.6), reach('fins', 20)];
    const lighter = [reach('breath', 16.1)];
    expect(recoveryWords({ ...asked, now, lighter, depthM: 10 }, 'metric')).toBe(
      'With breath alone you recover from as deep as 12.6 m; with 4 kg less lead, from 16.1 m.',
    );
    expect(recoveryWords({ ...asked, now, lighter: null, depthM: 14 }, 'metric')).toBe(
      'Breath alone brings you back no more; fins do, from as deep as 20.0 m.',
    );
    expect(recoveryWords({ ...asked, now, lighter, depthM: 14 }, 'metric')).toBe(
      'Breath alone brings you back no more; with 4 kg less lead it would, from 16.1 m; fins do, from as deep as 20.0 m.',
    );
    expect(recoveryWords({ ...asked, now, lighter, depthM: 25 }, 'metric')).toContain('Nothing brings you back');
  });

  test('recoveryWords() speaks of shallow water to who is rising', () => {
    const now = [reach('none', null, null), reach('breath', 30, 4.2)];
    expect(recoveryWords({ ...asked, way: -1, now, lighter: null, depthM: 6 }, 'metric')).toBe(
      'With breath alone you recover from as shallow as 4.2 m.',
    );
  });

  test('unbroken() keeps numbers beside their units, and nothing else', () => {
    expect(unbroken('at 7.2 m, in 4 s, 40 % of 3 minutes.')).toBe(
      'at 7.2\u00a0m, in 4\u00a0s, 40\u00a0% of 3 minutes.',
    );
  });
});
