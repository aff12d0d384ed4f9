import { expect, test } from 'vitest';
import type { MarkRange, TrialResult, habitsTable } from '../../src/lesson/index.ts';
import { ran, resultOf, useFolder } from './fixture.ts';

const file = useFolder();
const FEW = ['--seeds', 1, '--cells', '3mm+0.5', '--pilots', 'idler,random'];

interface Accepted {
  readonly met: boolean;
  readonly demands: readonly { readonly demand: string; readonly met: boolean }[];
  readonly marks: readonly MarkRange[];
  readonly results: readonly TrialResult[];
}

test('accept flies those who are named, says what is demanded of them, and does the same again', () => {
  const { met, demands, marks, results } = resultOf<Accepted>('accept', ...FEW);
  expect(met).toBe(true);
  expect(new Set(demands.map(({ demand }) => demand))).toEqual(
    new Set([
      ...['idler: highest', 'random: highest'],
      ...['marks of 80 or more without the task met', 'marks below 50 with the task met'],
    ]),
  );
  expect(results.map(({ cell, rows }) => [cell, rows.length])).toEqual([['3mm+0.5', 8]]);
  expect(resultOf<Accepted>('accept', ...FEW)).toEqual({ met, demands, marks, results });
  expect(marks).toHaveLength(2 * 6);
  for (const { lowestMean, highestMean, least, most } of marks)
    expect(least <= lowestMean && lowestMean <= highestMean && highestMean <= most).toBe(true);
  expect(resultOf<Accepted>('accept', ...FEW, '--from', 2).results).not.toEqual(results);
});

test('accept and habits-table judge results that were printed before, several together, and fly nothing', () => {
  const first = ran('accept', ...FEW).out;
  const second = ran('accept', ...FEW.slice(0, -1), 'breath-holder').out;
  // Who is named twice flies once.
  const twice = ran('accept', ...FEW, '--tasks', 'hover,hover').out;
  const again = ran('accept', ...FEW, '--tasks', 'hover').out;
  expect((JSON.parse(again) as Accepted).results[0]!.rows.map(({ task }) => task)).toEqual(['hover', 'hover']);
  expect(twice).toBe(again);
  const [one, two] = [file('one.json', first), file('two.json', second)];
  const { results, demands } = resultOf<Accepted>('accept', one, two, file('again.json', again));
  expect(results.map(({ rows }) => rows.length)).toEqual([12]);
  expect(demands.some(({ demand }) => demand === 'breath-holder: highest')).toBe(true);
  const { rows } = resultOf<{ rows: ReturnType<typeof habitsTable> }>('habits-table', one, two);
  const held = rows.find(({ habit }) => habit === 'breath-held-while-rising')!;
  expect(held).toMatchObject({ pilot: 'breath-holder', flights: 4, states: true });
});

test('accept exits with 1 where a demand is not met', () => {
  const { results } = resultOf<Accepted>('accept', ...FEW);
  const spoiled = structuredClone(results) as unknown as { rows: { marks: { most: number }[] }[] }[];
  spoiled[0]!.rows[0]!.marks[0]!.most = 6;
  const { code, out } = ran('accept', file('spoiled.json', JSON.stringify({ results: spoiled })));
  expect(code).toBe(1);
  expect((JSON.parse(out) as Accepted).met).toBe(false);
});

test.each([
  ['a kit that there is not', ['--cells', '5mm+9'], /--cells: found "5mm\+9": write 5mm\+\d/],
  ['a pilot that there is not', ['--pilots', 'idler,stedy'], /--pilots: found "stedy": write steady/],
  ['a task that there is not', ['--tasks', 'hoover'], /--tasks: found "hoover": write hover/],
  ['half a seed', ['--seeds', 1.5], /--seeds: found "1.5"; allowed: a whole number/],
  ['no seeds', ['--seeds', 0], /--seeds: found "0"; allowed: a number from 1 to 1000/],
  ['a file that is not there', ['nowhere.json'], /found no file "nowhere.json"/],
])('accept refuses %s, and says what is allowed', (_, words, told) => {
  const { code, out, err } = ran('accept', ...words);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toMatch(told);
});

test.each([
  ['{ "results": [', /found no JSON/],
  ['{ "results": [] }', /results/],
  ['{ "results": [{ "cell": "5mm+1" }] }', /results\.0\.use/],
  ['[]', /accept prints/],
])('accept refuses a file of %s with its place and what is allowed', (content, told) => {
  const { code, err } = ran('accept', file('bad.json', content));
  expect(code).toBe(1);
  expect(err).toMatch(told);
  expect(err).toContain('what accept prints');
});
