import type { FlyStep, Lesson, Step } from './lesson.ts';
import type { LessonRun } from './run.ts';

/** The steps that are flown, in order. */
export function flySteps(lesson: Lesson): FlyStep[] {
  return lesson.steps.filter((step): step is FlyStep => step.kind === 'fly');
}

/** Depth that a flown step ends at, metres: 0 at the surface. */
export function goalDepthM(step: FlyStep): number {
  const { goal } = step;
  return goal.kind === 'float' ? 0 : goal.kind === 'travel' ? goal.toM : goal.kind === 'hold' ? goal.atM : goal.aimM;
}

/** Depth that a flown step begins at, metres: where the one before it ends, or where the lesson starts. */
export function fromDepthM(lesson: Lesson, id: string): number {
  const flown = flySteps(lesson);
  const before = flown[flown.findIndex((step) => step.id === id) - 1];
  return before ? goalDepthM(before) : lesson.start.place === 'afloat' ? 0 : lesson.start.depthM;
}

/** Whether nothing is left to fly from this step on. */
export function nothingLeft(steps: readonly Step[], from: number): boolean {
  return !steps.slice(from).some((step) => step.kind === 'fly');
}

/**
 * The debrief question; empty when the lesson has none.
 * @param watched somebody else flew: a question about one's own presses would ask about nothing
 */
export function debriefQuestion(lesson: Lesson, watched: boolean): string {
  for (const step of lesson.steps) if (step.kind === 'ask') return (watched && step.watched) || step.question;
  return '';
}

/** Flown steps that were begun, each with the row it began on: where what goes wrong in them is reckoned from. */
export function begunSteps(lesson: Lesson, run: LessonRun): (FlyStep & { readonly fromRow: number })[] {
  return run.phases.flatMap(({ id, fromRow }) => {
    const step = lesson.steps.find((one): one is FlyStep => one.kind === 'fly' && one.id === id);
    return step ? [{ ...step, fromRow }] : [];
  });
}
