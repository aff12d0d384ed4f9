import { describe, expect, test } from 'vitest';
import { DIVER } from './answers-diver.ts';
import { GAS } from './answers-gas.ts';
import { MOTION } from './answers-motion.ts';
import { WATER } from './answers-water.ts';
import { ROWS, allowedOff, rowOf } from './rows.ts';
import { OUTSIDE, WAITING } from './standing.ts';

const ANSWERED = { water: WATER, gas: GAS, diver: DIVER, motion: MOTION };

for (const [topic, answers] of Object.entries(ANSWERED))
  describe(`published and derived values: ${topic}`, () => {
    for (const [id, answer] of Object.entries(answers)) {
      const row = rowOf(id);
      test(`${id}: ${row.topic} is ${JSON.stringify(row.expected)} ${row.units} (${row.tolerance}) [${row.mark}] ${row.source}`, () => {
        const off = Math.abs(answer() - (row.expected as number));
        expect(off, `answer ${answer()}`).toBeLessThanOrEqual(allowedOff(row));
      });
    }
  });

describe('standing of the rows', () => {
  const answered = Object.values(ANSWERED).flatMap((answers) => Object.keys(answers));
  const lists = { answered, waiting: Object.keys(WAITING), outside: Object.keys(OUTSIDE) };

  test('each of the 163 rows is answered, waiting or outside the model, and in one list only', () => {
    const listed = Object.values(lists).flat().sort();
    expect(ROWS).toHaveLength(163);
    expect(listed).toEqual(ROWS.map(({ id }) => id).sort());
  });

  test('the three lists are shown with the reasons', () => {
    const reasons = (list: Readonly<Record<string, string>>) =>
      Object.entries(list).map(([id, reason]) => `  ${id}: ${reason}`);
    const text = [
      `Check values: ${answered.length} answered, ${lists.waiting.length} waiting, ${lists.outside.length} outside the model.`,
      'Waiting:',
      ...reasons(WAITING),
      'Outside the model:',
      ...reasons(OUTSIDE),
    ].join('\n');
    process.stdout.write(`\n${text}\n`);
    expect(answered.length + lists.waiting.length + lists.outside.length).toBe(163);
  });
});
