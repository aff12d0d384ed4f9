import type { Lesson } from './lesson.ts';
import type { LessonResult, PredictionOutcome, StepDemand } from './mark.ts';
import { ROWS_PER_S } from './rows.ts';
import type { LessonRun } from './run.ts';
import { flySteps } from './steps.ts';
import { plain } from './words.ts';

/** What each flown step that was begun asked for beside the marks, met or not. */
export function stepDemands(lesson: Lesson, run: LessonRun): StepDemand[] {
  return flySteps(lesson).flatMap((step) => {
    const phase = run.phases.find(({ id }) => id === step.id);
    if (!phase) return [];
    const { id, title } = step;
    const atS = (row: number | null) => (row === null ? null : row / ROWS_PER_S);
    const asked =
      step.goal.kind === 'meet' ? [{ id, title, says: step.goal.says, met: phase.met, atS: atS(phase.toRow) }] : [];
    const kept = step.keep.map(({ says }, index) => {
      const broken = phase.broken.find((one) => one.index === index);
      return { id, title, says, met: phase.toRow !== null && !broken, atS: atS(broken?.row ?? null) };
    });
    return [...asked, ...kept];
  });
}

/** How many predictions that were answered are right, where so many must be; null where none must, or nobody answered. */
export function predictionDemand(lesson: Lesson, outcomes: readonly PredictionOutcome[]): StepDemand | null {
  const { rightAtLeast } = lesson;
  const answered = outcomes.filter(({ said }) => said !== null);
  if (rightAtLeast === null || answered.length === 0) return null;
  const right = answered.filter((one) => one.right).length;
  const says = `${plain(rightAtLeast)} predictions right, came to ${right} of ${answered.length}`;
  return { id: 'predictions', title: 'Predictions', says, met: right >= rightAtLeast, atS: null };
}

/** A result with what was asked of predictions: who passed without it does not with it unmet. */
export function withPredictions(result: LessonResult, demand: StepDemand | null): LessonResult {
  if (!demand) return result;
  const verdict = result.verdict === 'pass' && !demand.met ? 'fail' : result.verdict;
  return { ...result, verdict, demands: [...result.demands, demand] };
}
