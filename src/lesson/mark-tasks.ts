import type { AscentTask } from './ascent-terms.ts';
import type { HoldGoal, Lesson, MarkTask } from './lesson.ts';
import type { LessonRun } from './run.ts';
import { flySteps } from './steps.ts';

/** Goal of a hold and the row on which it was reached. @throws {RangeError} when the lesson has no such hold */
export function holdOf(
  lesson: Lesson,
  run: LessonRun,
  id: string,
): { readonly goal: HoldGoal; readonly reachedRow: number | null } {
  const step = flySteps(lesson).find((flown) => flown.id === id);
  if (step?.goal.kind !== 'hold') throw new RangeError(`holdOf: ${lesson.id} has no hold called ${id}`);
  return { goal: step.goal, reachedRow: run.phases.find((phase) => phase.id === id)?.reachedRow ?? null };
}

/** Rows and limits of an ascent whose stop was reached. */
export function ascentTaskOf(
  lesson: Lesson,
  run: LessonRun,
  { travel, surface: last, fastAscentIsThePoint }: Extract<MarkTask, { mark: 'ascent' }>,
  stop: HoldGoal,
  reachedRow: number,
): AscentTask {
  const fromRow = run.phases.find(({ id }) => id === travel)?.fromRow ?? reachedRow;
  const surface = flySteps(lesson).find(({ id }) => id === last);
  const surfaceWithinS = surface?.goal.kind === 'float' ? surface.goal.withinS : 0;
  return { fromRow, stop, reachedRow, surfaceWithinS, fastAscentIsThePoint };
}
