import type { HabitId } from './habit-kinds.ts';
import type { MarkId } from './lesson.ts';

export type ReportWord = 'not yet' | 'nearly' | 'secure';
/** error: there was nothing to judge. */
export type Verdict = 'pass' | 'fail' | 'error';

/** A mark with everything it came from. Points lost and the score add up to 100. */
export interface Mark {
  readonly id: MarkId;
  /** 0–100. Shown as a word; the number is for whoever asks. */
  readonly score: number;
  readonly word: ReportWord;
  /** Every success criterion below is met. */
  readonly ok: boolean;
  readonly criteria: readonly Criterion[];
  readonly parts: readonly MarkPart[];
}

/** One demand of the task, met or not. */
export interface Criterion {
  readonly id: string;
  /** "at most 18 m/min on the way down". */
  readonly demand: string;
  readonly value: number;
  readonly unit: string;
  readonly met: boolean;
  /** Seconds since the start of the dive at which the evidence is plainest; null where there is no such moment. */
  readonly atS: number | null;
}

/** One thing that took points, or could have. */
export interface MarkPart {
  readonly id: string;
  /** "distance from the depth, on average". */
  readonly label: string;
  /** What was measured. */
  readonly raw: number;
  readonly unit: string;
  /** Full credit at `good`, none at `bad`, straight between; null for a cap or floor. */
  readonly good: number | null;
  readonly bad: number | null;
  /** Below 0 where a floor gave points back. */
  readonly pointsLost: number;
  readonly atS: number | null;
  /** In words that a diver understands. */
  readonly reason: string;
}

/** Something that caps a mark or that the debrief opens. */
export interface Habit {
  readonly id: HabitId;
  readonly fromS: number;
  readonly toS: number;
  /** A statement, or where its detector is not sure enough for that, the question. */
  readonly words: string;
  readonly states: boolean;
  readonly question: string;
}

/** A locked prediction beside what the model says. */
export interface PredictionOutcome {
  readonly id: string;
  readonly question: string;
  /** In words; null when the question was passed over. */
  readonly said: string | null;
  readonly came: string;
  readonly right: boolean;
  /** How far it came from what was said, in words; null where there is no such thing, or nothing of it. */
  readonly off: string | null;
  /** So close counts as right; null where only the same does. */
  readonly within: string | null;
  readonly why: string;
  /** Seconds since the start of the dive at which it was locked. */
  readonly atS: number;
}

/** Something that a flown step, or the lesson, asked for beside the marks. */
export interface StepDemand {
  /** Id of the step. */
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly met: boolean;
  readonly atS: number | null;
}

/** What came of a lesson. */
export interface LessonResult {
  readonly verdict: Verdict;
  readonly marks: readonly Mark[];
  readonly demands: readonly StepDemand[];
  readonly habits: readonly Habit[];
  /** What was not reached in its time, in words; null when everything was. */
  readonly missed: string | null;
}
