import { expect, test } from 'vitest';
import { TICKS_PER_ROW, TICKS_PER_S, replay, restingControls, type DiveState } from '../../src/dive/index.ts';
import { flyLesson, lessonStart, meddled, watchedDive, LESSONS, type Lesson } from '../../src/lesson/index.ts';
import { eventRow } from '../../src/lesson/happening.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { madeUp } from '../fixtures/lessons/made-up.ts';

type Events = Parameters<typeof eventRow>[0]['events'];
const named = (id: string) => LESSONS.find((lesson) => lesson.id === id)!;
const vent: Events = [{ kind: 'vent-open', afterS: [5, 20], forS: 3 }];

test('eventRow() lies between its two times, the same for the same dive, spread over all of them', () => {
  const rows = Array.from({ length: 400 }, (_, i) => {
    const recording = madeUp(10, { depthM: () => 6 + i / 977, lungM3: () => 3e-3 });
    const row = eventRow({ events: vent, fromRow: 3 }, 0, recording);
    expect(eventRow({ events: vent, fromRow: 3 }, 0, recording)).toBe(row);
    return (row - 3) / 10;
  });
  expect(Math.min(...rows)).toBeGreaterThanOrEqual(5);
  expect(Math.max(...rows)).toBeLessThanOrEqual(20);
  // Even chance: each third of the time gets about a third of 400.
  for (const from of [5, 10, 15]) {
    const inThird = rows.filter((s) => s >= from && s < from + 5).length;
    expect(Math.abs(inThird - 400 / 3)).toBeLessThan(4 * Math.sqrt(400 * (1 / 3) * (2 / 3)));
  }
});

test('meddled() lets a valve do as it likes for its time, whatever the hands want, and then no more', () => {
  const recording = madeUp(10, { depthM: () => 6 });
  const wanted = restingControls(320);
  const fromTick = eventRow({ events: vent, fromRow: 0 }, 0, recording) * TICKS_PER_ROW;
  const at = (tick: number) =>
    meddled([{ events: vent, fromRow: 0 }], rig, recording, wanted, { tick, pitchSin: 0 } as DiveState).jacketVent;
  expect(at(fromTick - 6)).toBe(0);
  expect(at(fromTick)).not.toBe(0);
  expect(at(fromTick + 3 * TICKS_PER_S - 6)).not.toBe(0);
  expect(at(fromTick + 3 * TICKS_PER_S)).toBe(0);
});

test('meddled() knows every kind: nudge, current, gas that runs low, lead that is lost', () => {
  const recording = madeUp(10, { depthM: () => 6 });
  const wanted = restingControls(320);
  const after = (event: Events[number]) =>
    meddled([{ events: [event], fromRow: 0 }], rig, recording, wanted, { tick: 600, pitchSin: 0 } as DiveState);
  const afterS = [5, 5] as const;
  expect(after({ kind: 'nudge', afterS, upNs: 40 }).nudgeUpN).toBe(160);
  expect(after({ kind: 'gas-low', afterS, leftBar: 40 }).gasLeftBar).toBe(40);
  expect(after({ kind: 'current', afterS, downMpmin: 12, forS: 10 }).waterDownMmps).toBeGreaterThan(0);
  // The first two pieces of this diver can be let go, the third is fixed.
  expect(after({ kind: 'lead-lost', afterS }).releaseMask).toBe(0b011);
});

test('a run of a lesson in which something goes wrong holds it: it replays to the bit without the lesson', () => {
  const lesson = named('stuck-inflator');
  const { dive, run } = flyLesson(lesson, rig, 'over-corrector', 3);
  expect(replay(dive.run()).hash()).toBe(dive.hash());
  const quiet: Lesson = {
    ...lesson,
    steps: lesson.steps.map((step) => (step.kind === 'fly' ? { ...step, events: [], keep: [] } : step)),
  };
  expect(flyLesson(quiet, rig, 'over-corrector', 3).dive.hash()).not.toBe(dive.hash());
  expect(run.phases[0]?.id).toBe('arrest');
});

test('a start that is wrong by chance is wrong by as much as it says, either way, and the same for the same seed', () => {
  const lesson = named('hover');
  const neutralL =
    (lessonStart({ ...lesson, start: { ...lesson.start, gas: { offNeutralL: 0 } } as never }, rig).jacketM3 ?? 0) * 1e3;
  const offs = Array.from(
    { length: 200 },
    (_, seed) => (lessonStart(lesson, rig, seed).jacketM3 ?? 0) * 1e3 - neutralL,
  );
  for (const off of offs) {
    expect(Math.abs(off)).toBeGreaterThan(0.4 - 1e-9);
    expect(Math.abs(off)).toBeLessThan(0.9 + 1e-9);
  }
  const more = offs.filter((off) => off > 0).length;
  expect(more).toBeGreaterThan(70);
  expect(more).toBeLessThan(130);
  expect(lessonStart(lesson, rig, 7)).toEqual(lessonStart(lesson, rig, 7));
});

test('watchedDive() shows the same dive every time, and its freezes read the recording', () => {
  const lesson = named('runaway-descent');
  const step = lesson.steps.find((one) => one.kind === 'watch');
  if (step?.kind !== 'watch') throw new Error('nothing to watch');
  const { dive, frames } = watchedDive(lesson, rig, step);
  expect(watchedDive(lesson, rig, step).dive.hash()).toBe(dive.hash());
  expect(frames.map(({ atS }) => atS)).toEqual(step.freezes.map(({ atS }) => atS));
  for (const frame of frames) expect(frame.depthM).toBe(dive.recording.at(frame.atS * 10, 'depthM'));
  // The script vents for three seconds and presses after fifteen.
  const jacketL = (atS: number) => dive.recording.at(atS * 10, 'jacketM3') * 1e3;
  expect(jacketL(3.5)).toBeLessThan(jacketL(0));
  expect(jacketL(18)).toBeGreaterThan(jacketL(14.9) + 2);
});
