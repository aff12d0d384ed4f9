import { beforeEach, describe, expect, test } from 'vitest';
import { besideOf, choiceOfGhost, choicesOf } from '../../src/app/debrief-compare.ts';
import { knownOf } from '../../src/app/debrief-known.ts';
import { LessonFlight } from '../../src/app/lesson-flight.ts';
import { nextAttempt, resultOf } from '../../src/app/results.ts';
import { readySetup } from '../../src/app/setups.ts';
import { rigOf } from '../../src/diver/index.ts';
import { replay, type Run } from '../../src/dive/index.ts';
import { LESSONS, flyLesson, lessonSetup, reportOf } from '../../src/lesson/index.ts';
import type { PilotName } from '../../src/pilot/index.ts';
import { Store, type KeptResult } from '../../src/store/index.ts';
import { firstDive, firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { WHAT, newBrowser } from '../store/fixture.ts';

beforeEach(newBrowser);

/** A flown lesson: somebody's hands, every question passed over. */
function flownBy(pilot: PilotName, seed: number, how: { attempt?: number; by?: PilotName } = {}): LessonFlight {
  const { dive } = flyLesson(firstDive, rig, pilot, seed);
  const flown = LessonFlight.resumed(firstDive, dive.run(), [], how);
  while (flown.view().prompt) flown.answer(null);
  return flown;
}

/** The run up to a tick. */
const upTo = (run: Run, ticks: number): Run => ({
  ...run,
  ticks,
  changes: run.changes.filter(({ tick }, i) => i === 0 || tick < ticks),
});

const learner = flownBy('learner', 3);
const at = (minute: number) => `2026-11-26T18:${String(minute).padStart(2, '0')}:00.000Z`;
const kept = (flown: LessonFlight, id: number, more: Partial<KeptResult> = {}): KeptResult => ({
  ...resultOf(flown, flown.debrief(), at(id)),
  id,
  ...more,
});

describe('resultOf()', () => {
  test('is what the debrief says, in plain data, and the same however often it is made', () => {
    const debrief = learner.debrief();
    const result = resultOf(learner, debrief, at(1));
    expect(result.marks).toEqual(debrief.result.marks.map(({ id, score, word, ok }) => ({ id, score, word, ok })));
    expect(result).toMatchObject({ verdict: debrief.result.verdict, flight: learner.flight.dive.hash(), attempt: 1 });
    expect(result.predictions).toEqual({ right: 0, of: debrief.predictions.length });
    expect(new Set(result.habits)).toEqual(new Set(debrief.result.habits.map(({ id }) => id)));
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
    expect(resultOf(flownBy('learner', 3), learner.debrief(), at(1))).toEqual(result);
  });
});

describe('knownOf()', () => {
  const mine = kept(learner, 9);
  const scores = (hover: number): Partial<KeptResult> => ({
    marks: mine.marks.map((one) => (one.id === 'hover' ? { ...one, score: hover } : one)),
  });

  test('reports on the last three flights under the same conditions, and leaves the others out', () => {
    const elsewhere = kept(learner, 2, { ...scores(100), under: 'another kit' });
    const another = kept(learner, 3, { ...scores(100), lessonId: 'hover' });
    const earlier = [kept(learner, 1, scores(100)), kept(learner, 4, scores(90)), kept(learner, 5, scores(85))];
    const results = [earlier[0]!, elsewhere, another, earlier[1]!, earlier[2]!, mine];
    const known = knownOf(learner, learner.debrief(), results, mine, '');
    const hover = mine.marks.find(({ id }) => id === 'hover')!;
    expect(known.reports.hover).toEqual(reportOf([{ score: 90 }, { score: 85 }, hover]));
    expect(known.earlier.map((one) => one.at)).toEqual([at(5), at(4), at(1)]);
    expect(known.others).toBe(1);
  });

  test('where nothing is kept this flight alone is reported on, and something is proposed all the same', () => {
    const known = knownOf(learner, learner.debrief(), [], null, 'Nothing is kept here.');
    expect(Object.values(known.reports).map(({ of }) => of)).toEqual([1, 1, 1]);
    expect(known.next?.reason.length).toBeGreaterThan(20);
    expect(known).toMatchObject({ id: null, earlier: [], words: 'Nothing is kept here.' });
  });

  test('a lesson of the instructor’s is proposed once he has opened them', () => {
    const results = LESSONS.filter(({ opens }) => opens === 'always').map((one, i) =>
      kept(learner, i + 1, { lessonId: one.id, verdict: 'pass' }),
    );
    const steady = flownBy('steady', 1);
    const proposed = (all: boolean) => knownOf(steady, steady.debrief(), results, null, '', all).next!;
    expect(proposed(false).again).toBe(true);
    expect(LESSONS.find(({ id }) => id === proposed(true).lessonId)!.opens).toBe('instructor');
  });

  test('who watched a simulated diver is asked to fly it, and nothing is reported on him', () => {
    const watched = flownBy('learner', 3, { by: 'learner' });
    const { next, reports } = knownOf(watched, watched.debrief(), [], null, '');
    expect(reports).toEqual({});
    expect(next).toMatchObject({ lessonId: 'first-dive', again: true });
    expect(watched.debrief().flownBy).toContain('Presses too long');
  });
});

describe('nextAttempt()', () => {
  test('is one more than the last that is kept, also after all gauges were had again', async () => {
    expect(await nextAttempt('first-dive')).toBe(1);
    const store = new Store();
    const add = (attempt: number, minute: number) =>
      store.addResult({ ...kept(learner, minute), attempt, flight: `f${minute}` });
    await add(1, 1);
    await add(2, 2);
    expect(await nextAttempt('first-dive')).toBe(3);
    expect(await nextAttempt('hover')).toBe(1);
    await add(1, 3);
    expect(await nextAttempt('first-dive')).toBe(2);
  });

  test('a browser that keeps nothing has every flight be the first', async () => {
    Reflect.deleteProperty(globalThis, 'indexedDB');
    expect(await nextAttempt('first-dive')).toBe(1);
  });

  test('gauges fade with it in flight, and are all there in the debrief', () => {
    const run = flyLesson(firstDive, rig, 'steady', 1).dive.run();
    const gauges = (attempt: number, ticks: number) => {
      const flown = LessonFlight.resumed(firstDive, upTo(run, ticks), [], { attempt });
      while (flown.view().prompt) flown.answer(null);
      return flown.view().gauges;
    };
    expect([1, 2, 3, 4, 9].map((attempt) => gauges(attempt, 6000))).toEqual(['all', 'all', 'rate', 'none', 'none']);
    expect(gauges(9, run.ticks)).toBe('all');
  });
});

describe('besideOf()', () => {
  test('flies a pilot from the very start of the flight, always the same', async () => {
    const [one, two] = await Promise.all([1, 2].map(() => besideOf(learner, 'pilot:able', new Store(), () => true)));
    expect(one!.dive.run().start).toEqual(learner.flight.dive.run().start);
    expect(two!.dive.hash()).toBe(one!.dive.hash());
    expect(one!.marks.map(({ id }) => id)).toEqual(['descent', 'hover', 'ascent']);
    expect(one!.says).toMatch(/^A simulated diver\. /);
    expect(choiceOfGhost(one!.name)).toBe('pilot:able');
    expect(choiceOfGhost('26 Nov 2026, 18:00')).toBe('');
  });

  test('a kept flight of the same lesson stands beside it with its marks; one that was not finished is refused', async () => {
    const other = flownBy('steady', 5);
    const store = new Store();
    const keeping = store.begin();
    const what = { ...WHAT, lessonId: 'first-dive', given: other.given };
    await keeping.keep(other.flight.dive, what);
    await keeping.leave(false);
    const choices = choicesOf('first-dive', await store.list());
    expect(choices.filter(({ sort }) => sort === 'flight').map(({ id }) => id)).toEqual([`dive:${keeping.id}`]);
    expect(choicesOf('hover', await store.list()).some(({ sort }) => sort === 'flight')).toBe(false);
    const beside = await besideOf(learner, `dive:${keeping.id}`, store, () => true);
    expect(beside!.marks).toEqual(other.debrief().result.marks);

    const half = store.begin();
    const left = LessonFlight.resumed(firstDive, upTo(other.flight.dive.run(), 6000), []);
    while (left.view().prompt) left.answer(null);
    await half.keep(left.flight.dive, { ...what, given: left.given });
    await expect(besideOf(learner, `dive:${half.id}`, store, () => true)).rejects.toThrow(/not flown to its end/);
    await half.keep(replay(other.flight.dive.run(), 5000), what);
    await expect(besideOf(learner, `dive:${half.id}`, store, () => true)).rejects.toThrow(/asks otherwise by now/);
  });

  test('where a lesson has no marks it says how much of what its steps ask for was met', async () => {
    const lesson = LESSONS.find(({ id }) => id === 'coarse-and-fine')!;
    const its = rigOf(lessonSetup(lesson, await readySetup(lesson.setup.ready)));
    const [mine, able] = (['learner', 'steady'] as const).map((pilot) => flyLesson(lesson, its, pilot, 1));
    const flown = LessonFlight.resumed(lesson, mine!.dive.run(), []);
    const beside = await besideOf(flown, 'pilot:steady', new Store(), () => true);
    const met = able!.demands.filter((one) => one.met).length;
    expect(beside!.says).toContain(` Of ${able!.demands.length} that the steps ask for, ${met} met.`);
  });

  test('one in another kit is refused', async () => {
    const heavier = { ...rig, bottomM: rig.bottomM + 3 };
    const { dive } = flyLesson(firstDive, heavier, 'steady', 5);
    const store = new Store();
    const keeping = store.begin();
    await keeping.keep(dive, { ...WHAT, lessonId: 'first-dive', given: [null, null, null, null, null] });
    await expect(besideOf(learner, `dive:${keeping.id}`, store, () => true)).rejects.toThrow(/another kit/);
  });
});
