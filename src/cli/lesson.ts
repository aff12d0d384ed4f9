import { readFileSync } from 'node:fs';
import { nearest } from '../diver/file.ts';
import { rigOf, type Rig } from '../diver/index.ts';
import { TICKS_PER_S, startState } from '../dive/index.ts';
import { LESSONS, flyLesson, lessonSetup, lessonStart, type Lesson } from '../lesson/index.ts';
import { BENCH_LESSONS, type BenchLesson } from '../lesson/bench.ts';
import { readAnyLesson } from '../lesson/file.ts';
import { PILOT_NAMES, type PilotName } from '../pilot/index.ts';
import type { Command } from './command.ts';
import { BadFile, pathOf, setupAt, textOf } from './files.ts';
import { DONE, FAILED, printJson, type ExitCode, type Io } from './io.ts';
import { lessonJsonSchema } from './lesson-json-schema.ts';
import { printBench } from './lesson-bench.ts';
import { printAllPilots, printAllProofs } from './lesson-tables.ts';
import { SAVE, saveRun } from './save-run.ts';
import { UsageError } from './usage.ts';

/** A lesson, flown by a simulated diver and marked. */
export const lesson: Command = {
  name: 'lesson',
  does: 'a simulated diver flies a lesson, and the marks of it; what lesson files look like',
  options: {
    pilot: { kind: 'text', shows: 'a pilot', says: `one of ${PILOT_NAMES.join(', ')}` },
    seed: { kind: 'number', least: 0, most: 2 ** 32 - 1, says: 'whole number that chance starts from; left out: 1' },
    seeds: { kind: 'number', least: 1, most: 1000, says: 'how many seeds the tables fly; left out: 3' },
    all: {
      kind: 'flag',
      says: 'a table: every lesson with those whom its proof names; exit 1 where one comes otherwise',
    },
    'all-pilots': { kind: 'flag', says: 'a table: the lesson with every pilot' },
    schema: { kind: 'flag', says: 'the JSON Schema of lesson files, for editors that complete and check' },
    template: { kind: 'flag', says: 'a lesson file to begin with' },
    bench: { kind: 'flag', says: 'with --template: one for the bench' },
    save: SAVE,
  },
  things: '[LESSON]',
  least: 0,
  most: 1,
  more: `A LESSON is a file or the name of one of our own: ${LESSONS.map(({ id }) => id).join(', ')}; at the
bench ${BENCH_LESSONS.map(({ id }) => id).join(', ')}, which scripted hands go through: no pilot.
Result: { verdict, marks: [{ id, score, word, ok, criteria, parts }],
demands, habits, missed, events: [{ tS, kind, … }], hash, caution };
scores are 0 to 100, parts have what was measured. Exit 0 where the verdict is pass. Predictions are passed over.`,
  run({ things: [given], texts, numbers: { seed = 1, seeds = 3 }, flags }, io) {
    for (const [name, value] of Object.entries({ seed, seeds }))
      if (!Number.isInteger(value)) throw new UsageError(`--${name}: found "${value}"; allowed: a whole number`);
    if (flags.has('schema')) return printed(io, `${JSON.stringify(lessonJsonSchema(), null, 2)}\n`);
    if (flags.has('template')) {
      const folder = flags.has('bench') ? new URL('bench/', LESSONS_FOLDER) : LESSONS_FOLDER;
      return printed(io, readFileSync(new URL('template.yaml', folder), 'utf8'));
    }
    if (flags.has('all') && given === undefined) return printAllProofs(io, seeds) ? DONE : FAILED;
    if (given === undefined) throw new UsageError('LESSON is missing');
    const taught = lessonAt(given);
    const atBench = 'bench' in taught;
    if (flags.has('all'))
      return printAllProofs(io, seeds, atBench ? [] : [taught], atBench ? [taught] : []) ? DONE : FAILED;
    if (atBench) {
      if (flags.has('all-pilots') || texts['pilot'] !== undefined)
        throw new UsageError('No pilot flies at the bench: leave it out, or write --all for the hands of its proof');
      return printBench(io, taught) ? DONE : FAILED;
    }
    if (flags.has('all-pilots')) {
      printAllPilots(io, taught, rigFor(taught, given), seeds);
      return DONE;
    }
    const named = texts['pilot'];
    if (named === undefined) throw new UsageError(`--pilot is missing: one of ${PILOT_NAMES.join(', ')}`);
    const pilot = pilotNamed(named);
    const { verdict, marks, demands, habits, missed, events, dive } = flyLesson(
      taught,
      rigFor(taught, given),
      pilot,
      seed,
    );
    saveRun(texts['save'], dive, { name: taught.title, lessonId: taught.id, pilot, seed });
    printJson(io, {
      verdict,
      marks,
      demands,
      habits,
      missed,
      events: events.map(({ tick, ...event }) => ({ tS: tick / TICKS_PER_S, ...event })),
      hash: dive.hash(),
      caution: 'A mark describes control of this screen. It is no evidence of competence in water.',
    });
    return verdict === 'pass' ? DONE : FAILED;
  },
};

const LESSONS_FOLDER = new URL('../../lessons/', import.meta.url);

function printed(io: Io, text: string): ExitCode {
  io.out(text);
  return DONE;
}

function pilotNamed(name: string): PilotName {
  const found = PILOT_NAMES.find((one) => one === name);
  if (found) return found;
  const near = nearest(name, PILOT_NAMES);
  const hint = near === undefined ? `allowed: ${PILOT_NAMES.join(', ')}` : `write ${near}`;
  throw new UsageError(`--pilot: found no pilot ${JSON.stringify(name)}: ${hint}`);
}

function lessonAt(given: string): Lesson | BenchLesson {
  const own = BENCH_LESSONS.some(({ id }) => id === given) ? new URL('bench/', LESSONS_FOLDER) : LESSONS_FOLDER;
  const path = pathOf(
    given,
    'lesson',
    [...LESSONS, ...BENCH_LESSONS].map(({ id }) => id),
    own,
  );
  const text = typeof path === 'string' ? textOf(path) : readFileSync(path, 'utf8');
  const read = readAnyLesson(text);
  if ('problems' in read) throw new BadFile(given, read.problems);
  return read.lesson;
}

/** The rig that a lesson is flown with. @throws {BadFile} when its changes make of the ready setup what no dive can begin in */
function rigFor(taught: Lesson, given: string): Rig {
  try {
    const rig = rigOf(lessonSetup(taught, setupAt(taught.setup.ready)));
    startState(rig, lessonStart(taught, rig));
    return rig;
  } catch (problem) {
    if (!(problem instanceof RangeError)) throw problem;
    const allowed = 'changes and a start that go together with the ready setup';
    const suggestion = 'Change less, or choose another ready setup';
    throw new BadFile(given, [{ line: 1, path: 'setup', found: problem.message, allowed, suggestion }]);
  }
}
