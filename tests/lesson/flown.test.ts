import { expect, test } from 'vitest';
import { Dive, TICKS_PER_CHANGE, replay, restingControls, startState, type Run } from '../../src/dive/index.ts';
import {
  advanceLesson,
  answerPrompt,
  beginLesson,
  flyLesson,
  judgeLesson,
  lessonStart,
  promptOf,
} from '../../src/lesson/index.ts';
import { firstDive, firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';

/** Dives a run again as a page would: frames of so many ticks, the lesson moved on after each. */
function inFrames(run: Run, ticks: number) {
  const dive = new Dive(rig, startState(rig, lessonStart(firstDive, rig)), run.changes[0]!.controls);
  let lesson = beginLesson(firstDive);
  let at = 0;
  while (dive.tick < run.ticks) {
    const frameEnd = Math.min(dive.tick + ticks, run.ticks);
    while (dive.tick < frameEnd) {
      while (run.changes[at + 1] && run.changes[at + 1]!.tick <= dive.tick) at++;
      if (dive.onTwentieth) dive.steer(run.changes[at]!.controls);
      const left = TICKS_PER_CHANGE - (dive.tick % TICKS_PER_CHANGE);
      dive.advance(Math.min(left, frameEnd - dive.tick));
    }
    do {
      if (promptOf(firstDive, lesson)) lesson = answerPrompt(firstDive, lesson, null);
      lesson = advanceLesson(firstDive, lesson, dive.recording);
    } while (promptOf(firstDive, lesson));
  }
  return { lesson, result: judgeLesson(firstDive, lesson, dive) };
}

test('marks are the same in frames of 1, 2, 4 and 5 ticks and in blocks of seconds, and after replay', () => {
  for (const pilot of ['able', 'learner', 'over-corrector'] as const) {
    const { dive, events: _, run, ...result } = flyLesson(firstDive, rig, pilot, 3);
    for (const ticks of [1, 2, 4, 5, 30, 1200]) {
      const framed = inFrames(dive.run(), ticks);
      expect(framed.result, `${pilot}, ${ticks} ticks`).toEqual(result);
      expect(framed.lesson.phases).toEqual(run.phases);
    }
    const again = replay(dive.run());
    expect(again.hash()).toBe(dive.hash());
    expect(judgeLesson(firstDive, run, again)).toEqual(result);
  }
});

test('flyLesson() gives the same dive for the same seed, and another for another', () => {
  const one = flyLesson(firstDive, rig, 'able', 7);
  expect(flyLesson(firstDive, rig, 'able', 7).dive.hash()).toBe(one.dive.hash());
  expect(flyLesson(firstDive, rig, 'able', 8).dive.hash()).not.toBe(one.dive.hash());
});

test('judgeLesson() calls a lesson that was not flown to its end an error, never a pass', () => {
  const dive = new Dive(rig, startState(rig, lessonStart(firstDive, rig)), restingControls(320));
  const run = beginLesson(firstDive);
  expect(judgeLesson(firstDive, run, dive)).toMatchObject({ verdict: 'error', missed: expect.any(String) });
  const whole = flyLesson(firstDive, rig, 'steady', 1);
  const unmarked = { ...firstDive, marks: [] };
  expect(judgeLesson(unmarked, run, dive)).toMatchObject({ verdict: 'error', marks: [] });
  expect(judgeLesson(unmarked, whole.run, whole.dive)).toMatchObject({ verdict: 'pass', marks: [] });
});

test('judgeLesson() gives every part of every mark words, a finite value and a moment of the dive', () => {
  for (const pilot of ['steady', 'learner', 'latecomer', 'breath-holder', 'idler', 'random'] as const) {
    const { marks, dive } = flyLesson(firstDive, rig, pilot, 2);
    const end = dive.tick / 120;
    expect(marks.map(({ id }) => id)).toEqual(['descent', 'hover', 'ascent']);
    for (const part of marks.flatMap(({ parts }) => parts)) {
      expect(part.label).not.toBe('');
      expect(part.reason).toMatch(/\.$/);
      expect(Number.isFinite(part.raw) && Number.isFinite(part.pointsLost)).toBe(true);
      if (part.atS !== null) expect(part.atS >= 0 && part.atS <= end, `${part.id} at ${part.atS}`).toBe(true);
    }
  }
});
