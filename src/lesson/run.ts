import type { Option } from './lesson.ts';

/** A lesson under way: plain data, JSON-safe. Which rows of the recording it has seen, and what it saw. */
export interface LessonRun {
  readonly lessonId: string;
  /** Index in the lesson's steps of what is asked or flown now; the number of steps once nothing is left. */
  readonly step: number;
  /** Row of the recording that is looked at next. */
  readonly nextRow: number;
  readonly phases: readonly FlownPhase[];
  readonly answers: readonly LockedAnswer[];
  /** Flying is over; late: a phase was not reached in its time, and what came after it is not flown. */
  readonly ended: 'flown' | 'late' | null;
}

/** What is known of one flown step. Rows are those of the recording. */
export interface FlownPhase {
  readonly id: string;
  readonly fromRow: number;
  /** First row on which the goal's place was reached; null as long as it was not. */
  readonly reachedRow: number | null;
  /** Row after its last; null as long as it is under way. */
  readonly toRow: number | null;
  readonly met: boolean;
}

/** An option's id, a number, or item ids in order; null when the question was passed over. */
export type Answer = string | number | readonly string[] | null;

/** A prediction that can no longer be changed. */
export interface LockedAnswer {
  readonly id: string;
  readonly answer: Answer;
  /** Row on which the run was frozen. */
  readonly atRow: number;
}

/** Something the run is frozen for until it is answered. */
export type Prompt =
  | { readonly kind: 'explain'; readonly id: string; readonly title: string; readonly text: string }
  | { readonly kind: 'choice'; readonly id: string; readonly question: string; readonly options: readonly Option[] }
  | {
      readonly kind: 'number';
      readonly id: string;
      readonly question: string;
      readonly unit: string;
      readonly least: number;
      readonly most: number;
      readonly step: number;
    }
  | { readonly kind: 'order'; readonly id: string; readonly question: string; readonly items: readonly Option[] };

/** A place to be, on the time axis of the dive; the stage draws it as it is. */
export interface LessonBand {
  readonly fromS: number;
  readonly toS: number | null;
  readonly topM: number;
  readonly bottomM: number;
  readonly words: string;
}

/** All that a page shows of a lesson at one moment. */
export interface LessonView {
  /** With its limits: "Neutral: stay between 7 and 9 m for 45 s". */
  readonly title: string;
  /** "31 s so far"; empty where nothing is counted. */
  readonly progress: string;
  readonly hint: string;
  readonly bands: readonly LessonBand[];
  /** Rates in force, m/s, both positive; null for none. */
  readonly limits: { readonly upMps: number | null; readonly downMps: number | null };
  /** The run is frozen as long as there is one. */
  readonly prompt: Prompt | null;
  /** Flown steps of the lesson, as brackets along the surface. */
  readonly phases: readonly PhaseView[];
  /** Nothing is left to fly or to ask: the marks can be read. */
  readonly done: boolean;
}

export interface PhaseView {
  readonly id: string;
  readonly title: string;
  readonly state: 'ahead' | 'now' | 'met' | 'missed';
  readonly fromS: number | null;
  readonly toS: number | null;
}
