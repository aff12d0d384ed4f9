import { describe, expect, test } from 'vitest';
import { NEW_CLOCK, passTime } from '../../src/app/clock.ts';
import { LessonFlight } from '../../src/app/lesson-flight.ts';
import type { Act } from '../../src/panels/index.ts';
import { firstDive } from '../fixtures/lessons/first-dive.ts';

const TICKS_PER_S = 120;

/** What a plain diver holds down at a moment of the dive: gas out in pulses at the surface, and a puff every few seconds deeper down. */
function held({ flight }: LessonFlight): ReadonlySet<Act> {
  const { tick, depthM } = flight.dive.state;
  // Afloat nothing is to be done.
  if (tick < 15 * TICKS_PER_S) return new Set();
  const s = (tick / TICKS_PER_S) % 4;
  if (depthM < 1) return new Set<Act>(s < 1 ? ['vent', 'out'] : ['out']);
  return new Set<Act>(s < 0.25 && depthM > 5 ? ['add'] : []);
}

/** Seconds of the world pass by frames, at a speed of time; questions are answered with the first choice, or passed over. */
function pass(flown: LessonFlight, seconds: number, speed: number, framesPerS = 60): void {
  let clock = NEW_CLOCK;
  for (let frame = 0; frame < seconds * framesPerS && !flown.view().done; frame++) {
    const { prompt } = flown.view();
    if (prompt) flown.answer(prompt.kind === 'choice' ? prompt.options[0]!.id : null);
    const now = passTime(clock, 1 / framesPerS, speed);
    clock = now.clock;
    flown.flight.run(
      now.ticks,
      () => held(flown),
      () => flown.advance(),
    );
  }
}

describe('a lesson that is flown by hand', () => {
  test.each([
    [2, 60],
    [2, 20],
    [0.5, 60],
  ])(
    'to its end at speed %d and %d frames a second has the dive, the marks and the verdict of any other',
    async (speed, frames) => {
      const [usual, other] = [await LessonFlight.begin(firstDive), await LessonFlight.begin(firstDive)];
      pass(usual, 900, 1);
      pass(other, 900 / speed, speed, frames);
      expect(usual.view().done && other.view().done).toBe(true);
      expect(other.flight.dive.hash()).toBe(usual.flight.dive.hash());
      expect(other.debrief().result).toEqual(usual.debrief().result);
      expect(usual.flight.dive.tick).toBeGreaterThan(60 * TICKS_PER_S);
    },
  );

  test('and is left in the middle goes on after a reload: the same question stands, answers stay locked, and it comes to the same end', async () => {
    const left = await LessonFlight.begin(firstDive);
    pass(left, 40, 1);
    expect(left.given.length).toBeGreaterThanOrEqual(2);
    const again = LessonFlight.resumed(firstDive, left.flight.dive.run(), left.given);
    expect(again.view()).toEqual(left.view());
    expect(again.given).toEqual(left.given);
    for (const flown of [left, again]) pass(flown, 900, 1);
    expect(again.view().done).toBe(true);
    expect(again.flight.dive.hash()).toBe(left.flight.dive.hash());
    expect(again.debrief().predictions).toEqual(left.debrief().predictions);
    expect(again.debrief().result.verdict).toBe(left.debrief().result.verdict);
  });

  test('and stands at a question when it is left stands at it after a reload', async () => {
    const left = await LessonFlight.begin(firstDive);
    left.answer('stays-clear');
    for (let s = 0; s < 60 && !left.view().prompt; s++)
      left.flight.run(
        TICKS_PER_S,
        () => new Set<Act>(),
        () => left.advance(),
      );
    const again = LessonFlight.resumed(firstDive, left.flight.dive.run(), left.given);
    expect(left.view().prompt).toMatchObject({ id: 'leaving' });
    expect(again.view().prompt).toEqual(left.view().prompt);
    expect(again.flight.dive.tick).toBe(left.flight.dive.tick);
  });
});
