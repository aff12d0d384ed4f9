import { LESSONS, nextExercise, reportOf, type MarkId } from '../lesson/index.ts';
import type { Debrief, DebriefKnown } from '../panels/index.ts';
import type { KeptResult } from '../store/index.ts';
import type { LessonFlight } from './lesson-flight.ts';

type Reports = DebriefKnown['reports'];

/**
 * What earlier flights add to a debrief: reports over the last flights under the same conditions, those flights, and what to fly next.
 * @param results all that are kept, the oldest first
 * @param all whether the instructor has opened every lesson
 * @param kept this flight's own among them; null where it is not kept
 */
export function knownOf(
  flown: LessonFlight,
  debrief: Debrief,
  results: readonly KeptResult[],
  kept: KeptResult | null,
  words: string,
  all = false,
): DebriefKnown {
  const ofLesson = results.filter((one) => one.lessonId === flown.lesson.id);
  const same = ofLesson.filter(({ under }) => under === flown.under);
  // What a simulated diver flew is reported on nobody.
  const reports = reportsOf(flown.by !== null ? [] : kept ? same : [{ marks: debrief.result.marks }]);
  const earlier = same.filter(({ id }) => id !== kept?.id).reverse();
  return {
    reports,
    next: nextOf(flown, debrief, reports, results, all),
    earlier: earlier.map(({ at, marks, predictions, verdict, word }) => ({
      at,
      marks,
      right: predictions.right,
      asked: predictions.of,
      passed: verdict === 'pass',
      word,
    })),
    others: ofLesson.length - same.length,
    id: kept?.id ?? null,
    word: kept?.word ?? '',
    words,
  };
}

function reportsOf(flights: readonly Pick<KeptResult, 'marks'>[]): Reports {
  const ids = [...new Set(flights.flatMap(({ marks }) => marks.map(({ id }) => id)))];
  const all = ids.map((id) => [id, reportOf(flights.flatMap(({ marks }) => marks.filter((one) => one.id === id)))]);
  return Object.fromEntries(all) as Partial<Record<MarkId, NonNullable<ReturnType<typeof reportOf>>>>;
}

function nextOf(flown: LessonFlight, debrief: Debrief, reports: Reports, results: readonly KeptResult[], all: boolean) {
  const { lesson } = flown;
  if (flown.by !== null) {
    const reason = 'A simulated diver flew this: now you.';
    return { lessonId: lesson.id, title: lesson.title, again: true, reason };
  }
  const { result, predictions } = debrief;
  const passed = new Set(results.filter(({ verdict }) => verdict === 'pass').map(({ lessonId }) => lessonId));
  // Who has flown a lesson of the instructor's was let in.
  const opened = new Set([
    lesson.id,
    ...results.map(({ lessonId }) => lessonId),
    ...(all ? LESSONS.map(({ id }) => id) : []),
  ]);
  return nextExercise({ lesson, result, reports, predictions, passed, opened }, LESSONS);
}
