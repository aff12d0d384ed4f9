import type { Page } from 'playwright';
import { rigOf } from '../../src/diver/index.ts';
import { CONTROL_NAMES, columnsOf } from '../../src/dive/index.ts';
import {
  LESSONS,
  advanceLesson,
  answerPrompt,
  beginLesson,
  flyLesson,
  lessonSetup,
  promptOf,
  type Answer,
  type Lesson,
} from '../../src/lesson/index.ts';
import type { PilotName } from '../../src/pilot/index.ts';
import { readySetup } from '../../src/app/setups.ts';

/** The records of a lesson that was flown to its end, as the program keeps them, in the hand when the page was left. */
async function recordsOf(lesson: Lesson, by: PilotName, attempt: number) {
  const rig = rigOf(lessonSetup(lesson, await readySetup(lesson.setup.ready)));
  const { dive } = flyLesson(lesson, rig, by, attempt);
  const { start, changes, ticks, locked } = dive.run();
  const controls = CONTROL_NAMES.map((name) => changes[0]!.controls[name]);
  const given: Answer[] = [];
  let run = beginLesson(lesson);
  for (;;) {
    run = advanceLesson(lesson, run, dive.recording);
    const prompt = promptOf(lesson, run);
    if (!prompt) break;
    const answer = answerOf(prompt);
    run = answerPrompt(lesson, run, answer);
    given.push(answer);
  }
  const line = { name: lesson.title, setupId: '', lessonId: lesson.id, given, attempt, projector: false };
  const savedMs = Date.now();
  return {
    dives: { ...line, shape: 3, inHand: true, ticks, endHash: dive.hash(), savedMs, begunMs: savedMs, turn: 1 },
    starts: { rig, start, locked, controls, setup: null, letGoM: null },
    pieces: { piece: 0, ...columnsOf({ start, changes }) },
  };
}

/** The first that can be answered. */
function answerOf(prompt: NonNullable<ReturnType<typeof promptOf>>): Answer {
  if (prompt.kind === 'choice') return prompt.options[0]!.id;
  if (prompt.kind === 'order') return prompt.items.map(({ id }) => id);
  if (prompt.kind === 'curve') return prompt.along.map(() => prompt.least);
  return prompt.kind === 'number' || prompt.kind === 'place' ? prompt.least : null;
}

/**
 * Puts a flown lesson into the database of a page: its next visit comes back to the debrief.
 * @param attempt which flight of the lesson it is; the diver flies each of them otherwise
 */
export async function keepFlight(page: Page, lessonId: string, by: PilotName, attempt: number): Promise<void> {
  const records = await recordsOf(
    LESSONS.find(({ id }) => id === lessonId)!,
    by,
    attempt,
  );
  await page.evaluate(
    ({ dives, starts, pieces }) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('midwater');
        opening.onerror = () => reject(new Error('no database'));
        opening.onsuccess = () => {
          const db = opening.result;
          const all = db.transaction(['dives', 'starts', 'pieces'], 'readwrite');
          const adding = all.objectStore('dives').add(dives);
          adding.onsuccess = () => {
            const id = adding.result;
            all.objectStore('starts').put({ id, ...starts });
            all.objectStore('pieces').put({ id, ...pieces });
          };
          all.oncomplete = () => (db.close(), resolve());
          all.onerror = () => reject(new Error('not put'));
        };
      }),
    records,
  );
}
