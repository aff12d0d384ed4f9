import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lin, toAndFroL, worstRow } from '../../src/lesson/measures.ts';
import { sumMark, type Cap, type Term } from '../../src/lesson/mark-sum.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { madeUp } from '../fixtures/lessons/made-up.ts';

const trace = (...args: Parameters<typeof madeUp>) => traceOf({ rig, recording: madeUp(...args), changes: [] });

test('lin() is 1 up to good, 0 from bad, straight between', () => {
  expect([0, 0.2, 0.85, 1.5, 9].map((x) => lin(x, 0.2, 1.5))).toEqual([1, 1, 0.5, 0, 0]);
});

test('traceOf() takes the speed over 3 s, and over the rows so far at the start', () => {
  const { slowMps } = trace(100, { depthM: (row) => (row < 50 ? row * 0.01 : 0.5) });
  expect(slowMps[0]).toBe(0);
  expect(slowMps[7]).toBeCloseTo(0.1, 12);
  expect(slowMps[40]).toBeCloseTo(0.1, 12);
  expect(slowMps[65]).toBeCloseTo(0.05, 12);
  expect(slowMps[80]).toBeCloseTo(0, 12);
});

test('toAndFroL() lets each vent empty the stock first: in 2, out 3, in 1, out 2 is 3 L', () => {
  const ins = [0, 2, 2, 3, 3].map((litres) => litres * 1e-3);
  const outs = [0, 0, 3, 3, 5].map((litres) => litres * 1e-3);
  const made = trace(5, { letInM3: (row) => ins[row]!, letOutM3: (row) => outs[row]! });
  const found = toAndFroL(made, { from: 0, to: 5 });
  expect(found.value).toBeCloseTo(3, 12);
  expect(found.row).toBe(2);
});

test('worstRow() is the first of the greatest, and null where there is no row', () => {
  expect(worstRow({ from: 2, to: 9 }, 6, (row) => -Math.abs(row - 4))).toEqual({ value: -0, row: 4 });
  expect(worstRow({ from: 5, to: 5 }, 9, () => 1).row).toBeNull();
});

test('sumMark() keeps score and points lost at 100 together, between 0 and 100, and words with what was met', () => {
  const evidence = fc.double({ min: 0, max: 3, noNaN: true });
  const caps: fc.Arbitrary<readonly Cap[]> = fc.array(
    fc.record({ most: fc.constantFrom(0, 25, 45, 49, 50) }).map(({ most }) => ({
      ...{ id: `most-${most}`, most, label: '', raw: 0, unit: '', row: 0, reason: '' },
    })),
    { maxLength: 3 },
  );
  fc.assert(
    fc.property(fc.array(evidence, { minLength: 5, maxLength: 5 }), fc.boolean(), caps, (raws, met, some) => {
      const all = raws.map((raw, i) => ({
        ...{ id: `e${i}`, label: '', raw, unit: '', good: 0.2, bad: 1.5, row: null, reason: '' },
      }));
      const weights = [0.5, 0.3, 0.2];
      const terms: Term[] = all.slice(0, 3).map((one, i) => ({ ...one, weight: weights[i]! }));
      const demands = [{ id: 'd', demand: '', value: 0, unit: '', met, row: null }];
      const gates = [all[3]!, { ...all[4]!, guardsFloor: true }];
      const mark = sumMark({ id: 'hover', terms, gates, demands, caps: some });
      const lost = mark.parts.reduce((sum, { pointsLost }) => sum + pointsLost, 0);
      expect(lost + mark.score).toBeCloseTo(100, 9);
      expect(mark.score).toBeGreaterThanOrEqual(-1e-9);
      expect(mark.score).toBeLessThanOrEqual(100);
      if (mark.word === 'secure') expect(mark.ok).toBe(true);
      const finless = all[4]!.raw <= 0.2;
      if (met && finless && some.length === 0) expect(mark.word).not.toBe('not yet');
      for (const { most } of some) expect(mark.score).toBeLessThanOrEqual(most);
    }),
    { numRuns: 500 },
  );
});
