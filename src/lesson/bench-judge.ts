import type { BenchLesson, BenchPredict, TryStep } from './bench-lesson.ts';
import { benchDone, type BenchRun } from './bench-runner.ts';
import type { PredictionOutcome, StepDemand, Verdict } from './mark.ts';
import { outcomeOf } from './outcomes.ts';
import type { Answer } from './run.ts';
import { benchTruth } from './truth-bench.ts';
import type { Truth } from './truth.ts';
import { plain } from './words.ts';

/** What came of a lesson at the bench. */
export interface BenchResult {
  readonly verdict: Verdict;
  readonly demands: readonly StepDemand[];
  readonly predictions: readonly PredictionOutcome[];
}

/** Passed when everything was tried until it came about, and enough was predicted right. */
export function judgeBench(lesson: BenchLesson, run: BenchRun): BenchResult {
  const predictions = benchOutcomes(lesson, run);
  const steps = lesson.steps.filter((step): step is TryStep => step.kind === 'try');
  const tried = steps.map(({ id, title, each }): StepDemand => {
    const found = run.tries.find((one) => one.id === id);
    const says = each.map((aim) => aim.says).join(', then ');
    return { id, title, says, met: found?.done ?? false, atS: null };
  });
  const demands = [...tried, ...rightDemand(lesson, predictions)];
  const good = benchDone(lesson, run) && demands.every(({ met }) => met);
  return { verdict: good ? 'pass' : 'fail', demands, predictions };
}

/** So many predictions right, where so many must be; what was passed over is not. */
function rightDemand({ rightAtLeast }: BenchLesson, predictions: readonly PredictionOutcome[]): StepDemand[] {
  if (rightAtLeast === null) return [];
  const right = predictions.filter((one) => one.right).length;
  const says = `${plain(rightAtLeast)} predictions right, came to ${right} of ${predictions.length}`;
  return [{ id: 'predictions', title: 'Predictions', says, met: right >= rightAtLeast, atS: null }];
}

/** Every locked prediction beside what the closed forms say. */
export function benchOutcomes(lesson: BenchLesson, run: BenchRun): PredictionOutcome[] {
  return run.answers.flatMap(({ id, answer, atS }) => {
    const step = lesson.steps.find((one): one is BenchPredict => one.kind === 'predict' && one.id === id);
    return step ? [outcome(step, answer, benchTruth(lesson, step), atS)] : [];
  });
}

function outcome(step: BenchPredict, answer: Answer, truth: Truth, atS: number): PredictionOutcome {
  if (step.shape !== 'curve') return outcomeOf(step, answer, truth, atS);
  const came = truth as readonly number[];
  const said = answer as readonly number[] | null;
  const right = said !== null && came.every((v, i) => Math.abs(said[i]! - v) <= step.withinShare * v);
  const plainly = outcomeOf({ ...step, within: 0 }, answer, truth, atS);
  return { ...plainly, right, within: `${plain(step.withinShare * 100)} %` };
}
