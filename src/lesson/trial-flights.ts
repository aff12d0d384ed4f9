import type { Setup } from '../diver/index.ts';
import { PILOTS, type PilotName, type PilotSort } from '../pilot/index.ts';
import { flyLesson } from './fly.ts';
import { HABIT_IDS, type HabitId } from './habit-kinds.ts';
import type { Lesson, MarkId } from './lesson.ts';
import { trialLesson, trialRig, type TrialCell, type TrialTask } from './trials.ts';

/** Marks that trials look at, each in its task. */
export const TRIAL_MARKS = [
  { task: 'hover', mark: 'hover' },
  { task: 'ascent', mark: 'ascent' },
  { task: 'descent', mark: 'descent' },
  { task: 'first-dive', mark: 'descent' },
  { task: 'first-dive', mark: 'hover' },
  { task: 'first-dive', mark: 'ascent' },
] as const satisfies readonly { task: TrialTask; mark: MarkId }[];

/** Who is to stand above whom. */
export const TRIAL_PAIRS = [
  ['steady', 'able'],
  ['able', 'learner'],
  ['able', 'pulser'],
] as const satisfies readonly (readonly [PilotName, PilotName])[];

/** Who is set beside the able one on the same seeds: who bends the task, and who has more of one skill. */
const BESIDE_ABLE: readonly PilotSort[] = ['bend', 'skill'];

/** What came of one pilot in one task of one cell: plain data, JSON-safe. */
export interface TrialRow {
  readonly pilot: PilotName;
  readonly task: TrialTask;
  readonly flights: number;
  /** Flights in which every demand of every mark was met. */
  readonly passed: number;
  /** In the order of the task's marks. */
  readonly marks: readonly {
    readonly mark: MarkId;
    readonly mean: number;
    readonly least: number;
    readonly most: number;
    /** Marks of 80 or more whose task was not met; marks below 50 whose task was, and no fins and no held breath in it. */
    readonly secureUnmet: number;
    readonly metNotYet: number;
  }[];
  /** Flights in which each habit was found; those never found left out. */
  readonly habits: Readonly<Partial<Record<HabitId, number>>>;
}

/** What came of a cell. */
export interface TrialResult {
  readonly cell: string;
  readonly use: TrialCell['use'];
  readonly seeds: number;
  readonly fromSeed: number;
  readonly rows: readonly TrialRow[];
  /** Chance that a flight of the first has the higher mark, ties counting half. */
  readonly above: readonly {
    readonly task: TrialTask;
    readonly mark: MarkId;
    readonly first: PilotName;
    readonly second: PilotName;
    readonly chance: number;
  }[];
  /** How far who bends the task, or has more of a skill, stands above the able one on the same seeds, on average, and the standard error. */
  readonly gains: readonly {
    readonly task: TrialTask;
    readonly mark: MarkId;
    readonly pilot: PilotName;
    readonly flights: number;
    readonly mean: number;
    readonly error: number;
  }[];
}

export interface TrialAsk {
  readonly tasks: readonly TrialTask[];
  readonly pilots: readonly PilotName[];
  readonly seeds: number;
  readonly fromSeed: number;
}

/** Flies the tasks of a cell with every pilot and seed. @param step told after each pilot's task */
export function flyCell(base: Setup, cell: TrialCell, firstDive: Lesson, ask: TrialAsk, step = () => {}): TrialResult {
  const { tasks, pilots, seeds, fromSeed } = ask;
  const rows: TrialRow[] = [];
  const scores = new Map<string, Float64Array>();
  for (const task of tasks) {
    const level = trialRig(base, cell, task);
    for (const pilot of pilots) {
      const rig = pilot === 'bottom-sitter' ? { ...level, bottomM: BOTTOM_IN_BAND_M[task] } : level;
      const flights = Array.from({ length: seeds }, (_, i) => {
        const seed = fromSeed + i;
        const { verdict, marks, habits } = flyLesson(
          task === 'first-dive' ? firstDive : trialLesson(task, seed),
          rig,
          pilot,
          seed,
        );
        return { verdict, marks, habits };
      });
      const of = flights[0]?.marks.map(({ id }) => id) ?? [];
      of.forEach((mark, k) =>
        scores.set(
          `${task} ${mark} ${pilot}`,
          Float64Array.from(flights, ({ marks }) => marks[k]!.score),
        ),
      );
      rows.push(rowOf(pilot, task, of, flights));
      step();
    }
  }
  const above = TRIAL_MARKS.flatMap(({ task, mark }) =>
    TRIAL_PAIRS.flatMap(([first, second]) => {
      const [a, b] = [first, second].map((pilot) => scores.get(`${task} ${mark} ${pilot}`));
      return a && b ? [{ task, mark, first, second, chance: chanceAbove(a, b) }] : [];
    }),
  );
  const gains = TRIAL_MARKS.flatMap(({ task, mark }) =>
    pilots.flatMap((pilot) => {
      const [bent, able] = [pilot, 'able'].map((name) => scores.get(`${task} ${mark} ${name}`));
      return BESIDE_ABLE.includes(PILOTS[pilot].sort) && bent && able
        ? [{ task, mark, pilot, ...gainOf(bent, able) }]
        : [];
    }),
  );
  return { cell: cell.id, use: cell.use, seeds, fromSeed, rows, above, gains };
}

/** Results of one cell and the same seeds, flown with other pilots or tasks, as one each; what both flew counts once. */
export function joinedTrials(results: readonly TrialResult[]): TrialResult[] {
  const joined = new Map<string, TrialResult>();
  for (const result of results) {
    const key = `${result.cell} ${result.fromSeed} ${result.seeds}`;
    const before = joined.get(key);
    if (!before) joined.set(key, result);
    else {
      const flown = new Set(before.rows.map(({ pilot, task }) => `${pilot} ${task}`));
      const pairs = new Set(before.above.map(({ task, mark, first, second }) => `${task} ${mark} ${first} ${second}`));
      joined.set(key, {
        ...before,
        rows: [...before.rows, ...result.rows.filter(({ pilot, task }) => !flown.has(`${pilot} ${task}`))],
        above: [
          ...before.above,
          ...result.above.filter(({ task, mark, first, second }) => !pairs.has(`${task} ${mark} ${first} ${second}`)),
        ],
        gains: [...before.gains, ...result.gains.filter(({ pilot, task }) => !flown.has(`${pilot} ${task}`))],
      });
    }
  }
  return [...joined.values()];
}

/** Where the bottom lies for who would sit on it: within the band of the hold, as far as the task can begin above it. */
const BOTTOM_IN_BAND_M: Readonly<Record<TrialTask, number>> = {
  hover: 9,
  ascent: 18.5,
  descent: 12.7,
  'first-dive': 8.7,
};

type Flight = Pick<ReturnType<typeof flyLesson>, 'verdict' | 'marks' | 'habits'>;

function rowOf(pilot: PilotName, task: TrialTask, of: readonly MarkId[], flights: readonly Flight[]): TrialRow {
  const habits: Partial<Record<HabitId, number>> = {};
  for (const id of HABIT_IDS) {
    const count = flights.filter((flight) => flight.habits.some((habit) => habit.id === id)).length;
    if (count > 0) habits[id] = count;
  }
  const marks = of.map((mark, k) => {
    const all = flights.map((flight) => flight.marks[k]!);
    const scores = all.map(({ score }) => score);
    return {
      mark,
      mean: rounded(scores.reduce((sum, score) => sum + score, 0) / scores.length),
      least: rounded(Math.min(...scores)),
      most: rounded(Math.max(...scores)),
      secureUnmet: all.filter(({ word, ok }) => word === 'secure' && !ok).length,
      metNotYet: all.filter(({ word, ok, parts }) => word === 'not yet' && ok && !parts.some(lowers)).length,
    };
  });
  const passed = flights.filter(({ verdict }) => verdict === 'pass').length;
  return { pilot, task, flights: flights.length, passed, marks, habits };
}

/** What may take a met task below the floor: fins, and a cap. */
function lowers({ id, pointsLost, good }: { id: string; pointsLost: number; good: number | null }): boolean {
  return pointsLost > 0 && (id === 'fins' || (good === null && id !== 'ceiling'));
}

/** Chance that one of the first is above one of the second, ties counting half. */
export function chanceAbove(first: Float64Array, second: Float64Array): number {
  let wins = 0;
  for (const a of first) for (const b of second) wins += a > b ? 1 : a === b ? 0.5 : 0;
  return Math.round((wins / (first.length * second.length)) * 1e3) / 1e3;
}

/** Mean of the differences on the same seeds, and its standard error. */
export function gainOf(one: Float64Array, other: Float64Array): { flights: number; mean: number; error: number } {
  const off = one.map((score, i) => score - other[i]!);
  const flights = off.length;
  const mean = off.reduce((sum, difference) => sum + difference, 0) / flights;
  const squares = off.reduce((sum, difference) => sum + (difference - mean) ** 2, 0);
  const error = flights > 1 ? Math.sqrt(squares / (flights - 1) / flights) : 0;
  return { flights, mean: rounded(mean), error: rounded(error) };
}

function rounded(score: number): number {
  return Math.round(score * 100) / 100;
}
