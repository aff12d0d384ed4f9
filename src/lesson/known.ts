import type { ReportWord, Verdict } from './mark.ts';
import { reportOf } from './report.ts';

/** What is looked at of a flight of a lesson that was kept. */
export interface KnownFlight {
  readonly lessonId: string;
  /** Only flights of the same setup, start and limits are put together. */
  readonly under: string;
  readonly verdict: Verdict;
  readonly marks: readonly { readonly id: string; readonly score: number }[];
  readonly predictions: { readonly right: number; readonly of: number };
}

/** What is known of a lesson: never a decimal. */
export interface Known {
  readonly word: ReportWord;
  /** How many flights the word rests on, three at most. */
  readonly of: number;
  /** Of the last flight. */
  readonly predictions: { readonly right: number; readonly of: number };
}

const RANKS: readonly ReportWord[] = ['not yet', 'nearly', 'secure'];
const LAST = 3;

/**
 * What is known of a lesson from its flights, the oldest first; null before the first. The weakest mark gives the word; a lesson
 * without marks is secure where each of the last three was passed, and nearly where one was. Secure wants the last one passed.
 */
export function knownOf(flights: readonly KnownFlight[]): Known | null {
  const last = flights[flights.length - 1];
  if (!last) return null;
  const same = flights.filter(({ under }) => under === last.under).slice(-LAST);
  const words = [byVerdict(same), ...byMarks(same, last)];
  const word = RANKS[Math.min(...words.map((one) => RANKS.indexOf(one)))] ?? 'not yet';
  return { word, of: same.length, predictions: last.predictions };
}

function byVerdict(flights: readonly KnownFlight[]): ReportWord {
  const passed = flights.filter(({ verdict }) => verdict === 'pass').length;
  if (passed === 0) return 'not yet';
  const marked = flights.some(({ marks }) => marks.length > 0);
  const lastPassed = flights[flights.length - 1]?.verdict === 'pass';
  return lastPassed && (marked || passed === flights.length) ? 'secure' : 'nearly';
}

function byMarks(flights: readonly KnownFlight[], { marks }: KnownFlight): ReportWord[] {
  return marks.map(({ id }) => {
    const scores = flights.flatMap((one) => one.marks.filter((mark) => mark.id === id));
    return reportOf(scores)?.word ?? 'not yet';
  });
}

/**
 * The next lesson of a way: the first that is not yet known, of those that may be begun; once there is none the first that is only nearly
 * secure, for one good flight is no reason to stand still. null once all are secure.
 */
export function nextOf<T extends { readonly id: string }>(
  way: readonly T[],
  knownOfLesson: (id: string) => Known | null,
  mayBegin: (id: string) => boolean,
): T | null {
  const open = way.filter(({ id }) => mayBegin(id) && knownOfLesson(id)?.word !== 'secure');
  return open.find(({ id }) => knownOfLesson(id)?.word !== 'nearly') ?? open[0] ?? null;
}
