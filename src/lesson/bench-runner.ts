import { pressureAt, underIn } from '../bench/index.ts';
import type { BenchLesson, BenchPredict, TryStep } from './bench-lesson.ts';
import { readsIn, type BenchSeen } from './bench-readings.ts';
import type { Answer, Prompt } from './run.ts';
import { fits } from './runner.ts';

/** A lesson at the bench under way: plain data, JSON-safe. */
export interface BenchRun {
  readonly lessonId: string;
  /** Index of the step that is asked or tried now; the number of steps once nothing is left. */
  readonly step: number;
  readonly answers: readonly { readonly id: string; readonly answer: Answer; readonly atS: number }[];
  readonly tries: readonly Tried[];
  /** Seconds that were spent trying. */
  readonly passedS: number;
}

/** What is known of one step to try. */
export interface Tried {
  readonly id: string;
  /** How many of its aims came about, and since when the next one holds, in seconds that passed. */
  readonly met: number;
  readonly sinceS: number | null;
  readonly fromS: number;
  readonly done: boolean;
}

/** A lesson at its beginning. */
export function beginBench(lesson: BenchLesson): BenchRun {
  return entered(lesson, { lessonId: lesson.id, step: 0, answers: [], tries: [], passedS: 0 });
}

/** Whether nothing is left to ask or to try. */
export function benchDone(lesson: BenchLesson, run: BenchRun): boolean {
  return run.step >= lesson.steps.length;
}

/** What is asked, or said, before the bench goes on. */
export function benchPrompt(lesson: BenchLesson, run: BenchRun): Prompt | null {
  const step = lesson.steps[run.step];
  if (step?.kind === 'explain') return { kind: 'explain', id: step.id, title: step.title, text: step.text };
  return step?.kind === 'predict' ? promptFor(step) : null;
}

function promptFor(step: BenchPredict): Prompt {
  const { id, question } = step;
  if (step.shape === 'choice') return { kind: 'choice', id, question, options: step.options };
  const scale = { unit: step.unit, least: step.least, most: step.most, step: step.step };
  if (step.shape === 'number') return { kind: 'number', id, question, ...scale };
  return { kind: 'curve', id, question, along: step.along, alongUnit: step.alongUnit, ...scale };
}

/** What is to be tried now; null while something is asked and once all is done. */
export function tryingNow(
  lesson: BenchLesson,
  run: BenchRun,
): { readonly step: TryStep; readonly tried: Tried } | null {
  const step = lesson.steps[run.step];
  const tried = run.tries.at(-1);
  return step?.kind === 'try' && tried ? { step, tried } : null;
}

/**
 * Locks an answer for good and goes on; null passes a question over.
 * @throws {RangeError} when nothing is asked
 * @throws {TypeError} when it cannot be answered so
 */
export function answerBench(lesson: BenchLesson, run: BenchRun, answer: Answer): BenchRun {
  const prompt = benchPrompt(lesson, run);
  if (!prompt) throw new RangeError(`answerBench: nothing is asked at step ${run.step}`);
  if (answer !== null && !fits(prompt, answer))
    throw new TypeError(`answerBench: ${prompt.id} cannot be answered with ${JSON.stringify(answer)}`);
  const locked = { id: prompt.id, answer, atS: run.passedS };
  const answers = prompt.kind === 'explain' ? run.answers : [...run.answers, locked];
  return entered(lesson, { ...run, answers, step: run.step + 1 });
}

/** The run after the bench moved on for a while: aims come about one after the other, each as long as it must hold. */
export function advanceBench(lesson: BenchLesson, run: BenchRun, seen: BenchSeen, passedS: number): BenchRun {
  const now = tryingNow(lesson, run);
  if (!now) return run;
  const { step, tried } = now;
  const atS = run.passedS + passedS;
  const aim = step.each[tried.met];
  const holds = aim?.all.every((range) => readsIn(seen, range)) ?? false;
  const sinceS = holds ? (tried.sinceS ?? atS) : null;
  const cameAbout = aim !== undefined && sinceS !== null && atS - sinceS >= aim.forS;
  const met = cameAbout ? tried.met + 1 : tried.met;
  const done = met >= step.each.length;
  const tries = [...run.tries.slice(0, -1), { ...tried, met, sinceS: cameAbout ? null : sinceS, done }];
  const next = { ...run, tries, passedS: atS };
  return done ? entered(lesson, { ...next, step: run.step + 1 }) : next;
}

/** Leaves a step that is tried, undone. */
export function passOver(lesson: BenchLesson, run: BenchRun): BenchRun {
  return tryingNow(lesson, run) ? entered(lesson, { ...run, step: run.step + 1 }) : run;
}

/** The run at a step it has just come to; what is asked at the end is for the debrief. */
function entered(lesson: BenchLesson, run: BenchRun): BenchRun {
  const step = lesson.steps[run.step];
  if (step?.kind === 'ask') return { ...run, step: lesson.steps.length };
  if (step?.kind !== 'try') return run;
  const tried: Tried = { id: step.id, met: 0, sinceS: null, fromS: run.passedS, done: false };
  return { ...run, tries: [...run.tries, tried] };
}

/** The gas of the bag as it was sketched, pressure and volume, Pa and m³; empty where nothing was. */
export function sketchOf(lesson: BenchLesson, run: BenchRun): readonly (readonly [number, number])[] {
  const step = lesson.steps.find((one) => one.kind === 'predict' && one.shape === 'curve');
  const answer = run.answers.find(({ id }) => id === step?.id)?.answer;
  if (step?.kind !== 'predict' || step.shape !== 'curve' || !Array.isArray(answer)) return [];
  return answer.map((litres, i) => [pressureAt(underIn('deep'), step.along[i]!), Number(litres) / 1e3] as const);
}
