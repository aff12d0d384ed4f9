import { rigOf, type Problem } from '../diver/index.ts';
import { startState } from '../dive/index.ts';
import type { BenchLesson } from '../lesson/bench.ts';
import {
  BENCH_LESSONS,
  LESSONS,
  asExpected,
  flights,
  hashOfText,
  lessonSetup,
  lessonStart,
  type Lesson,
} from '../lesson/index.ts';
import { readySetup } from './setups.ts';

const KEY = 'midwater-own-lesson';

/** A lesson file of somebody's own, as it was opened. */
export interface OwnFile {
  readonly name: string;
  readonly text: string;
}

/** A file that was read: its lesson under an id that no other text has, or what is wrong with it. */
export type OwnRead = { readonly lesson: Lesson | BenchLesson } | { readonly problems: readonly Problem[] };

/** Keeps the file for as long as the tab lives, so that a reload goes on with it; null forgets it. A browser may refuse. */
export function keepOwnFile(view: Window, file: OwnFile | null): void {
  try {
    if (file) view.sessionStorage.setItem(KEY, JSON.stringify(file));
    else view.sessionStorage.removeItem(KEY);
  } catch {
    // It is there until the page is left, and nothing else is lost.
  }
}

/** The file that was kept; null where there is none, or nothing that can be read. */
export function ownFile(view: Window): OwnFile | null {
  try {
    const found = JSON.parse(view.sessionStorage.getItem(KEY) ?? 'null') as Partial<OwnFile> | null;
    return typeof found?.name === 'string' && typeof found.text === 'string'
      ? { name: found.name, text: found.text }
      : null;
  } catch {
    return null;
  }
}

/** Reads a lesson file and tries its diver, or its things: every problem, with its line, or a lesson that can be begun. The reader is fetched now. */
export async function readOwn({ text }: OwnFile): Promise<OwnRead> {
  const { readAnyLesson } = await import('../lesson/file.ts');
  const read = readAnyLesson(text);
  if ('problems' in read) return read;
  const lesson = { ...read.lesson, id: `own-${hashOfText(text).slice(0, 8)}` };
  const at = 'bench' in lesson ? 'bench' : 'setup';
  try {
    if ('bench' in lesson) return (await import('./own-bench.ts')).stood(lesson);
    const rig = rigOf(lessonSetup(lesson, await readySetup(lesson.setup.ready)));
    startState(rig, lessonStart(lesson, rig));
    return { lesson };
  } catch (problem) {
    if (!(problem instanceof RangeError)) throw problem;
    const allowed =
      at === 'bench' ? 'things that fit the tank' : 'changes and a start that go together with the ready setup';
    const suggestion = at === 'bench' ? 'Change less.' : 'Change less, or choose another ready setup.';
    const line = text.split('\n').findIndex((one) => one.startsWith(`${at}:`)) + 1;
    return { problems: [{ line: Math.max(1, line), path: at, found: problem.message, allowed, suggestion }] };
  }
}

/** A lesson that is flown, by its id; as `findTaught` does. */
export async function findLesson(id: string, view: Window): Promise<Lesson | null> {
  const found = await findTaught(id, view);
  return found && !('bench' in found) ? found : null;
}

/** A lesson by its id, flown or at the bench: one of ours, or the file that this tab has opened. */
export async function findTaught(id: string, view: Window): Promise<Lesson | BenchLesson | null> {
  const built = [...LESSONS, ...BENCH_LESSONS].find((one) => one.id === id);
  const file = built || !id.startsWith('own-') ? null : ownFile(view);
  if (!file) return built ?? null;
  const read = await readOwn(file);
  return 'lesson' in read && read.lesson.id === id ? read.lesson : null;
}

/** What the file says of who passes and who fails, and does not come so: a sentence each. Flies, and leaves the page its turns. */
export async function warningsOf(lesson: Lesson | BenchLesson): Promise<readonly string[]> {
  if (lesson.proof.length === 0) return ['It has no proof: nobody has shown that it can be passed, or failed.'];
  if ('bench' in lesson) return (await import('./own-bench.ts')).benchWarningsOf(lesson);
  const rig = rigOf(lessonSetup(lesson, await readySetup(lesson.setup.ready)));
  const warnings: string[] = [];
  let passes = 0;
  let fails = 0;
  for (const proof of lesson.proof) {
    await new Promise((done) => setTimeout(done, 0));
    const flown = flights(lesson, rig, proof, [1]);
    passes += flown.passed;
    fails += flown.flown - flown.passed;
    if (asExpected(proof, flown)) continue;
    const who = proof.pilot ?? 'the script';
    const came =
      flown.passed > 0 ? 'passes' : `fails by ${[...flown.faults.keys()].join(', ') || 'nothing that is named'}`;
    warnings.push(
      `Its proof says that ${who} comes to ${proof.comes}${proof.fault ? ` by ${proof.fault}` : ''}; here ${who} ${came}.`,
    );
  }
  if (passes === 0) warnings.push('Nobody of its proof passes: perhaps it cannot be passed.');
  if (fails === 0) warnings.push('Everybody of its proof passes: a lesson that everybody passes teaches nothing.');
  return warnings;
}
