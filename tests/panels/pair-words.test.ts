import { describe, expect, test } from 'vitest';
import { pairRows, pairSentence } from '../../src/panels/pair-words.ts';
import type { PairSide } from '../../src/panels/pair-view.ts';

const one: PairSide = {
  depthM: 3.73,
  speedMps: 17 / 60,
  presses: { count: 2, seconds: 6.8 },
  gasUsedM3: 4.1e-3,
};
const two: PairSide = { ...one, depthM: 5.1, speedMps: 23 / 60, gasUsedM3: 14.9e-3 };

describe('pairRows()', () => {
  test('says both values and what the second is more', () => {
    expect(pairRows([one, two], 'metric')).toEqual([
      { name: 'depth', one: '3.7 m', two: '5.1 m', beside: '1.4 m deeper' },
      { name: 'speed', one: 'sinking 17 m/min', two: 'sinking 23 m/min', beside: '6 m/min more down' },
      { name: 'presses', one: '2 in 6.8 s', two: '2 in 6.8 s', beside: 'the same' },
      { name: 'gas used', one: '4.1 L', two: '15 L', beside: '11 L more' },
    ]);
  });

  test('turns round with the divers', () => {
    const presses = { count: 3, seconds: 8 };
    const beside = pairRows([{ ...two, presses }, one], 'metric').map((row) => row.beside);
    expect(beside).toEqual(['1.4 m shallower', '6 m/min more up', '1 fewer, 1.2 s shorter', '11 L less']);
  });

  test('is the same within what is shown, and follows the units', () => {
    expect(pairRows([one, { ...one, depthM: 3.76 }], 'metric')[0]!.beside).toBe('the same');
    expect(pairRows([one, two], 'imperial').map((row) => row.beside)).toEqual([
      '4 ft deeper',
      '20 ft/min more down',
      'the same',
      '11 L more',
    ]);
  });

  test('has no presses in words where there were none, and no depth above the surface', () => {
    const still = { ...one, depthM: -0.1, speedMps: 0, presses: { count: 0, seconds: 0 } };
    expect(pairRows([still, still], 'metric').map((row) => row.one)).toEqual(['0.0 m', 'still', 'none', '4.1 L']);
  });
});

describe('pairSentence()', () => {
  test('names the difference and says what came of it', () => {
    expect(pairSentence([one, two], '2 kg more lead', 'metric')).toBe(
      'Diver 2 (2 kg more lead): 1.4 m deeper, 6 m/min more down, the same presses, 11 L more gas used',
    );
  });

  test('says so where nothing differs', () => {
    expect(pairSentence([one, one], '2 kg more lead', 'metric')).toBe(
      'Diver 2 (2 kg more lead): as deep, as fast, the same presses',
    );
  });
});
