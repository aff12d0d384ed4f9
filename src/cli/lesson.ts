import { readFileSync } from 'node:fs';
import { nearest } from '../diver/file.ts';
import { rigOf, type Rig } from '../diver/index.ts';
import { TICKS_PER_S, startState } from '../dive/index.ts';
import { LESSONS, flyLesson, lessonSetup, lessonStart, type Lesson } from '../lesson/index.ts';
import { readLesson } from '../lesson/file.ts';
import { PILOT_NAMES, type PilotName } from '../pilot/index.ts';
import type { Command } from './command.ts';
import { BadFile, pathOf, setupAt, textOf } from './files.ts';
import { DONE, FAILED, printJson } from './io.ts';
import { SAVE, saveRun } from './save-run.ts';
import { UsageError } from './usage.ts';

/** A lesson, flown by a simulated diver and marked. */
export const lesson: Command = {
  name: 'lesson',
  does: 'a simulated diver flies a lesson, and the marks of it',
  options: {
    pilot: { kind: 'text', shows: 'a pilot', says: `one of ${PILOT_NAMES.join(', ')}`, needed: true },
    seed: { kind: 'number', least: 0, most: 2 ** 32 - 1, says: 'whole number that chance starts from; left out: 1' },
    save: SAVE,
  },
  things: 'LESSON',
  least: 1,
  most: 1,
  more: `A LESSON is a file or the name of one of our own: ${LESSONS.map(({ id }) => id).join(', ')}.
Result: { verdict, marks: [{ id, score, word, ok, criteria, parts }], habits, missed, events: [{ tS, kind, … }], hash, caution };
scores are 0 to 100, parts have what was measured. Exit 0 where the verdict is pass. Predictions are passed over.`,
  run({ things: [given], texts, numbers: { seed = 1 } }, io) {
    const pilot = pilotNamed(texts['pilot']!);
    if (!Number.isInteger(seed)) throw new UsageError(`--seed: found "${seed}"; allowed: a whole number`);
    const taught = lessonAt(given);
    const { verdict, marks, habits, missed, events, dive } = flyLesson(taught, rigFor(taught, given), pilot, seed);
    saveRun(texts['save'], dive, { name: taught.title, lessonId: taught.id, pilot, seed });
    printJson(io, {
      verdict,
      marks,
      habits,
      missed,
      events: events.map(({ tick, ...event }) => ({ tS: tick / TICKS_PER_S, ...event })),
      hash: dive.hash(),
      caution: 'A mark describes control of this screen. It is no evidence of competence in water.',
    });
    return verdict === 'pass' ? DONE : FAILED;
  },
};

function pilotNamed(name: string): PilotName {
  const found = PILOT_NAMES.find((one) => one === name);
  if (found) return found;
  const near = nearest(name, PILOT_NAMES);
  const hint = near === undefined ? `allowed: ${PILOT_NAMES.join(', ')}` : `write ${near}`;
  throw new UsageError(`--pilot: found no pilot ${JSON.stringify(name)}: ${hint}`);
}

function lessonAt(given: string): Lesson {
  const ids = LESSONS.map(({ id }) => id);
  const path = pathOf(given, 'lesson', ids, new URL('../../lessons/', import.meta.url));
  const read = readLesson(typeof path === 'string' ? textOf(path) : readFileSync(path, 'utf8'));
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
