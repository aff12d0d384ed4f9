import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { READY_SETUPS } from '../../src/diver/index.ts';
import { resultOf } from './fixture.ts';

interface Weighed {
  readonly leadKg: number;
  readonly changes: readonly { readonly change: string; readonly leadKg: number; readonly deltaKg: number }[];
}

const README = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const TOUR = /^## A tour\n([^]*?)^## /m.exec(README)?.[1] ?? '';
const [HEADER, , ...ROWS] = TOUR.split('\n')
  .filter((line) => line.startsWith('|'))
  .map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );

/** The table as the README prints it: two decimals, a sign before changes, a dash where the command has no such row. */
const printed = (kg: number, sign = '') => `${kg < 0 ? '−' : sign}${Math.abs(kg).toFixed(2)}`;
const changeOf = ({ changes }: Weighed, start: string) => {
  const rows = changes.filter(({ change }) => change.startsWith(start));
  expect(rows.length, start).toBeLessThan(2);
  return rows[0] ? printed(rows[0].deltaKg, '+') : '–';
};

describe('the tour of the README', () => {
  test('shows the command that its table comes from', () => {
    const [, words] = /^npm run --silent midwater -- (weigh .*)$/m.exec(TOUR)!;
    expect(resultOf<Weighed>(...words!.split(' ')).changes.length).toBeGreaterThan(10);
  });

  test('has a row for every ready setup of its own kit, and columns of changes that the command knows', () => {
    const twins = [
      'first-dive',
      'other-world',
      'pair-light',
      'pair-heavy',
      'pair-thin',
      'pair-thick',
      'two-piece-heavy',
    ];
    expect(ROWS.map(([id]) => id)).toEqual(READY_SETUPS.map(({ id }) => id).filter((id) => !twins.includes(id)));
    expect(HEADER!.slice(0, 2)).toEqual(['setup', 'lead, kg']);
    expect(HEADER!.length).toBeGreaterThan(5);
    HEADER!.slice(2).forEach((_, i) => expect(ROWS.filter((row) => /\d/.test(row[i + 2]!)).length).toBeGreaterThan(1));
  });

  test.each(ROWS.map((cells) => [cells[0]!, cells] as const))('says of %s what the model says', (id, cells) => {
    const weighed = resultOf<Weighed>('weigh', id, '--changes');
    const starts = HEADER!.slice(2);
    expect(cells).toEqual([id, printed(weighed.leadKg), ...starts.map((start) => changeOf(weighed, start))]);
  });
});
