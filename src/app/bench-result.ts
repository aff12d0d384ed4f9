import { triedUnder, type BenchLesson, type BenchResult, type BenchRun } from '../lesson/bench.ts';
import { hashOfText } from '../lesson/index.ts';
import { Store, type Result } from '../store/index.ts';
import { storeWords } from './store-words.ts';

/**
 * What is kept of a lesson at the bench that was gone through to its end. There are no marks: what was tried until it came about, and
 * what was predicted, stand in their place.
 * @param at day and time, ISO 8601
 */
export function benchResultOf(lesson: BenchLesson, run: BenchRun, came: BenchResult, at: string): Result {
  const { demands, predictions, verdict } = came;
  return {
    lessonId: lesson.id,
    at,
    under: triedUnder(lesson),
    // Seconds differ each time: the same hands again are another try, the same page after a reload is none.
    flight: hashOfText(JSON.stringify([run.answers, run.tries, run.passedS])),
    attempt: 1,
    marks: [],
    demands: { met: demands.filter(({ met }) => met).length, of: demands.length },
    predictions: { right: predictions.filter(({ right }) => right).length, of: predictions.length },
    habits: [],
    verdict,
    missed: null,
    word: '',
  };
}

/** Keeps a result, once. @returns what went wrong, as a sentence; empty where nothing did */
export async function keepBenchResult(result: Result): Promise<string> {
  const store = new Store();
  try {
    await store.addResult(result);
    return '';
  } catch (problem) {
    return `${storeWords(problem)} What came of this lesson is not kept.`;
  } finally {
    store.close();
  }
}
