// @vitest-environment happy-dom
import 'fake-indexeddb/auto';
import { afterEach, expect, test } from 'vitest';
import { LessonAtBench } from '../../src/app/bench-lesson.ts';
import { BENCH_LESSONS } from '../../src/lesson/index.ts';
import { Store } from '../../src/store/index.ts';

afterEach(() => sessionStorage.clear());

const LESSON = BENCH_LESSONS.find(({ id }) => id === 'two-waters')!;

/** Goes to the end of a lesson and says what is kept of it by then. */
async function keptOf(lesson: LessonAtBench) {
  while (!lesson.done) lesson.next();
  const store = new Store();
  try {
    // Results are written in turn: a read after the last write sees it.
    await new Promise((done) => setTimeout(done, 50));
    return (await store.results()).filter(({ lessonId }) => lessonId === LESSON.id).length;
  } finally {
    store.close();
  }
}

/** Reads and passes over until something is to be tried. */
function toTrying(lesson: LessonAtBench): void {
  for (let i = 0; i < 9 && !lesson.view(null).lesson?.trying; i++) lesson.next();
}

test('LessonAtBench that was shown to a class and then reloaded is nobody’s result; tried by somebody it is kept, once', async () => {
  const shown = new LessonAtBench(window, LESSON, false);
  toTrying(shown);
  shown.show();
  const reloaded = new LessonAtBench(window, LESSON, true);
  expect(reloaded.view(null).lesson?.trying).not.toBeNull();
  expect(await keptOf(reloaded)).toBe(0);

  const tried = new LessonAtBench(window, LESSON, false);
  toTrying(tried);
  expect(await keptOf(new LessonAtBench(window, LESSON, true))).toBe(1);
  expect(await keptOf(new LessonAtBench(window, LESSON, true))).toBe(1);
});
