import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { loadSetupText } from '../../src/diver/file.ts';
import { HABIT_IDS } from '../../src/lesson/habit-kinds.ts';
import { gainOf } from '../../src/lesson/trial-flights.ts';
import {
  HABIT_KINDS,
  LESSONS,
  TRIAL_CELLS,
  TRIAL_TASKS,
  acceptance,
  flyCell,
  habitsTable,
  joinedTrials,
  type TrialResult,
} from '../../src/lesson/index.ts';
import { PILOTS, PILOT_NAMES, type PilotName } from '../../src/pilot/index.ts';

// A sample of the trial of all marks, in kits and on seeds that nothing was settled on: `midwater accept` flies the whole of it.
const file = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const base = loadSetupText(file('src/diver/setups/temperate-sea.yaml'));
const firstDive = LESSONS.find(({ id }) => id === 'first-dive')!;
const fly = (cell: string, pilots: readonly PilotName[], seeds: number, fromSeed: number) =>
  flyCell(
    base,
    TRIAL_CELLS.find(({ id }) => id === cell)!,
    firstDive,
    { tasks: TRIAL_TASKS, pilots, seeds, fromSeed },
  );

let results: TrialResult[];
beforeAll(() => {
  results = joinedTrials([
    fly('5mm+3', ['steady', 'able', 'learner', 'pulser'], 6, 9001),
    fly('7mm-fresh+2.5', PILOT_NAMES, 1, 9101),
  ]);
}, 300_000);

test('nobody who does no diving gets points, no trick stands above the learner, and nothing is secure unless its task was met', () => {
  // With one flight the mean of a bend, or of more of a skill, scatters by more than its one point; those that are capped cannot.
  const capped = /^(first-kicker|line-starter|lead-dropper|stayer)/;
  const demands = acceptance(results).filter(({ demand }) => {
    const pilot = demand.split(':')[0] as PilotName;
    return !demand.includes(' above ') || !['bend', 'skill'].includes(PILOTS[pilot]?.sort) || capped.test(demand);
  });
  expect(demands.length).toBeGreaterThan(100);
  expect(
    demands.filter(({ met, cell, demand }) => !met && !(cell === '7mm-fresh+2.5' && / chance$/.test(demand))),
  ).toEqual([]);
});

test('each skill stands above the next, and the steady pass', () => {
  const [many] = results;
  expect(many!.above).toHaveLength(18);
  for (const { task, mark, first, second, chance } of many!.above)
    expect(chance, `${task} ${mark}: ${first} above ${second}`).toBeGreaterThanOrEqual(
      task === 'first-dive' ? 0.8 : 0.85,
    );
  for (const { passed, flights } of many!.rows.filter(({ pilot }) => pilot === 'steady')) expect(passed).toBe(flights);
});

test('acceptance() sees what is wrong: marks that were changed on purpose miss their demands', () => {
  const spoiled = (pilot: PilotName, changes: Partial<TrialResult['rows'][number]['marks'][number]>): TrialResult[] =>
    results.map((result) => ({
      ...result,
      rows: result.rows.map((row) =>
        row.pilot === pilot ? { ...row, marks: row.marks.map((mark) => ({ ...mark, ...changes })) } : row,
      ),
    }));
  const missed = (all: readonly TrialResult[]) =>
    acceptance(all)
      .filter(({ met }) => !met)
      .map(({ demand }) => demand);
  expect(missed(spoiled('idler', { most: 5.1 }))).toContain('idler: highest');
  expect(missed(spoiled('breath-holder', { most: 0.01 }))).toContain('breath-holder: highest');
  expect(missed(spoiled('steady', { mean: 84.9 }))).toContain('steady: mean');
  expect(missed(spoiled('burster', { mean: 99 })).some((demand) => demand.startsWith('burster'))).toBe(true);
  const gaining = results.map((result) => ({
    ...result,
    gains: result.gains.map((gain) => (gain.pilot === 'crawler' ? { ...gain, mean: 1.01 } : gain)),
  }));
  expect(missed(gaining)).toContain("crawler: mean above the able one's");
  const punished = results.map((result) => ({
    ...result,
    gains: result.gains.map((gain) => (gain.pilot === 'deep-breather' ? { ...gain, mean: -1.01 } : gain)),
  }));
  expect(missed(punished)).toContain("deep-breather: mean above the able one's, at least");
  expect(missed(spoiled('able', { secureUnmet: 1 }))).toContain('marks of 80 or more without the task met');
});

test('gainOf() is the mean of paired differences, and its error their deviation over the root of their number', () => {
  // Differences 1, 2, 3, 4, 5: mean 3, variance 2.5, error √(2.5 ÷ 5).
  const one = Float64Array.of(51, 62, 73, 84, 95);
  expect(gainOf(one, Float64Array.of(50, 60, 70, 80, 90))).toEqual({ flights: 5, mean: 3, error: 0.71 });
  expect(gainOf(one, one)).toEqual({ flights: 5, mean: 0, error: 0 });
});

test('acceptance() takes the gain of a bend from the flights that are most in a cell, with its error', () => {
  const gain = { task: 'hover', mark: 'hover', pilot: 'crawler' } as const;
  const cell = { ...results[0]!, rows: [], above: [] };
  const few = { ...cell, seeds: 5, gains: [{ ...gain, flights: 5, mean: 4, error: 2 }] };
  const many = { ...cell, seeds: 300, gains: [{ ...gain, flights: 300, mean: 0.6, error: 0.3 }] };
  const crawler = acceptance([few, many]).filter(({ demand }) => demand.startsWith('crawler'));
  expect(crawler).toMatchObject([{ value: 0.6, error: 0.3, met: true, cell: cell.cell }]);
});

test('acceptance() takes who stands above whom from the flights that are most of both, whatever was flown of one alone', () => {
  const pair = { task: 'hover', mark: 'hover', first: 'able', second: 'learner' } as const;
  const flown = (seeds: number, pilots: readonly ('able' | 'learner')[], chance: number | null): TrialResult => ({
    ...{ ...results[0]!, seeds, gains: [], above: chance === null ? [] : [{ ...pair, chance }] },
    rows: pilots.map((pilot) => ({ pilot, task: 'hover', flights: seeds, passed: 0, marks: [], habits: {} })),
  });
  const both = ['able', 'learner'] as const;
  const all = [flown(25, both, 0.7), flown(100, both, 0.9), flown(400, ['able'], null)];
  const above = acceptance(all).filter(({ demand }) => demand === 'able above learner: chance');
  expect(above).toMatchObject([{ value: 0.9, met: true }]);
});

test('flyCell() gives the same results for the same seeds, and others for others', () => {
  const ask = { tasks: ['hover'], pilots: ['able'], seeds: 1 } as const;
  const once = (fromSeed: number) =>
    JSON.stringify(flyCell(base, TRIAL_CELLS[5]!, firstDive, { ...ask, fromSeed }).rows);
  expect(once(7)).toBe(once(7));
  expect(once(8)).not.toBe(once(7));
});

test('what the program states of a habit is what the table allows it to state', () => {
  const { rows } = JSON.parse(file('src/lesson/habits-table.json')) as { rows: ReturnType<typeof habitsTable> };
  expect(rows.map(({ habit }) => habit)).toEqual([...HABIT_IDS]);
  for (const { habit, states } of rows) expect(HABIT_KINDS[habit].states, habit).toBe(states);
  // And the table's own rule holds for each row of it.
  for (const { habit, states, hitsPercent, falseWorst } of rows)
    if (states && !['breath-held-while-rising', 'shot-to-the-surface'].includes(habit))
      expect(hitsPercent! >= 95 && falseWorst.percent <= 5, habit).toBe(true);
});

test('habitsTable() finds the habits of the sample in who has them and in nobody steady', () => {
  const rows = habitsTable(results);
  for (const habit of ['breath-held-while-rising', 'presses-until-it-moves', 'kicks-while-heavy'] as const) {
    const row = rows.find((one) => one.habit === habit)!;
    expect(row.hitsPercent, habit).toBe(100);
    expect(row.falsePercent, habit).toBe(0);
  }
});
