import type { CoursePath, Demanded, HabitRates, Known, Lesson } from '../lesson/index.ts';

/** What the catalogue shows of a lesson. */
export type LessonCard = Pick<
  Lesson,
  'id' | 'title' | 'minutes' | 'objective' | 'caution' | 'phase' | 'opens' | 'values'
>;

/** What is asked for in the place of the lessons. */
export type LearnAsk =
  | { readonly do: 'tables' | 'template' | 'bench-template' | 'close-own' | 'next' | 'show-next' | 'hand-over' }
  | { readonly do: 'file'; readonly file: File }
  /** Chooses a path; null: all lessons, by their part of the course. */
  | { readonly do: 'path'; readonly path: CoursePath | null }
  /** Walks a path before a class, from its first step. */
  | { readonly do: 'walk'; readonly path: CoursePath };

/** A path as the list shows it. */
export interface PathCard {
  readonly id: CoursePath;
  readonly title: string;
  readonly about: string;
  /** Null where everybody takes his own time. */
  readonly minutes: number | null;
}

/** One station of the path that is chosen. */
export interface PathStop {
  readonly kind: 'lesson' | 'demonstration';
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly minutes: number;
}

/** A lesson file of somebody's own that is open. */
export interface OwnLesson {
  readonly fileName: string;
  readonly card: LessonCard;
  /** What its proof does not hold, a sentence each; null while it is tried. */
  readonly warnings: readonly string[] | null;
}

/** The tables of how marks and habits were tried. */
export interface TriedView {
  readonly date: string;
  readonly cells: readonly { readonly cell: string; readonly seeds: number }[];
  readonly demands: readonly Demanded[];
  /** Of kits that were flown once, when nothing was changed any more. */
  readonly unseen: Pick<TriedView, 'cells' | 'demands'>;
  readonly habits: readonly HabitRates[];
}

/** What the place of the lessons adds to the catalogue. */
export interface LearnView {
  readonly paths: readonly PathCard[];
  readonly path: CoursePath | null;
  /** Of the chosen path. */
  readonly stops: readonly PathStop[];
  /** The first stop that is not secure and may be begun; without a path, of self-study. */
  readonly next: PathStop | null;
  /** What is known of lessons from flights that were kept, by their ids. */
  readonly known: Readonly<Record<string, Known>>;
  readonly own: OwnLesson | null;
  /** Shown instead of the list. */
  readonly tried: TriedView | null;
  /** A path that is walked before a class: what comes after the present stop; empty after the last. Null: none is walked. */
  readonly walk: { readonly next: string } | null;
}
