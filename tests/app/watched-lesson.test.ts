import { describe, expect, test } from 'vitest';
import { LessonFlight } from '../../src/app/lesson-flight.ts';
import { flyLesson, type Lesson } from '../../src/lesson/index.ts';
import type { Act } from '../../src/panels/index.ts';
import { firstDive, firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';

const NOBODY = new Set<never>();

/** Lets time pass as the page does, until something is asked or all is flown. */
function fly(flown: LessonFlight): void {
  const stands = () => flown.view().prompt !== null || flown.view().done;
  for (let s = 0; s < 900 && !stands(); s++)
    flown.flight.run(
      120,
      () => NOBODY,
      () => flown.advance(),
    );
}

describe('a lesson that a simulated diver flies in the page', () => {
  test('is the same flight to the bit as without a page, and asks nothing', async () => {
    const flown = await LessonFlight.begin(firstDive, { by: 'latecomer', asked: false });
    expect(flown.view().prompt).toBeNull();
    fly(flown);
    expect(flown.view().done).toBe(true);
    expect(flown.flight.dive.hash()).toBe(flyLesson(firstDive, rig, 'latecomer', 1).dive.hash());
    expect(flown.by).toBe('latecomer');
    expect(flown.debrief().predictions).toEqual([]);
  });

  test('is the same flight whatever somebody presses meanwhile, on any tick', async () => {
    const flown = await LessonFlight.begin(firstDive, { by: 'steady', asked: false });
    const { flight } = flown;
    for (let s = 0; s < 900 && !flown.view().done; s++)
      flight.run(
        120,
        () => new Set<Act>(flight.dive.tick % 17 < 5 ? ['add', 'kick-up'] : []),
        () => flown.advance(),
      );
    expect(flown.view().done).toBe(true);
    expect(flight.dive.hash()).toBe(flyLesson(firstDive, rig, 'steady', 1).dive.hash());
    expect(flight.dive.changes.every(({ tick }) => tick % 6 === 0)).toBe(true);
  });

  test('asks a class what the lesson asks; nobody’s answers are the pilot’s, and the flight is the same', async () => {
    const flown = await LessonFlight.begin(firstDive, { by: 'steady', asked: true });
    let asked = 0;
    for (let i = 0; i < 20 && !flown.view().done; i++) {
      if (flown.view().prompt) {
        asked++;
        flown.answer(null);
      }
      fly(flown);
    }
    expect(flown.debrief().predictions).toHaveLength(asked);
    expect(asked).toBe((firstDive as Lesson).steps.filter(({ kind }) => kind === 'predict').length);
    expect(flown.flight.dive.hash()).toBe(flyLesson(firstDive, rig, 'steady', 1).dive.hash());
  });

  test('may be taken from a person in the middle: what he flew and answered stays, the rest is the pilot’s', async () => {
    const mine = await LessonFlight.begin(firstDive);
    mine.answer('stays-clear');
    mine.flight.run(
      120 * 5,
      () => NOBODY,
      () => mine.advance(),
    );
    const given = LessonFlight.resumed(firstDive, mine.flight.dive.run(), mine.given, { by: 'steady', asked: false });
    expect(given.flight.dive.hash()).toBe(mine.flight.dive.hash());
    expect(given.given).toEqual(['stays-clear']);
    fly(given);
    expect(given.view().done).toBe(true);
    expect(given.debrief().predictions[0]!.said).not.toBeNull();
  });

  test('comes back after a reload to the tick, with what the class has said, and goes on as the same flight', async () => {
    const how = { by: 'steady', asked: true } as const;
    const flown = await LessonFlight.begin(firstDive, how);
    const said: (string | null)[] = [];
    const begins = () => {
      while (flown.view().prompt) {
        const { prompt } = flown.view();
        said.push(prompt?.kind === 'choice' ? prompt.options[0]!.id : null);
        flown.answer(said.at(-1)!);
      }
    };
    begins();
    flown.flight.run(
      777,
      () => NOBODY,
      () => flown.advance(),
    );
    const left = { given: flown.given, under: flown.under, ticks: flown.flight.dive.tick };
    const again = await LessonFlight.watchedAgain(firstDive, how, JSON.parse(JSON.stringify(left)) as typeof left);
    expect(again.flight.dive.hash()).toBe(flown.flight.dive.hash());
    expect(again.given).toEqual(said);
    for (const one of [flown, again])
      for (let i = 0; i < 20 && !one.view().done; i++) {
        if (one.view().prompt) one.answer(null);
        fly(one);
      }
    expect(again.flight.dive.hash()).toBe(flown.flight.dive.hash());
    // To its end it comes back as well, with everything to be read.
    const end = { given: flown.given, under: flown.under, ticks: flown.flight.dive.tick };
    const read = await LessonFlight.watchedAgain(firstDive, how, end);
    expect(read.view().done).toBe(true);
    expect(read.debrief().predictions).toEqual(flown.debrief().predictions);
    await expect(LessonFlight.watchedAgain(firstDive, how, { ...end, under: 'another' })).rejects.toThrow(
      'flown under',
    );
  });
});
