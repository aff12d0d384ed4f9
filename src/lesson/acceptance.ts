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
 * points, short cuts stand below the learner or at 15 at most, bends gain no more than one point on the able, each skill stands
 * above the next, and no mark is secure unless its task was met. Demands whose pilots were not flown are left out.
 */
export function acceptance(results: readonly TrialResult[]): Demanded[] {
  return TRIAL_MARKS.flatMap(({ task, mark }) => [
    ...atLeast('steady: mean', STEADY_LEAST, task, mark, stat(results, task, mark, 'steady', 'mean')),
    ...atMost('idler: highest', IDLER_MOST, task, mark, stat(results, task, mark, 'idler', 'most')),
    ...atMost('random: highest', RANDOM_MOST, task, mark, stat(results, task, mark, 'random', 'most')),
    ...atMost('breath-holder: highest', 0, task, mark, stat(results, task, mark, 'breath-holder', 'most')),
    ...atMost('kicker: highest', KICKER_MOST, task, mark, stat(results, task, mark, 'kicker', 'most')),
    ...of('short-cut').flatMap((pilot) =>
      atMost(
        `${pilot}: mean above the learner's and ${SHORT_CUT_FREE}`,
        0,
        task,
        mark,
        gains(results, task, mark, pilot),
      ),
    ),
    ...of('bend').flatMap((pilot) =>
      atMost(`${pilot}: mean above the able one's`, BEND_GAIN, task, mark, over(results, task, mark, pilot, 'able')),
    ),
    ...pairs(results, task, mark),
    ...atMost('marks of 80 or more without the task met', 0, task, mark, counts(results, task, mark, 'secureUnmet')),
    ...atMost('marks below 50 with the task met', 0, task, mark, counts(results, task, mark, 'metNotYet')),
  ]);
}

/** Names of the pilots of a sort. */
function of(sort: (typeof PILOTS)[PilotName]['sort']): PilotName[] {
  return (Object.keys(PILOTS) as PilotName[]).filter((name) => PILOTS[name].sort === sort);
}

interface Value {
  readonly cell: string;
  readonly value: number;
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

function over(
  results: readonly TrialResult[],
  task: TrialTask,
  mark: MarkId,
  pilot: PilotName,
  than: PilotName,
): Value[] {
  return results.flatMap((result) => {
    const [one, other] = [markRow(result, task, mark, pilot), markRow(result, task, mark, than)];
    return one && other ? [{ cell: result.cell, value: rounded(one.mean - other.mean) }] : [];
  });
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

function pairs(results: readonly TrialResult[], task: TrialTask, mark: MarkId): Demanded[] {
  const limit = task === 'first-dive' ? FIRST_DIVE_ABOVE_LEAST : ABOVE_LEAST;
  // Of a cell that was flown with few seeds and with many, the many say more.
  const fullest = results.filter(({ cell, seeds }) =>
    results.every((other) => other.cell !== cell || other.seeds <= seeds),
  );
  const all = fullest.flatMap(({ cell, above }) =>
    above.filter((pair) => pair.task === task && pair.mark === mark).map((pair) => ({ cell, ...pair })),
  );
  return [...new Set(all.map(({ first, second }) => `${first} above ${second}`))].flatMap((name) =>
    atLeast(
      `${name}: chance`,
      limit,
      task,
      mark,
      all
        .filter(({ first, second }) => `${first} above ${second}` === name)
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
