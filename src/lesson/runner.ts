import type { Recording } from '../dive/index.ts';
import { phaseAfter, phaseFrom } from './goal.ts';
import type { Lesson } from './lesson.ts';
import type { Answer, LessonRun, Prompt, PromptScale } from './run.ts';
import { nothingLeft } from './steps.ts';

/** A lesson at its beginning. @param attempt how often it was begun, this time included @throws {RangeError} when it has nothing to fly */
export function beginLesson(lesson: Lesson, attempt = 1): LessonRun {
  if (nothingLeft(lesson.steps, 0)) throw new RangeError(`beginLesson: ${lesson.id} has nothing to fly`);
  return entered(lesson, { lessonId: lesson.id, attempt, step: 0, nextRow: 0, phases: [], answers: [], ended: null });
}

/**
 * The run after all rows that are new, as far as the next prompt. Pure, and a function of rows alone: however many come at a
 * time, the run is the same. Returns `run` itself where there is nothing to do.
 */
export function advanceLesson(lesson: Lesson, run: LessonRun, recording: Recording): LessonRun {
  let now = run;
  while (now.ended === null && now.nextRow < recording.rows) {
    const step = lesson.steps[now.step];
    if (step?.kind !== 'fly') break;
    const row = now.nextRow;
    const { phase, end } = phaseAfter(step, now.phases[now.phases.length - 1]!, recording, row);
    const phases = [...now.phases.slice(0, -1), phase];
    if (end === null) now = { ...now, nextRow: row + 1, phases };
    else if (end === 'late') now = { ...now, phases, step: lesson.steps.length, ended: 'late' };
    // The row on which a place is reached is looked at again: it is the first of what follows.
    else now = entered(lesson, { ...now, phases, step: now.step + 1 });
  }
  return now;
}

/** What the run is frozen for; null while it flies and once it is over. */
export function promptOf(lesson: Lesson, run: LessonRun): Prompt | null {
  const step = run.ended === null ? lesson.steps[run.step] : undefined;
  if (!step || step.kind === 'fly' || step.kind === 'ask') return null;
  const { id } = step;
  if (step.kind === 'explain' || step.kind === 'watch')
    return { kind: step.kind, id, title: step.title, text: step.text };
  const { question } = step;
  if (step.shape === 'choice') return { kind: 'choice', id, question, options: step.options };
  if (step.shape === 'order') return { kind: 'order', id, question, items: step.items };
  const scale = { unit: step.unit, least: step.least, most: step.most, step: step.step };
  if (step.shape === 'curve')
    return { kind: 'curve', id, question, along: step.along, alongUnit: step.alongUnit, ...scale };
  return { kind: step.shape, id, question, ...scale };
}

/**
 * Locks an answer for good and goes on; null passes the question over. Right or wrong, the lesson goes on.
 * @throws {TypeError} when the prompt cannot be answered so
 * @throws {RangeError} when nothing is asked now
 */
export function answerPrompt(lesson: Lesson, run: LessonRun, answer: Answer): LessonRun {
  const prompt = promptOf(lesson, run);
  if (!prompt) throw new RangeError(`answerPrompt: nothing is asked at step ${run.step}`);
  if (answer !== null && !fits(prompt, answer))
    throw new TypeError(`answerPrompt: ${prompt.id} cannot be answered with ${JSON.stringify(answer)}`);
  const answers =
    prompt.kind === 'explain' || prompt.kind === 'watch'
      ? run.answers
      : [...run.answers, { id: prompt.id, answer, atRow: run.nextRow }];
  return entered(lesson, { ...run, answers, step: run.step + 1 });
}

/** Whether an answer is one that a prompt can have. */
export function fits(prompt: Prompt, answer: Exclude<Answer, null>): boolean {
  switch (prompt.kind) {
    case 'explain':
    case 'watch':
      return false;
    case 'choice':
      return prompt.options.some(({ id }) => id === answer);
    case 'number':
    case 'place':
      return isOn(prompt, answer);
    case 'curve':
      return (
        Array.isArray(answer) && answer.length === prompt.along.length && answer.every((value) => isOn(prompt, value))
      );
    case 'order':
      return (
        Array.isArray(answer) &&
        answer.length === prompt.items.length &&
        prompt.items.every(({ id }) => answer.some((one) => one === id))
      );
  }
}

/** Whether a value is a number on a scale. */
function isOn({ least, most }: PromptScale, value: unknown): boolean {
  return typeof value === 'number' && value >= least && value <= most;
}

/**
 * The run as it was when a flown step began, to fly it again: the dive has to go back to that row. What was predicted stays
 * locked. null where the step was never begun.
 */
export function retried(lesson: Lesson, run: LessonRun, id: string): LessonRun | null {
  const at = run.phases.findIndex((phase) => phase.id === id);
  const phase = run.phases[at];
  const step = lesson.steps.findIndex((one) => one.id === id);
  const flown = lesson.steps[step];
  if (!phase || flown?.kind !== 'fly') return null;
  const phases = [...run.phases.slice(0, at), phaseFrom(flown, phase.fromRow)];
  const asked = (later: string) => lesson.steps.findIndex((one) => one.id === later) < step;
  const answers = run.answers.filter((answer) => asked(answer.id));
  return { ...run, attempt: run.attempt + 1, step, nextRow: phase.fromRow, phases, answers, ended: null };
}

/** The run at a step it has just come to: a flown one begins a phase, and after the last nothing is left. */
function entered(lesson: Lesson, run: LessonRun): LessonRun {
  if (nothingLeft(lesson.steps, run.step)) return { ...run, step: lesson.steps.length, ended: 'flown' };
  const step = lesson.steps[run.step]!;
  if (step.kind === 'ask') return entered(lesson, { ...run, step: run.step + 1 });
  if (step.kind !== 'fly') return run;
  return { ...run, phases: [...run.phases, phaseFrom(step, run.nextRow)] };
}
