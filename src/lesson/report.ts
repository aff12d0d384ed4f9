import type { Mark, ReportWord } from './mark.ts';
import { wordOf } from './mark-sum.ts';

/** How many flights the word of a report looks back on: one mark alone scatters by ten points. */
const LAST = 3;

/** What is reported of a mark that was flown several times. */
export interface Report {
  readonly word: ReportWord;
  /** Median of the last three, 0–100; of two their mean. */
  readonly score: number;
  /** How many flights it rests on. */
  readonly of: number;
}

/** The report of a mark from all its flights, the oldest first; null before the first. */
export function reportOf(flights: readonly Pick<Mark, 'score'>[]): Report | null {
  const last = flights.slice(-LAST).map(({ score }) => score);
  if (last.length === 0) return null;
  const sorted = [...last].sort((a, b) => a - b);
  const middle = (sorted.length - 1) / 2;
  const score = (sorted[Math.floor(middle)]! + sorted[Math.ceil(middle)]!) / 2;
  return { word: wordOf(score), score, of: last.length };
}
