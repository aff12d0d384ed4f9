import type { CoursePath, Lesson } from './lesson.ts';

/** One station of a path: a lesson of the catalogue, or a demonstration of the program. */
export type PathStep =
  | { readonly kind: 'lesson'; readonly id: string }
  | { readonly kind: 'demonstration'; readonly id: string; readonly minutes: number };

/** A way through lessons and demonstrations, in its order. */
export interface LessonPath {
  readonly id: CoursePath;
  readonly title: string;
  /** For whom it is, as one sentence. */
  readonly about: string;
  /** Time that there is for it; null where everybody takes his own. */
  readonly minutes: number | null;
  readonly steps: readonly PathStep[];
}

/** What a path has to know of a lesson. */
type Timed = Pick<Lesson, 'id' | 'minutes'>;

const shown = (id: string, minutes: number): PathStep => ({ kind: 'demonstration', id, minutes });
const learnt = (id: string): PathStep => ({ kind: 'lesson', id });

/** The paths of a catalogue; self-study goes through all of it. @source practice: minutes of demonstrations as they were walked, with a class that answers */
export function pathsThrough(lessons: readonly Timed[]): readonly LessonPath[] {
  return [
    {
      id: 'demonstration',
      title: 'Ten-minute demonstration',
      about: 'For a class: neutral is a hilltop, what two kilograms cost, and a descent that runs away.',
      minutes: 10,
      steps: [shown('hilltop', 3), shown('two-kilograms', 3), shown('runaway-descent', 4)],
    },
    {
      id: 'theory',
      title: 'Theory hour',
      about:
        'For a class: it begins at the bench, without a diver. Then it predicts, a simulated diver flies, and both are compared.',
      minutes: 60,
      steps: [
        learnt('lump-and-tray'),
        learnt('positive-negative-neutral'),
        learnt('hilltop'),
        learnt('one-breath'),
        learnt('surface-check'),
        learnt('two-and-six-kilograms'),
        learnt('descent'),
        shown('runaway-descent', 4),
      ],
    },
    {
      id: 'self-study',
      title: 'Self-study',
      about: 'Alone, from the first dive on: predict, fly, and see what came of it.',
      minutes: null,
      steps: lessons.map(({ id }) => learnt(id)),
    },
  ];
}

/** Minutes of a path: those of its lessons and demonstrations. */
export function minutesOf({ steps }: LessonPath, lessons: readonly Timed[]): number {
  return steps.reduce(
    (sum, step) =>
      sum + (step.kind === 'lesson' ? (lessons.find(({ id }) => id === step.id)?.minutes ?? 0) : step.minutes),
    0,
  );
}
