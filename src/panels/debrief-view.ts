import type {
  Exercise,
  Lesson,
  LessonResult,
  LimitInForce,
  LineEvidence,
  Mark,
  MarkId,
  PredictionOutcome,
  Report,
  ReportWord,
} from '../lesson/index.ts';

/** What came of a lesson, and what is said about it. */
export interface Debrief {
  readonly lesson: Pick<Lesson, 'id' | 'title' | 'waterAdds'>;
  readonly result: LessonResult;
  readonly predictions: readonly PredictionOutcome[];
  readonly question: string;
  /** Moments with a numbered ring on the line, seconds. */
  readonly moments: readonly number[];
  /** Where on the line marks found what they say. */
  readonly line: LineEvidence;
  /** What the marks ask for, with its reasons. */
  readonly limits: readonly LimitInForce[];
  /** Which flight of the lesson it was, as its hints and gauges had it. */
  readonly attempt: number;
  /** What the simulated diver does who flew it; empty where a person did. */
  readonly flownBy: string;
  /** null until what is kept was read. */
  readonly known: DebriefKnown | null;
  readonly compare: CompareView;
}

/** What earlier flights add. */
export interface DebriefKnown {
  readonly reports: Readonly<Partial<Record<MarkId, Report>>>;
  readonly next: Exercise | null;
  /** Earlier flights under the same conditions, the newest first. */
  readonly earlier: readonly EarlierFlight[];
  /** Flights of this lesson in another kit or with other tasks: not compared. */
  readonly others: number;
  /** Number of this flight's result; null where it is not kept. */
  readonly id: number | null;
  /** The instructor's word about it. */
  readonly word: string;
  /** What became of the last word that was written, or why nothing is kept. */
  readonly words: string;
}

/** An earlier flight, as a line shows it. */
export interface EarlierFlight {
  readonly at: string;
  readonly marks: readonly { readonly id: string; readonly word: ReportWord }[];
  readonly right: number;
  readonly asked: number;
  readonly passed: boolean;
  readonly word: string;
}

/** Another flight of the lesson beside this one. */
export interface CompareView {
  readonly choices: readonly CompareChoice[];
  /** Id of what was chosen; empty: nobody. */
  readonly chosen: string;
  /** Short, for the head of a column. */
  readonly name: string;
  /** Who that is, or what went wrong. */
  readonly says: string;
  readonly marks: readonly Mark[] | null;
}

export interface CompareChoice {
  readonly id: string;
  readonly name: string;
  readonly sort: 'pilot' | 'flight';
}

/** What is wished of a debrief. */
export type DebriefAsk =
  | { readonly do: 'word'; readonly word: string }
  /** Beside another flight; empty: nobody. */
  | { readonly do: 'compare'; readonly with: string };
