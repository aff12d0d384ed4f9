import type { ReportWord, Verdict } from '../lesson/index.ts';

/** Results that are kept at most; the oldest go. */
export const MOST_RESULTS = 1000;
/** Letters of an instructor's word at most; what is longer is cut. */
export const MOST_LETTERS = 2000;

/** What came of one flight of a lesson: plain data, and no name of anybody in it. */
export interface Result {
  /** That of a file of somebody's own follows from its words. */
  readonly lessonId: string;
  /** Day and time at which it was flown to its end, ISO 8601. */
  readonly at: string;
  /** Hash of setup, start, tasks and limits: only results with the same one may be compared. */
  readonly under: string;
  /** Hash of the dive's last state: the same flight is kept once. */
  readonly flight: string;
  /** 1 for a flight with all that the lesson shows; with more of them hints and gauges had faded. */
  readonly attempt: number;
  readonly marks: readonly ResultMark[];
  readonly demands: { readonly met: number; readonly of: number };
  /** Of those that were answered and those that were passed over. */
  readonly predictions: { readonly right: number; readonly of: number };
  /** Kinds of habits that were found, each once; those that are only asked after too. */
  readonly habits: readonly string[];
  readonly verdict: Verdict;
  /** What was not reached in its time, in words; null when everything was. */
  readonly missed: string | null;
  /** The instructor's own, about this flight; empty until there is one. */
  readonly word: string;
}

/** A mark of a result. */
export interface ResultMark {
  readonly id: string;
  /** 0–100. */
  readonly score: number;
  readonly word: ReportWord;
  /** Every criterion was met. */
  readonly ok: boolean;
}

/** A result with its number in the database. */
export interface KeptResult extends Result {
  readonly id: number;
}

const WORDS: readonly unknown[] = ['not yet', 'nearly', 'secure'] satisfies ReportWord[];
const VERDICTS: readonly unknown[] = ['pass', 'fail', 'error'] satisfies Verdict[];

/** Whether a record is a result as this version writes it. */
export function isResult(found: unknown): found is KeptResult {
  const one = recordOf(found);
  const { id, lessonId, at, under, flight, attempt, marks, demands, predictions } = one;
  return (
    isCount(id) &&
    [lessonId, at, under, flight, one.word].every(isText) &&
    isTextOrNull(one.missed) &&
    !Number.isNaN(Date.parse(String(at))) &&
    isCount(attempt) &&
    attempt > 0 &&
    isListOf(marks, isMark) &&
    isShare(recordOf(demands).met, recordOf(demands).of) &&
    isShare(recordOf(predictions).right, recordOf(predictions).of) &&
    isListOf(one.habits, isText) &&
    VERDICTS.includes(one.verdict)
  );
}

function isMark(found: unknown): boolean {
  const { id, score, word, ok } = recordOf(found);
  const isScore = typeof score === 'number' && score >= 0 && score <= 100;
  return isText(id) && isScore && WORDS.includes(word) && typeof ok === 'boolean';
}

const recordOf = (found: unknown): Record<string, unknown> =>
  typeof found === 'object' && found !== null ? (found as Record<string, unknown>) : {};
const isText = (value: unknown): value is string => typeof value === 'string';
const isTextOrNull = (value: unknown): boolean => value === null || isText(value);
const isCount = (value: unknown): value is number => typeof value === 'number' && Number.isInteger(value) && value >= 0;
const isShare = (part: unknown, of: unknown): boolean => isCount(part) && isCount(of) && part <= of;
const isListOf = (value: unknown, is: (one: unknown) => boolean): boolean => Array.isArray(value) && value.every(is);
