import { PILOTS, type PilotName } from '../pilot/index.ts';
import type { MarkId } from './lesson.ts';
import { TRIAL_MARKS, type TrialResult } from './trial-flights.ts';
import type { TrialTask } from './trials.ts';

/** One demand on the marks, and what came of it. */
export interface Demanded {
  readonly demand: string;
  readonly task: TrialTask;
  readonly mark: MarkId;
  /** The worst over all cells, and the cell it is of. */
  readonly value: number;
  readonly cell: string;
  /** Standard error of a mean difference on the same seeds. */
  readonly error?: number;
  readonly limit: number;
  readonly met: boolean;
}

const STEADY_LEAST = 85;
const ABOVE_LEAST = 0.85;
/** In the first dive pilots begin afloat, and those that leave the surface alike are alike for a while. */
const FIRST_DIVE_ABOVE_LEAST = 0.8;
const IDLER_MOST = 5;
const RANDOM_MOST = 15;
const KICKER_MOST = 49.99;
const SHORT_CUT_FREE = 15;
const BEND_GAIN = 1;

/**
 * What is demanded of marks, each at its worst over the cells: the steady reach 85 on average, nobody who does no diving gets
 * points, short cuts stand below the learner or at 15 at most, bends gain no more than one point on the able, who has more of one
 * skill than he loses no more than that, each skill stands above the next, and no mark is secure unless its task was met. Demands whose pilots were not flown are left out.
 */
export function acceptance(results: readonly TrialResult[]): Demanded[] {
  return TRIAL_MARKS.flatMap(({ task, mark }) => [
    ...atLeast('steady: mean', STEADY_LEAST, task, mark, stat(fullest(results), task, mark, 'steady', 'mean')),
    ...atMost('idler: highest', IDLER_MOST, task, mark, stat(results, task, mark, 'idler', 'most')),
    ...atMost('random: highest', RANDOM_MOST, task, mark, stat(results, task, mark, 'random', 'most')),
    ...atMost('breath-holder: highest', 0, task, mark, stat(results, task, mark, 'breath-holder', 'most')),
    ...atMost('kicker: highest', KICKER_MOST, task, mark, stat(results, task, mark, 'kicker', 'most')),
    ...shortCuts(task).flatMap((pilot) =>
      atMost(
        `${pilot}: mean above the learner's and ${SHORT_CUT_FREE}`,
        0,
        task,
        mark,
        gains(results, task, mark, pilot),
      ),
    ),
    ...of('bend').flatMap((pilot) =>
      atMost(`${pilot}: mean above the able one's`, BEND_GAIN, task, mark, over(results, task, mark, pilot)),
    ),
    ...of('skill').flatMap((pilot) =>
      atLeast(
        `${pilot}: mean above the able one's, at least`,
        -BEND_GAIN,
        task,
        mark,
        over(results, task, mark, pilot),
      ),
    ),
    ...pairs(results, task, mark),
    ...atMost('marks of 80 or more without the task met', 0, task, mark, counts(results, task, mark, 'secureUnmet')),
    ...atMost('marks below 50 with the task met', 0, task, mark, counts(results, task, mark, 'metNotYet')),
  ]);
}

/** Marks of one pilot in one task over all cells, 0–100. */
export interface MarkRange {
  readonly task: TrialTask;
  readonly mark: MarkId;
  readonly pilot: PilotName;
  readonly flights: number;
  /** Means of the cells in which it is lowest and highest. */
  readonly lowestMean: number;
  readonly highestMean: number;
  /** Of a single flight. */
  readonly least: number;
  readonly most: number;
}

/** What marks came to: for each task, mark and pilot the range over the cells. */
export function markRanges(results: readonly TrialResult[]): MarkRange[] {
  const pilots = (Object.keys(PILOTS) as PilotName[]).filter((pilot) =>
    results.some(({ rows }) => rows.some((row) => row.pilot === pilot)),
  );
  return TRIAL_MARKS.flatMap(({ task, mark }) =>
    pilots.flatMap((pilot) => {
      const rows = fullest(results).flatMap((result) =>
        result.rows.filter((row) => row.pilot === pilot && row.task === task),
      );
      const marks = rows.flatMap((row) => row.marks.filter((one) => one.mark === mark));
      if (marks.length === 0) return [];
      const means = marks.map(({ mean }) => mean);
      return [
        {
          ...{ task, mark, pilot, flights: rows.reduce((sum, { flights }) => sum + flights, 0) },
          ...{ lowestMean: Math.min(...means), highestMean: Math.max(...means) },
          ...{ least: Math.min(...marks.map(({ least }) => least)), most: Math.max(...marks.map(({ most }) => most)) },
        },
      ];
    }),
  );
}

/** Rows of each pilot and task from the result of its cell that has the most flights of them: the many say more than the few. */
function fullest(results: readonly TrialResult[]): TrialResult[] {
  const flights = (result: TrialResult, { pilot, task }: TrialResult['rows'][number]) =>
    result.rows.find((row) => row.pilot === pilot && row.task === task)?.flights ?? 0;
  return results.map((result) => ({
    ...result,
    rows: result.rows.filter((row) =>
      results.every((other) => other.cell !== result.cell || flights(other, row) <= row.flights),
    ),
  }));
}

/** Short cuts that a task has room for: who brakes his way with fins has none to brake in a hover. */
function shortCuts(task: TrialTask): PilotName[] {
  return of('short-cut').filter((pilot) => pilot !== 'fin-braker' || task !== 'hover');
}

/** Names of the pilots of a sort. */
function of(sort: (typeof PILOTS)[PilotName]['sort']): PilotName[] {
  return (Object.keys(PILOTS) as PilotName[]).filter((name) => PILOTS[name].sort === sort);
}

interface Value {
  readonly cell: string;
  readonly value: number;
  readonly error?: number;
}

function markRow(result: TrialResult, task: TrialTask, mark: MarkId, pilot: PilotName) {
  const row = result.rows.find((one) => one.task === task && one.pilot === pilot);
  return row?.marks.find((one) => one.mark === mark);
}

function stat(
  results: readonly TrialResult[],
  task: TrialTask,
  mark: MarkId,
  pilot: PilotName,
  which: 'mean' | 'most',
): Value[] {
  return results.flatMap((result) => {
    const found = markRow(result, task, mark, pilot);
    return found ? [{ cell: result.cell, value: found[which] }] : [];
  });
}

/** Gains of who bends the task, in each cell from the result with the most flights: the many say more than the few. */
function over(results: readonly TrialResult[], task: TrialTask, mark: MarkId, pilot: PilotName): Value[] {
  const most = new Map<string, { flights: number; value: Value }>();
  for (const { cell, gains } of results)
    for (const { flights, mean, error, ...gain } of gains)
      if (gain.task === task && gain.mark === mark && gain.pilot === pilot && flights > (most.get(cell)?.flights ?? 0))
        most.set(cell, { flights, value: { cell, value: mean, error } });
  return [...most.values()].map(({ value }) => value);
}

/** How far a short cut's mean stands above the learner's, or above what is free where that is more. */
function gains(results: readonly TrialResult[], task: TrialTask, mark: MarkId, pilot: PilotName): Value[] {
  return results.flatMap((result) => {
    const [one, learner] = [markRow(result, task, mark, pilot), markRow(result, task, mark, 'learner')];
    return one && learner
      ? [{ cell: result.cell, value: rounded(one.mean - Math.max(learner.mean, SHORT_CUT_FREE)) }]
      : [];
  });
}

function counts(
  results: readonly TrialResult[],
  task: TrialTask,
  mark: MarkId,
  which: 'secureUnmet' | 'metNotYet',
): Value[] {
  return results.map(({ cell, rows }) => {
    const all = rows
      .filter((row) => row.task === task)
      .flatMap(({ marks }) => marks.filter((one) => one.mark === mark));
    return { cell, value: all.reduce((sum, one) => sum + one[which], 0) };
  });
}

/** Who stands above whom, in each cell from the result with the most flights of the two. */
function pairs(results: readonly TrialResult[], task: TrialTask, mark: MarkId): Demanded[] {
  const limit = task === 'first-dive' ? FIRST_DIVE_ABOVE_LEAST : ABOVE_LEAST;
  const all = results.flatMap(({ cell, rows, above }) => {
    const flights = (pilot: PilotName) => rows.find((row) => row.pilot === pilot && row.task === task)?.flights ?? 0;
    return above
      .filter((pair) => pair.task === task && pair.mark === mark)
      .map((pair) => ({ cell, ...pair, flights: Math.min(flights(pair.first), flights(pair.second)) }));
  });
  return [...new Set(all.map(({ first, second }) => `${first} above ${second}`))].flatMap((name) =>
    atLeast(
      `${name}: chance`,
      limit,
      task,
      mark,
      all
        .filter(({ first, second }) => `${first} above ${second}` === name)
        .filter(({ cell, flights }, _, named) => named.every((one) => one.cell !== cell || one.flights <= flights))
        .map(({ cell, chance }) => ({ cell, value: chance })),
    ),
  );
}

function atLeast(demand: string, limit: number, task: TrialTask, mark: MarkId, values: readonly Value[]): Demanded[] {
  return judged(demand, limit, task, mark, values, -1);
}

function atMost(demand: string, limit: number, task: TrialTask, mark: MarkId, values: readonly Value[]): Demanded[] {
  return judged(demand, limit, task, mark, values, 1);
}

function judged(
  demand: string,
  limit: number,
  task: TrialTask,
  mark: MarkId,
  values: readonly Value[],
  sign: 1 | -1,
): Demanded[] {
  if (values.length === 0) return [];
  const worst = values.reduce((one, other) => (sign * other.value > sign * one.value ? other : one));
  return [{ demand, task, mark, ...worst, limit, met: sign * worst.value <= sign * limit }];
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
