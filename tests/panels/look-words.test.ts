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

  test('neutralWords() says a small drift in the unit of the rest', () =>
    expect(neutralWords([top], 9, 0, 'imperial')).toBe('Neutral at 31 ft: off it by 4 inches, twice as far in 4.6 s.'));

  test('steepnessWords() gives the time to double and shares of what drives away, the greatest first', () => {
    const none = { suit: 0, jacket: 0, drysuit: 0, loop: 0, lungs: 0, gut: 0, water: 0, surface: 0 };
    expect(steepnessWords({ shares: { ...none, suit: 2, jacket: 2.75, gut: 0.05 }, doublingS: 4.04 }, 'metric')).toBe(
      'A drift of 10 cm becomes 20 cm in 4.0 s; 57 % of that is the jacket and 42 % the suit.',
    );
    expect(steepnessWords({ shares: { ...none, suit: 2 }, doublingS: 21.3 }, 'imperial')).toBe(
      'A drift of 4 inches becomes 8 inches in 21 s; 100 % of that is the suit.',
    );
    expect(steepnessWords({ shares: { ...none, suit: 2, water: -3 }, doublingS: null }, 'metric')).toContain(
      'the denser water below holds',
    );
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
  const says = (of: 'jacket' | 'suit' | 'loop', depthM: number, given: StoppingForecast, restN: number | null = null) =>
    stoppingWords({ forecast: given, restN, depthM, of }, 'metric');
  const late = (...means: Means[]) => means.map((one) => stop(one, null, null));

  test('stoppingWords() names the gentlest that works and those that came too late', () => {
    const rows = [...late('none', 'breath'), stop('fins', 14.2, 9.1), stop('gas', 13, 8), stop('all', 12, 5)];
    expect(says('jacket', 10, forecast(rows))).toBe(
      'Too late for breath; fins stop you at 14.2 m, in 9 s, and each second of waiting costs 0.5 m.',
    );
    const harsher = [...late('none', 'breath', 'fins'), stop('gas', 18, 12), stop('all', 16, 5)];
    expect(says('suit', 10, forecast(harsher))).toMatch(
      /^Too late for breath and fins; the suit and jacket stop you at 18.0 m/,
    );
    expect(says('jacket', 10, forecast(late('none', 'breath', 'fins', 'gas', 'all', 'lead'), null))).toBe(
      'Nothing stops you any more before you reach the floor.',
    );
    expect(says('jacket', 5, forecast([stop('none', 6.4, 20)]))).toBe(
      'Do nothing, and you come to rest at 6.4 m by yourself.',
    );
  });

  test('stoppingWords() names the jacket too where only all together still works', () => {
    const together = [...late('none', 'breath', 'fins', 'gas'), stop('all', 17, 6), stop('lead', 16, 4)];
    expect(says('jacket', 10, forecast(together))).toMatch(
      /^Too late for breath, fins and the jacket; all means together stop you at 17\.0 m/,
    );
    expect(says('suit', 4, { ...forecast(together), way: -1 })).toContain('and venting the suit and jacket; all means');
  });

  test('stoppingWords() says when a second more is too much, for all or for what is named', () => {
    const last = [...late('none', 'breath', 'fins', 'gas'), stop('all', 19, 6)];
    expect(says('jacket', 10, forecast([...last, ...late('lead')], null))).toMatch(
      /, and in a second it is too late\.$/,
    );
    expect(says('jacket', 10, forecast([...last, stop('lead', 17, 4)], null))).toMatch(
      /, and in a second it is too late for that\.$/,
    );
    expect(says('jacket', 10, forecast([stop('none', 6, 20)], null))).not.toContain('in a second');
  });

  test('stoppingWords() says of who turns by himself that he is carried back, but not where nothing carries him', () => {
    const turns = forecast([stop('none', 12.4, 0.5)]);
    // 1.4 kg light × 9.80665 m/s²
    expect(says('jacket', 12.4, turns, 13.7)).toBe('You turn at 12.4 m by yourself, and then rise.');
    expect(says('jacket', 12.4, { ...turns, way: -1 }, -13.7)).toBe('You turn at 12.4 m by yourself, and then sink.');
    expect(says('jacket', 12.4, turns, 0.5)).toBe('Nothing needs to be done here.');
  });

  test('on a closed loop no breath came too late: it moves nothing', () => {
    const rows = [...late('none', 'breath'), stop('fins', 14.2, 9.1), stop('all', 12, 5)];
    expect(says('loop', 10, forecast(rows))).toMatch(/^Breath moves nothing here; fins stop you at 14\.2 m/);
    const harsher = [...late('none', 'breath', 'fins'), stop('gas', 18, 12), stop('all', 16, 5)];
    expect(says('loop', 10, forecast(harsher))).toMatch(
      /^Breath moves nothing here, and it is too late for fins; the loop and jacket stop you at 18\.0 m/,
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

  test('recoveryWords() says on a closed loop that breath moves nothing, and what does', () => {
    const now = [reach('none', 9), reach('breath', 9), reach('fins', 20)];
    const loop = { ...asked, of: 'loop', now, lighter: null } as const;
    expect(recoveryWords({ ...loop, depthM: 14 }, 'metric')).toBe(
      'Breath moves nothing here; fins bring you back from as deep as 20.0 m.',
    );
    expect(recoveryWords({ ...loop, depthM: 8 }, 'metric')).toBe(
      'Breath moves nothing here; you recover by yourself from as deep as 9.0 m.',
    );
    expect(recoveryWords({ ...loop, depthM: 25 }, 'metric')).toContain('Nothing brings you back');
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
    expect(unbroken('5 mm, 4.3 L, 50 bar left, 4 looks')).toBe('5\u00a0mm, 4.3\u00a0L, 50\u00a0bar left, 4 looks');
  });
});
