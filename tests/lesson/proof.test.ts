import { expect, test } from 'vitest';
import { flyLesson, type FlownLesson } from '../../src/lesson/index.ts';
import type { PilotName } from '../../src/pilot/index.ts';
import { firstDive, firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';

// Who passes the first dive and who does not: the demands on the marks, on seeds that nothing was tuned on.
type Flight = Pick<FlownLesson, 'verdict' | 'marks' | 'habits' | 'run'>;
const known = new Map<string, Flight>();

/** The first so many flights of a pilot; each is flown once for all tests. */
function flights(pilot: PilotName, count: number): Flight[] {
  return Array.from({ length: count }, (_, i) => {
    const key = `${pilot} ${i}`;
    const flight = known.get(key) ?? flyLesson(firstDive, rig, pilot, 5001 + i);
    const { verdict, marks, habits, run } = flight;
    known.set(key, { verdict, marks, habits, run });
    return known.get(key)!;
  });
}
const scores = (pilot: PilotName, count: number) =>
  flights(pilot, count).map(({ marks }) => marks.map(({ score }) => score));

/** Chance that a run of the first has the higher mark, ties counting half. */
function above(first: readonly number[], second: readonly number[]): number {
  let wins = 0;
  for (const a of first) for (const b of second) wins += a > b ? 1 : a === b ? 0.5 : 0;
  return wins / (first.length * second.length);
}
const column = (rows: readonly number[][], i: number) => rows.map((row) => row[i]!);

test('steady reaches 80 in every mark, and passes, on at least 9 of 10 seeds', () => {
  const runs = flights('steady', 10);
  const secure = runs.filter(({ marks, verdict }) => verdict === 'pass' && marks.every(({ score }) => score >= 80));
  expect(secure.length).toBeGreaterThanOrEqual(9);
});

test('idler gets at most 5 in every mark on all seeds, and fails', () => {
  for (const { marks, verdict } of flights('idler', 10)) {
    expect(verdict).toBe('fail');
    for (const { score } of marks) expect(score).toBeLessThanOrEqual(5);
  }
});

test('steady stands above able, and able above learner, in every mark and on average', () => {
  const [steady, able, learner] = [scores('steady', 24), scores('able', 24), scores('learner', 24)];
  for (const i of [0, 1, 2]) {
    expect(above(column(steady, i), column(able, i))).toBeGreaterThan(0.5);
    expect(above(column(able, i), column(learner, i))).toBeGreaterThan(0.5);
  }
  expect(above(column(able, 2), column(learner, 2))).toBeGreaterThanOrEqual(0.8);
});

test('learner shows what goes wrong and passes no first dive', () => {
  expect(flights('learner', 20).filter(({ verdict }) => verdict === 'pass')).toEqual([]);
});

test('breath-holder gets 0 in every mark and has the habit stated whenever he leaves the surface', () => {
  for (const { marks, habits, run } of flights('breath-holder', 10)) {
    expect(marks.map(({ score }) => score)).toEqual([0, 0, 0]);
    if (run.phases.some(({ id }) => id === 'hover'))
      expect(habits.some(({ id }) => id === 'breath-held-while-rising')).toBe(true);
  }
});

test('steady, able and learner are never said to hold their breath', () => {
  for (const pilot of ['steady', 'able', 'learner'] as const)
    for (const { habits } of flights(pilot, 10))
      expect(habits.filter(({ id }) => id === 'breath-held-while-rising')).toEqual([]);
});

test('kicker stays below 50 and random at most at 15 in every mark', () => {
  for (const [pilot, most] of [
    ['kicker', 49.9],
    ['random', 15],
  ] as const)
    for (const row of scores(pilot, 10)) for (const score of row) expect(score).toBeLessThanOrEqual(most);
});

test('no mark is secure without its task met, and no task met is not yet', () => {
  for (const pilot of ['steady', 'able', 'learner', 'pulser', 'over-corrector', 'latecomer'] as const)
    for (const { marks } of flights(pilot, 10))
      for (const { word, ok, parts } of marks) {
        if (word === 'secure') expect(ok).toBe(true);
        const finless = parts.find(({ id }) => id === 'fins')?.pointsLost === 0;
        const capped = parts.some(({ id }) => id === 'breath-held');
        if (ok && finless && !capped) expect(word).not.toBe('not yet');
      }
});
