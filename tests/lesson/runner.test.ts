import { expect, test } from 'vitest';
import type { Recording } from '../../src/dive/index.ts';
import {
  advanceLesson,
  answerPrompt,
  beginLesson,
  debriefQuestion,
  promptOf,
  viewLesson,
  type Lesson,
  type LessonRun,
} from '../../src/lesson/index.ts';
import { firstDive } from '../fixtures/lessons/first-dive.ts';
import { LESSONS } from '../../src/lesson/catalogue.ts';
import { madeUp } from '../fixtures/lessons/made-up.ts';

const inCatalogue = (id: string) => LESSONS.find((one) => one.id === id)!;
const twoAndSix = inCatalogue('two-and-six-kilograms');

/** Afloat for 20 s, down to 8 m by 60 s, there until 140 s, 5 m from 160 s to 260 s, at the surface from 300 s. */
function wholeDive(row: number): number {
  const knots = [
    [0, 0.35],
    [200, 0.35],
    [600, 8],
    [1400, 8],
    [1600, 5],
    [2600, 5],
    [3000, 0.35],
    [9999, 0.35],
  ] as const;
  const next = knots.findIndex(([at]) => at > row);
  const [fromRow, from] = knots[next - 1]!;
  const [toRow, to] = knots[next]!;
  return from + ((to - from) * (row - fromRow)) / (toRow - fromRow);
}
const upright = (row: number) => (wholeDive(row) < 1 ? 1 : 0);
const dive = (rows: number) => madeUp(rows, { depthM: wholeDive, pitchSin: upright });

/** Passes over every question as it comes. */
function flown(recording: Recording, from = beginLesson(firstDive)): LessonRun {
  let run = from;
  for (;;) {
    if (promptOf(firstDive, run)) run = answerPrompt(firstDive, run, null);
    const next = advanceLesson(firstDive, run, recording);
    if (next === run && !promptOf(firstDive, next)) return run;
    run = next;
  }
}

test('beginLesson() asks before anything is flown, and no row is looked at until it is answered', () => {
  const run = beginLesson(firstDive);
  expect(promptOf(firstDive, run)).toMatchObject({ kind: 'choice', id: 'afloat' });
  expect(advanceLesson(firstDive, run, dive(500))).toBe(run);
  const view = viewLesson(firstDive, run, dive(500));
  expect(view.prompt?.id).toBe('afloat');
  expect(view.title).toBe('Positive: head clear of the water for 10 s');
});

test('viewLesson() counts the predictions that are asked one after another, and begins anew after a flight', () => {
  const asked = [];
  let run = beginLesson(twoAndSix);
  for (; promptOf(twoAndSix, run); run = answerPrompt(twoAndSix, run, null))
    asked.push(viewLesson(twoAndSix, run, dive(0)).asking);
  // Two dives are watched after the three, and are none.
  expect(asked).toEqual([{ at: 1, of: 3 }, { at: 2, of: 3 }, { at: 3, of: 3 }, null, null]);
  expect(viewLesson(twoAndSix, run, dive(0)).asking).toBeNull();
  // In the first dive a flight lies between any two.
  for (run = beginLesson(firstDive); run.ended === null; run = advanceLesson(firstDive, run, dive(3200)))
    if (promptOf(firstDive, run)) {
      expect(viewLesson(firstDive, run, dive(3200)).asking).toEqual({ at: 1, of: 1 });
      run = answerPrompt(firstDive, run, null);
    }
});

test('viewLesson() names what hands a step takes besides gas, breath and fins, from its question on', () => {
  const handsOf = (lesson: Lesson) => viewLesson(lesson, beginLesson(lesson), dive(0)).hands;
  expect(handsOf(inCatalogue('positive-negative-neutral'))).toEqual(['line']);
  expect(handsOf(firstDive)).toEqual([]);
});

test('answerPrompt() locks the answer and takes none that was not offered', () => {
  const run = beginLesson(firstDive);
  for (const wrong of ['sinks ', 3, ['sinks'], ''])
    expect(() => answerPrompt(firstDive, run, wrong)).toThrow(/answerPrompt: afloat cannot be answered with/);
  const after = answerPrompt(firstDive, run, 'sinks');
  expect(after.answers).toEqual([{ id: 'afloat', answer: 'sinks', atRow: 0 }]);
  expect(() => answerPrompt(firstDive, after, 'stays-clear')).toThrow(/nothing is asked/);
});

test('a wrong answer flies the same lesson as a right one', () => {
  const wrong = flown(dive(3200), answerPrompt(firstDive, beginLesson(firstDive), 'sinks'));
  const right = flown(dive(3200), answerPrompt(firstDive, beginLesson(firstDive), 'stays-clear'));
  expect(wrong.phases).toEqual(right.phases);
  expect(wrong.ended).toBe('flown');
});

test('advanceLesson() goes through the first dive row by row as planned', () => {
  const { phases, ended } = flown(dive(3200));
  // 7 m is reached at row 200 + 400·6.65/7.65, 6 m at 1400 + 400/3; windows open 10 s later, of 45 and 60 s.
  const down = Math.ceil(200 + (400 * 6.65) / 7.65);
  const up = Math.ceil(1400 + 400 / 3);
  const clear = Math.floor(2600 + (400 * (5 - 0.41)) / 4.65) + 1;
  expect(phases.map(({ id, fromRow, reachedRow, toRow }) => [id, fromRow, reachedRow, toRow])).toEqual([
    ['surface', 0, 0, 100],
    ['descent', 100, down, down],
    ['hover', down, down, down + 550],
    ['ascent', down + 550, up, up],
    ['stop', up, up, up + 700],
    ['surface-again', up + 700, clear, clear + 100],
  ]);
  expect(phases.every(({ met }) => met)).toBe(true);
  expect(ended).toBe('flown');
});

test('advanceLesson() gives the same run for rows one at a time, in fours and all at once', () => {
  const all = flown(dive(3200));
  for (const size of [1, 4, 37]) {
    let run = beginLesson(firstDive);
    for (let rows = 1; rows < 3200; rows += size) run = flown(dive(rows), run);
    expect(flown(dive(3200), run)).toEqual(all);
  }
});

test('a run goes on from its JSON as if nothing had happened', () => {
  const all = flown(dive(3200));
  for (const rows of [1, 90, 500, 1100, 1700, 2900]) {
    const stored = JSON.stringify(flown(dive(rows)));
    expect(flown(dive(3200), JSON.parse(stored) as LessonRun)).toEqual(all);
  }
});

test('advanceLesson() wants the head clear for ten seconds on end, upright, without fins', () => {
  const until = (columns: Parameters<typeof madeUp>[1]) => {
    const run = flown(madeUp(400, { depthM: () => 0.35, pitchSin: () => 1, ...columns }));
    return run.phases[0]!.toRow;
  };
  expect(until({})).toBe(100);
  expect(until({ depthM: (row) => (row === 50 ? 0.42 : 0.35) })).toBe(151);
  expect(until({ pitchSin: () => 0 })).toBeNull();
  expect(until({ finsUpNs: (row) => row })).toBeNull();
});

test('advanceLesson() ends late when a phase is not reached in its time, and flies nothing after it', () => {
  const run = flown(madeUp(3000, { depthM: () => 0.35, pitchSin: () => 1 }));
  expect(run).toMatchObject({ ended: 'late', step: firstDive.steps.length });
  expect(run.phases.at(-1)).toMatchObject({ id: 'descent', fromRow: 100, toRow: 2500, met: false });
  const view = viewLesson(firstDive, run, madeUp(3000, {}));
  expect(view).toMatchObject({ done: true, prompt: null, title: 'Going down: 8 m was not reached in 240 s' });
  expect(view.phases.map(({ state }) => state)).toEqual(['met', ...Array<string>(5).fill('missed')]);
});

test('a hold is reached once: leaving the band neither restarts nor moves its window', () => {
  const depthM = (row: number) => (row > 620 && row < 900 ? 11 : wholeDive(row));
  const run = flown(madeUp(3200, { depthM, pitchSin: upright }));
  const hover = run.phases.find(({ id }) => id === 'hover')!;
  expect(hover.toRow! - hover.reachedRow!).toBe(550);
});

test('viewLesson() says what is asked, how far it is, where to be and how fast', () => {
  const at = (rows: number) => viewLesson(firstDive, flown(dive(rows)), dive(rows));
  expect(at(60)).toMatchObject({ title: 'Positive: head clear of the water for 10 s', progress: '5 s so far' });
  const down = at(300);
  expect(down).toMatchObject({ title: 'Going down: down to 8 m, at most 18 m/min', progress: '19 of 240 s' });
  expect(down.limits).toEqual({ upMps: null, downMps: 18 / 60 });
  // 7 m at 18 m/min take 23.3 s: before that nobody should be there.
  const ahead = down.bands.at(-1)!;
  expect(ahead).toMatchObject({ toS: null, topM: 7, bottomM: 9 });
  expect(ahead.fromS).toBeCloseTo(10 + (7 / 18) * 60, 9);
  const hover = at(900);
  expect(hover.title).toBe('Neutral: stay between 7 and 9 m for 45 s');
  expect(hover.progress).toMatch(/^\d+ s so far$/);
  expect(hover.bands.at(-1)).toMatchObject({ topM: 7, bottomM: 9, words: 'stay between 7 and 9 m' });
  expect(at(1450)).toMatchObject({ limits: { upMps: 9 / 60, downMps: null } });
  expect(at(3200)).toMatchObject({ done: true, prompt: null, progress: '', hint: '' });
});

test('viewLesson() counts only seconds in the band', () => {
  const depthM = (row: number) => (row >= 700 && row < 800 ? 9.5 : wholeDive(row));
  const progress = (recording: Recording) => viewLesson(firstDive, flown(recording), recording).progress;
  const seconds = (text: string) => Number.parseInt(text, 10);
  const straight = seconds(progress(dive(1000)));
  expect(seconds(progress(madeUp(1000, { depthM, pitchSin: upright })))).toBe(straight - 10);
});

test('debriefQuestion() asks who only watched about what he saw, where the lesson has words for that', () => {
  const descent = inCatalogue('descent');
  const step = descent.steps.find((one) => one.kind === 'ask')!;
  expect(debriefQuestion(descent, false)).toBe(step.question);
  expect(debriefQuestion(descent, true)).toBe(step.watched);
  expect(step.watched).toBeTruthy();
  const plain = { ...descent, steps: [{ ...step, watched: undefined }] };
  expect(debriefQuestion(plain, true)).toBe(step.question);
});

test('viewLesson() shows and says the place that is asked for where that is narrower than its goal', () => {
  const kickTest = inCatalogue('kick-test');
  const still = madeUp(600, { depthM: () => 7 });
  let run = answerPrompt(kickTest, beginLesson(kickTest), null);
  for (let next = advanceLesson(kickTest, run, still); next !== run; next = advanceLesson(kickTest, run, still))
    run = next;
  const { title, bands } = viewLesson(kickTest, run, still);
  expect(title).toBe('Kick test: stay between 6.5 and 7.5 m for 20 s');
  expect(bands.map(({ topM, bottomM }) => [topM, bottomM])).toEqual([
    [6, 8],
    [6.5, 7.5],
  ]);
});
