import type { Debrief } from '../panels/index.ts';
import { Store, type Result } from '../store/index.ts';
import type { LessonFlight } from './lesson-flight.ts';

/** Longer than this no lesson waits for what is kept, milliseconds: then it is flown as the first time. */
const PATIENCE_MS = 600;

/** Which flight of a lesson is next: one more than the last one that is kept, by which its hints and gauges fade. */
export async function nextAttempt(lessonId: string): Promise<number> {
  const store = new Store();
  const late = new Promise<never[]>((resolve) => setTimeout(() => resolve([]), PATIENCE_MS));
  try {
    const flown = (await Promise.race([store.results(), late])).filter((one) => one.lessonId === lessonId);
    return (flown.at(-1)?.attempt ?? 0) + 1;
  } catch {
    return 1;
  } finally {
    store.close();
  }
}

/**
 * What is kept of a flight that was flown to its end.
 * @param at day and time, ISO 8601
 */
export function resultOf(flown: LessonFlight, { result, predictions }: Debrief, at: string): Result {
  const { demands, habits, marks, verdict, missed } = result;
  const answered = predictions.filter(({ right }) => right);
  return {
    lessonId: flown.lesson.id,
    at,
    under: flown.under,
    flight: flown.flight.dive.hash(),
    attempt: flown.attempt,
    marks: marks.map(({ id, score, word, ok }) => ({ id, score, word, ok })),
    demands: { met: demands.filter(({ met }) => met).length, of: demands.length },
    predictions: { right: answered.length, of: predictions.length },
    habits: [...new Set(habits.map(({ id }) => id))],
    verdict,
    missed,
    word: '',
  };
}
