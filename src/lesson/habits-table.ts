import type { PilotName } from '../pilot/index.ts';
import { HABIT_IDS, HABIT_KINDS, type HabitId } from './habit-kinds.ts';
import type { TrialResult } from './trial-flights.ts';
import type { TrialTask } from './trials.ts';

/** Who has a habit, and in which tasks it can show. */
const HAVE: Readonly<Record<HabitId, { readonly pilot: PilotName; readonly tasks: readonly TrialTask[] } | null>> = {
  'breath-held-while-rising': { pilot: 'breath-holder', tasks: ['hover', 'ascent', 'descent', 'first-dive'] },
  'jacket-as-a-lift': { pilot: 'lifter', tasks: ['ascent', 'first-dive'] },
  'press-overshoots': null,
  'presses-until-it-moves': { pilot: 'over-corrector', tasks: ['hover', 'ascent', 'descent', 'first-dive'] },
  'up-and-down': null,
  'stop-and-go': { pilot: 'over-corrector', tasks: ['ascent'] },
  'kicks-while-heavy': { pilot: 'heavy-kicker', tasks: ['ascent', 'descent', 'first-dive'] },
  'vents-late': { pilot: 'late-venter', tasks: ['ascent'] },
  'wrong-way': { pilot: 'wrong-hander', tasks: ['hover', 'ascent', 'descent', 'first-dive'] },
  'late-first-action': { pilot: 'latecomer', tasks: ['hover', 'ascent', 'descent'] },
  'all-vented-at-once': { pilot: 'dumper', tasks: ['descent', 'first-dive'] },
  'no-breath': { pilot: 'pulser', tasks: ['hover', 'ascent', 'descent', 'first-dive'] },
  'stop-left-early': { pilot: 'early-leaver', tasks: ['ascent', 'first-dive'] },
  'shot-to-the-surface': { pilot: 'early-leaver', tasks: ['ascent'] },
};

/** Pilots that have none of the habits, the able one not wholly: what is found in them counts as a false alarm. */
const HAVE_NOT = ['steady', 'able'] as const satisfies readonly PilotName[];

const HITS_LEAST = 95;
const FALSE_MOST = 5;
/** What caps a mark is a fact of the recording: it is stated. */
const FACTS: readonly HabitId[] = ['breath-held-while-rising', 'shot-to-the-surface'];

/** One line of the table, per cent of flights. */
export interface HabitRates {
  readonly habit: HabitId;
  readonly name: string;
  /** Who has it; null where no pilot has it alone. */
  readonly pilot: PilotName | null;
  readonly tasks: readonly TrialTask[];
  /** Flights of that pilot in those tasks, and in how many of 100 it was found. */
  readonly flights: number;
  readonly hitsPercent: number | null;
  /** The same for each task. */
  readonly hitsByTask: Readonly<Partial<Record<TrialTask, number>>>;
  /** Flights of steady and able in every task of 100 in which it was found, and of each of them in the task where it is worst. */
  readonly falsePercent: number;
  readonly falseWorst: { readonly pilot: PilotName; readonly task: TrialTask; readonly percent: number };
  /** Of the learner's flights; most of these are true. */
  readonly learnerPercent: number;
  /** Whether the program may state it: 95 % of hits and 5 % of false alarms where they are worst, or a fact. Otherwise it asks. */
  readonly states: boolean;
}

/** How often each detector finds its habit in who has it, and in who has not, over the cells of some results. */
export function habitsTable(results: readonly TrialResult[]): HabitRates[] {
  const tasks = [...new Set(results.flatMap(({ rows }) => rows.map(({ task }) => task)))];
  return HABIT_IDS.map((habit) => {
    const rate = (pilots: readonly PilotName[], of: readonly TrialTask[]) => {
      const rows = results.flatMap((result) =>
        result.rows.filter(({ pilot, task }) => pilots.includes(pilot) && of.includes(task)),
      );
      const flights = rows.reduce((sum, row) => sum + row.flights, 0);
      const found = rows.reduce((sum, row) => sum + (row.habits[habit] ?? 0), 0);
      return { flights, percent: flights === 0 ? NaN : Math.round((found / flights) * 1000) / 10 };
    };
    const has = HAVE[habit];
    const hits = has ? rate([has.pilot], has.tasks) : null;
    const falsely = rate(HAVE_NOT, tasks).percent;
    const each = HAVE_NOT.flatMap((pilot) =>
      tasks.map((task) => ({ pilot, task, percent: rate([pilot], [task]).percent })),
    );
    const falseWorst = each.reduce((one, other) => (other.percent > one.percent ? other : one));
    return {
      habit,
      name: HABIT_KINDS[habit].name,
      pilot: has?.pilot ?? null,
      tasks: has?.tasks ?? [],
      flights: hits?.flights ?? 0,
      hitsPercent: hits?.percent ?? null,
      hitsByTask: Object.fromEntries((has?.tasks ?? []).map((task) => [task, rate([has!.pilot], [task]).percent])),
      falsePercent: falsely,
      falseWorst,
      learnerPercent: rate(['learner'], tasks).percent,
      states:
        FACTS.includes(habit) || (hits !== null && hits.percent >= HITS_LEAST && falseWorst.percent <= FALSE_MOST),
    };
  });
}
