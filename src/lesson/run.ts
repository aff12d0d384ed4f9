import type { Gauges, HandNeeded } from './lesson.ts';
import type { Option } from './predict.ts';
import type { Frame } from './watched.ts';

/** A lesson under way: plain data, JSON-safe. Which rows of the recording it has seen, and what it saw. */
export interface LessonRun {
  readonly lessonId: string;
  /** 1 for the first time: with more of them hints and gauges fade. */
  readonly attempt: number;
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
  /** Of a goal of several conditions, each in the lesson's order. */
  readonly each: readonly Met[];
  /** What was not kept, known once the phase is over. */
  readonly broken: readonly Broken[];
}

/** How far a condition is met: in its range since a row, and met on one. */
export interface Met {
  readonly sinceRow: number | null;
  readonly metRow: number | null;
}

/** Something that was to be kept and was not: its place in the step's list, and the row that shows it. */
export interface Broken {
  readonly index: number;
  readonly row: number;
}

/** An option's id, a number, item ids in order, or the numbers of a curve; null when the question was passed over. */
export type Answer = string | number | readonly string[] | readonly number[] | null;

/** A prediction that can no longer be changed. */
export interface LockedAnswer {
  readonly id: string;
  readonly answer: Answer;
  /** Row on which the run was frozen. */
  readonly atRow: number;
}

/** Something the run is frozen for until it is answered; what is only read or watched is answered with null. */
export type Prompt =
  | { readonly kind: 'explain'; readonly id: string; readonly title: string; readonly text: string }
  | {
      readonly kind: 'watch';
      readonly id: string;
      readonly title: string;
      readonly text: string;
      /** What the dive came to at its freezes; absent until somebody who has the rig adds them. */
      readonly frames?: readonly Frame[];
      /** Its line: seconds and metres, every second or so. */
      readonly line?: readonly (readonly [atS: number, depthM: number])[];
    }
  | { readonly kind: 'choice'; readonly id: string; readonly question: string; readonly options: readonly Option[] }
  | ({ readonly kind: 'number' | 'place'; readonly id: string; readonly question: string } & PromptScale)
  | ({
      readonly kind: 'curve';
      readonly id: string;
      readonly question: string;
      readonly along: readonly number[];
      readonly alongUnit: string;
    } & PromptScale)
  | { readonly kind: 'order'; readonly id: string; readonly question: string; readonly items: readonly Option[] };

export interface PromptScale {
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

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
  /** Empty where hints have faded. */
  readonly hint: string;
  readonly gauges: Gauges;
  /** Lead comes off and on at the surface. */
  readonly byHand: boolean;
  /** What the step is flown with besides gas, breath and fins. */
  readonly hands: readonly HandNeeded[];
  readonly bands: readonly LessonBand[];
  /** Rates in force, m/s, both positive; null for none. */
  readonly limits: { readonly upMps: number | null; readonly downMps: number | null };
  /** The run is frozen as long as there is one. */
  readonly prompt: Prompt | null;
  /** Which of the predictions before the next flight is asked; null where none is. */
  readonly asking: Asking | null;
  /** Of whom the question speaks; null where none is asked. */
  readonly about: AskedAbout | null;
  /** Flown steps of the lesson, as brackets along the surface. */
  readonly phases: readonly PhaseView[];
  /** Nothing is left to fly or to ask: the marks can be read. */
  readonly done: boolean;
}

/** The place of a prediction among those that are asked one after another. */
export interface Asking {
  readonly at: number;
  readonly of: number;
}

/** The diver of a question, as far as it places him: depth, metres, and speed, m/min, both positive down; null where it does not say. */
export interface AskedAbout {
  readonly atM: number | null;
  readonly speedMpmin: number | null;
}

export interface PhaseView {
  readonly id: string;
  readonly title: string;
  readonly state: 'ahead' | 'now' | 'met' | 'missed';
  readonly fromS: number | null;
  readonly toS: number | null;
}
