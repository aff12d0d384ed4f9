import type { Rig } from '../diver/index.ts';
import { ROWS_PER_S } from './goal.ts';
import { curveDigits, howFarOff } from './how-far-off.ts';
import type { Lesson } from './lesson.ts';
import type { PredictShape, PredictStep } from './predict.ts';
import type { PredictionOutcome } from './mark.ts';
import type { Answer, LessonRun } from './run.ts';
import { truthOf, type Truth } from './truth.ts';
import { plain } from './words.ts';

/** Every locked prediction beside what the model says for this very setup. */
export function predictionOutcomes(lesson: Lesson, rig: Rig, run: LessonRun): PredictionOutcome[] {
  return run.answers.flatMap(({ id, answer, atRow }) => {
    const step = lesson.steps.find((one): one is PredictStep => one.kind === 'predict' && one.id === id);
    if (!step) return [];
    return [outcomeOf(step, answer, truthOf(lesson, rig, step), atRow / ROWS_PER_S)];
  });
}

/** One locked answer beside what came. @param atS when it was locked */
export function outcomeOf(step: PredictShape, answer: Answer, truth: Truth, atS: number): PredictionOutcome {
  return {
    id: step.id,
    question: step.question,
    said: answer === null ? null : inWords(step, answer),
    came: inWords(step, truth),
    right: isRight(step, answer, truth),
    off: howFarOff(step, answer, truth),
    within: 'within' in step ? `${plain(step.within)} ${step.unit}` : null,
    why: step.why,
    atS,
  };
}

function isRight(step: PredictShape, answer: Answer, truth: Truth): boolean {
  if (answer === null) return false;
  if (step.shape === 'number' || step.shape === 'place')
    return Math.abs(Number(answer) - Number(truth)) <= step.within + 1e-9;
  if (step.shape === 'curve') {
    const [said, came] = [answer, truth] as [readonly number[], readonly number[]];
    return came.every((value, i) => Math.abs(Number(said[i]) - value) <= step.within + 1e-9);
  }
  if (step.shape === 'order') return String(answer) === String(truth);
  return answer === truth;
}

function inWords(step: PredictShape, value: Truth): string {
  if (step.shape === 'number' || step.shape === 'place') return `${Number(value).toFixed(1)} ${step.unit}`;
  if (step.shape === 'curve')
    return (value as readonly number[])
      .map((one, i) => `${one.toFixed(curveDigits(step.step))} ${step.unit} at ${step.along[i]} ${step.alongUnit}`)
      .join(', ');
  const options = step.shape === 'choice' ? step.options : step.items;
  const ids = typeof value === 'object' ? value.map(String) : [String(value)];
  return ids.map((one) => options.find(({ id }) => id === one)?.words ?? one).join(', ');
}
