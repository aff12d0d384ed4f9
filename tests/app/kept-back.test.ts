import { describe, expect, test } from 'vitest';
import { backInHand } from '../../src/app/kept-back.ts';
import { LessonFlight } from '../../src/app/lesson-flight.ts';
import { Dive, replay, type Run } from '../../src/dive/index.ts';
import {
  advanceLesson,
  answerPrompt,
  beginLesson,
  flyLesson,
  judgeLesson,
  promptOf,
  viewLesson,
  type Answer,
  type LessonRun,
  type Prompt,
} from '../../src/lesson/index.ts';
import type { KeptDive } from '../../src/store/index.ts';
import { firstDive, firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { Chance } from '../reference/chance.ts';

const flown = flyLesson(firstDive, rig, 'steady', 4).dive.run();

/** Something that may be answered, another thing for another question. */
function answerTo(prompt: Prompt): Answer {
  if (prompt.kind === 'choice') return prompt.options.at(-1)!.id;
  if (prompt.kind === 'number') return prompt.least;
  return prompt.kind === 'order' ? prompt.items.map(({ id }) => id).reverse() : null;
}

/** The lesson as the page takes it through a dive, asked after each change of the hands, and what was answered. */
function taken(run: Run): { lesson: LessonRun; given: Answer[]; dive: Dive } {
  const given: Answer[] = [];
  const dive = new Dive(run.rig, run.start, run.changes[0]!.controls);
  let lesson = beginLesson(firstDive);
  let at = 0;
  for (;;) {
    lesson = advanceLesson(firstDive, lesson, dive.recording);
    for (let prompt = promptOf(firstDive, lesson); prompt; prompt = promptOf(firstDive, lesson)) {
      given.push(answerTo(prompt));
      lesson = advanceLesson(firstDive, answerPrompt(firstDive, lesson, given.at(-1)!), dive.recording);
    }
    if (dive.tick >= run.ticks) return { lesson, given, dive };
    while (run.changes[at + 1] && run.changes[at + 1]!.tick <= dive.tick) at++;
    dive.steer(run.changes[at]!.controls);
    dive.advance(Math.min(6, run.ticks - dive.tick));
  }
}

const kept = (run: Run, given: readonly Answer[], lessonId: string | null = 'first-dive'): KeptDive => ({
  id: 1,
  turn: 1,
  savedMs: 0,
  run,
  endHash: replay(run).hash(),
  name: 'First dive',
  setupId: lessonId ? '' : 'first-dive',
  setup: null,
  letGoM: null,
  lessonId,
  given,
  projector: false,
  beside: null,
});

const find = async (id: string) => (id === firstDive.id ? firstDive : null);
const learning = async () => ({ find, LessonFlight });

/** The run up to a tick. */
const upTo = (ticks: number): Run => ({
  ...flown,
  ticks,
  changes: flown.changes.filter(({ tick }, i) => i === 0 || tick < ticks),
});

describe('backInHand', () => {
  test('a lesson left at any moment comes back in the same phases, with the same answers, on the same hash', async () => {
    const chance = new Chance(9);
    for (let i = 0; i < 20; i++) {
      const run = upTo(chance.whole(1, flown.ticks));
      const { lesson, given, dive } = taken(run);
      const back = await backInHand(kept(run, given), learning);
      expect(back.same).toBe(true);
      expect(back.lesson?.given).toEqual(given);
      expect(back.lesson?.view()).toEqual(viewLesson(firstDive, lesson, dive.recording));
    }
  });

  test('a lesson left after its end comes back with the same marks and predictions', async () => {
    const { lesson, given, dive } = taken(flown);
    const back = await backInHand(kept(flown, given), learning);
    expect(lesson.ended).toBe('flown');
    expect(back.lesson!.debrief().result).toEqual(judgeLesson(firstDive, lesson, dive));
    expect(back.lesson!.debrief().predictions.length).toBeGreaterThan(0);
  });

  test('a lesson that is there no more, or takes other answers now, comes back as free practice', async () => {
    const run = upTo(2400);
    const gone = await backInHand(kept(run, [], 'other'), learning);
    const strange = await backInHand(kept(run, ['no such answer']), learning);
    for (const back of [gone, strange]) {
      expect(back.lesson).toBeNull();
      expect(back.flight.dive.hash()).toBe(replay(run).hash());
    }
  });

  test('free practice comes back with its ready setup, and without one that is not to be had', async () => {
    const run = upTo(1200);
    expect((await backInHand(kept(run, [], null), learning)).free).toMatchObject({ id: 'first-dive', rig: run.rig });
    const lost = { ...kept(run, [], null), setupId: 'no-such-setup' };
    expect((await backInHand(lost, learning)).free).toMatchObject({ id: '', setup: null });
  });
});
