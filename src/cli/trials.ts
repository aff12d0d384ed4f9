import * as v from 'valibot';
import { nearest } from '../diver/file.ts';
import {
  LESSONS,
  TRIAL_CELLS,
  TRIAL_TASKS,
  flyCell,
  joinedTrials,
  type TrialCell,
  type TrialResult,
} from '../lesson/index.ts';
import { PILOT_NAMES } from '../pilot/index.ts';
import { BadFile, setupAt, textOf } from './files.ts';
import { progressOf, type Io } from './io.ts';
import { UsageError, type Asked, type Option } from './usage.ts';

const CELLS = TRIAL_CELLS.map(({ id }) => id);
const USES = ['tuning', 'held-out', 'unseen'] as const;
const MOST_SEEDS = 1000;

/** What the two commands about trials take. */
export const TRIAL_OPTIONS: Readonly<Record<string, Option>> = {
  seeds: {
    kind: 'number',
    least: 1,
    most: MOST_SEEDS,
    says: 'flights of each pilot in each task of each kit; left out: 4',
  },
  from: { kind: 'number', least: 0, most: 2 ** 31, says: 'the first seed, a whole number; left out: 1' },
  cells: {
    kind: 'text',
    shows: 'kits',
    says: `tuning, held-out (left out: this), unseen, or some of ${CELLS.join(', ')}, with commas between`,
  },
  tasks: {
    kind: 'text',
    shows: 'tasks',
    says: `some of ${TRIAL_TASKS.join(', ')}, with commas between; left out: all`,
  },
  pilots: { kind: 'text', shows: 'pilots', says: 'some of them, with commas between; left out: all' },
};

/** What is said of the files that both commands read. */
export const TRIAL_FILES = `A RESULT is what accept printed before: several are judged together, and nothing is flown.`;

/**
 * The results of the files that are named or, without any, of trials that are flown now. The same words give the same results, to
 * the digit, on every machine.
 */
export function trialResults({ things, numbers, texts }: Asked, io: Io): TrialResult[] {
  if (things.length > 0) return joinedTrials(things.flatMap(readResults));
  const { seeds = 4, from = 1 } = numbers;
  for (const [name, value] of Object.entries({ seeds, from }))
    if (!Number.isInteger(value)) throw new UsageError(`--${name}: found "${value}"; allowed: a whole number`);
  const cells = cellsNamed(texts['cells'] ?? 'held-out');
  const tasks = listed('tasks', texts['tasks'], TRIAL_TASKS);
  const pilots = listed('pilots', texts['pilots'], PILOT_NAMES);
  const firstDive = LESSONS.find(({ id }) => id === 'first-dive')!;
  const base = setupAt('temperate-sea');
  const progress = progressOf(io, 'flying');
  const steps = cells.length * tasks.length * pilots.length;
  let done = 0;
  const step = () => progress(++done / steps);
  return cells.map((cell) => flyCell(base, cell, firstDive, { tasks, pilots, seeds, fromSeed: from }, step));
}

function cellsNamed(words: string): readonly TrialCell[] {
  if (USES.some((use) => use === words)) return TRIAL_CELLS.filter(({ use }) => use === words);
  const names = listed('cells', words, CELLS);
  return TRIAL_CELLS.filter(({ id }) => names.includes(id));
}

/** Names with commas between, each one of those allowed and each once, however often it is said; all where nothing is said. */
function listed<T extends string>(option: string, words: string | undefined, allowed: readonly T[]): readonly T[] {
  if (words === undefined) return allowed;
  const names = words.split(',').map((word) => {
    const found = allowed.find((name) => name === word.trim());
    if (found) return found;
    const near = nearest(word, allowed);
    const hint = near === undefined ? `allowed: ${allowed.join(', ')}` : `write ${near}`;
    throw new UsageError(`--${option}: found ${JSON.stringify(word)}: ${hint}`);
  });
  return [...new Set(names)];
}

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const text = v.string();
const resultsFile = v.object({
  results: v.pipe(
    v.array(
      v.object({
        cell: v.picklist(CELLS),
        use: v.picklist(USES),
        seeds: count,
        fromSeed: count,
        rows: v.array(
          v.object({
            pilot: v.picklist(PILOT_NAMES),
            task: v.picklist(TRIAL_TASKS),
            flights: count,
            passed: count,
            marks: v.array(
              v.object({
                mark: text,
                mean: v.number(),
                least: v.number(),
                most: v.number(),
                secureUnmet: count,
                metNotYet: count,
              }),
            ),
            habits: v.record(text, count),
          }),
        ),
        above: v.array(
          v.object({
            task: v.picklist(TRIAL_TASKS),
            mark: text,
            first: v.picklist(PILOT_NAMES),
            second: v.picklist(PILOT_NAMES),
            chance: v.number(),
          }),
        ),
        gains: v.array(
          v.object({
            task: v.picklist(TRIAL_TASKS),
            mark: text,
            pilot: v.picklist(PILOT_NAMES),
            flights: count,
            mean: v.number(),
            error: v.number(),
          }),
        ),
      }),
    ),
    v.minLength(1),
  ),
});

/** @throws {BadFile} when it is not what accept prints */
function readResults(path: string): TrialResult[] {
  const allowed = 'what accept prints: { results: [{ cell, use, seeds, fromSeed, rows, above }] }';
  const refused = (found: string, where: string) =>
    new BadFile(path, [{ line: 1, path: where, found, allowed, suggestion: 'Print it anew with accept' }]);
  let json: unknown;
  try {
    json = JSON.parse(textOf(path));
  } catch (problem) {
    if (problem instanceof UsageError) throw problem;
    throw refused('no JSON', '');
  }
  const read = v.safeParse(resultsFile, json);
  if (!read.success) throw refused(read.issues[0].message, v.getDotPath(read.issues[0]) ?? '');
  return read.output.results as TrialResult[];
}
