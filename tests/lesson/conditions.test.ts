import { expect, test } from 'vitest';
import type { Recording } from '../../src/dive/index.ts';
import {
  advanceLesson,
  answerPrompt,
  beginLesson,
  judgeLesson,
  promptOf,
  retried,
  viewLesson,
  type Lesson,
  type LessonRun,
} from '../../src/lesson/index.ts';
import { loadLessonText } from '../../src/lesson/file.ts';
import { firstDiveRig } from '../fixtures/lessons/first-dive.ts';
import { madeUp, type Columns } from '../fixtures/lessons/made-up.ts';

/** A lesson of one flown step, as its file would have it: lines of the goal's conditions and of what is to be kept. */
function lessonOf(each: readonly string[], keep: readonly string[] = [], more = 'order: given'): Lesson {
  const entries = (lines: readonly string[]) => lines.map((line) => `        - { ${line} }\n`).join('');
  return loadLessonText(`format: 1
id: made-up
title: Made up
minutes: 5
phase: limits
objective: None.
caution: None.
setup: { ready: first-dive }
start: { place: under, depthM: 8, offNeutralL: 0 }
steps:
  - kind: fly
    id: only
    title: Only
    hint: A hint.
    goal:
      kind: meet
      withinS: 100
      aimM: 8
      says: what is asked
      ${more}
      each:
${entries(each)}${keep.length > 0 ? `    keep:\n${entries(keep)}` : ''}marks: []
waterAdds: None.
`);
}
const flown = (lesson: Lesson, recording: Recording, run: LessonRun = beginLesson(lesson)) =>
  advanceLesson(lesson, run, recording);
/** Row on which the step was over, and how. */
function endOf(lesson: Lesson, columns: Columns, rows = 1200) {
  const run = flown(lesson, madeUp(rows, columns));
  const phase = run.phases[0]!;
  return { toRow: phase.toRow, met: phase.met, broken: phase.broken.map(({ row }) => row), ended: run.ended };
}
const ramp = (row: number) => 5 + row / 100;

test('reach is met on the first row within the range, and late when it never is', () => {
  const lesson = lessonOf(['do: reach, what: depthM, least: 8']);
  expect(endOf(lesson, { depthM: ramp })).toMatchObject({ toRow: 300, met: true, ended: 'flown' });
  expect(endOf(lesson, { depthM: () => 7.9 })).toMatchObject({ toRow: 1000, met: false, ended: 'late' });
});

test('hold wants its seconds on end: what leaves the range begins again', () => {
  const lesson = lessonOf(['do: hold, what: depthM, least: 7, most: 9, forS: 10']);
  expect(endOf(lesson, { depthM: () => 8 }).toRow).toBe(100);
  expect(endOf(lesson, { depthM: (row) => (row === 50 ? 9.1 : 8) }).toRow).toBe(151);
});

test('conditions in a given order count one after the other, in any order together', () => {
  const each = ['do: reach, what: depthM, least: 10', 'do: reach, what: depthM, most: 6'];
  // 6 m is passed at row 100 on the way down, 10 m at row 500, and 6 m again at row 900.
  const depthM = (row: number) => (row <= 600 ? ramp(row) : 11 - (row - 600) / 60);
  expect(endOf(lessonOf(each), { depthM }).toRow).toBe(900);
  expect(endOf(lessonOf(each, [], 'order: any'), { depthM }).toRow).toBe(500);
});

test('a mean is judged over its whole time only', () => {
  // A sine of 6 s: its mean over 6 s is the middle, whatever the row says.
  const lesson = lessonOf(['do: reach, what: depthM, least: 7.99, most: 8.01, overS: 6']);
  const depthM = (row: number) => 8 + Math.cos((2 * Math.PI * row) / 60);
  expect(endOf(lesson, { depthM }).toRow).toBe(59);
});

test('force, breath and gas are read in their units', () => {
  const met = (what: string, columns: Columns) => endOf(lessonOf([`do: reach, ${what}`]), columns).toRow;
  expect(met('what: netKg, least: 0.99, most: 1.01', { midNetN: () => 9.80665 })).toBe(0);
  expect(met('what: breathKg, least: 0.99', { netN: () => 9.80665, midNetN: () => 0 })).toBe(0);
  expect(met('what: speedMpmin, least: 5.9, most: 6.1', { speedMps: () => 0.1 })).toBe(0);
  expect(met('what: jacketL, least: 2.9, most: 3.1', { jacketM3: () => 3e-3 })).toBe(0);
  expect(met('what: gasInL, least: 2', { letInM3: (row) => 1 + row * 1e-5 })).toBe(200);
  expect(met('what: finsNs, least: 50', { finsUpNs: (row) => row, finsDownNs: (row) => row })).toBe(25);
  expect(
    met('what: pitchDeg, least: 44, most: 46', { pitchCos: () => Math.SQRT1_2, pitchSin: () => Math.SQRT1_2 }),
  ).toBe(0);
});

test('what is to be kept is told with the row that shows it, and the flying goes on', () => {
  const goal = ['do: reach, what: depthM, least: 10'];
  const broken = (keep: string, columns: Columns = { depthM: ramp }) => {
    const { met, broken: rows } = endOf(lessonOf(goal, [`${keep}, says: kept`]), { depthM: ramp, ...columns });
    expect(met).toBe(true);
    return rows;
  };
  expect(broken('do: stay, what: depthM, most: 8')).toEqual([301]);
  expect(broken('do: stay, what: depthM, most: 10')).toEqual([]);
  expect(broken('do: never, what: depthM, least: 7, most: 7.5')).toEqual([200]);
  expect(broken('do: end, what: depthM, least: 9')).toEqual([]);
  expect(broken('do: end, what: depthM, most: 9')).toEqual([500]);
  expect(broken('do: before, what: depthM, least: 6, atS: 10')).toEqual([]);
  expect(broken('do: before, what: depthM, least: 6.1, atS: 10')).toEqual([100]);
  expect(broken('do: after, what: depthM, least: 6, atS: 10')).toEqual([]);
  expect(broken('do: after, what: depthM, least: 5.9, atS: 10')).toEqual([90]);
});

test('changes of lead are counted row by row, and the waterline is what is out of an upright head', () => {
  const goal = ['do: reach, what: depthM, least: 10'];
  // A piece off on rows 100 and 200, one back on row 300.
  const leadKg = (row: number) => 5 - (row >= 100 ? 0.5 : 0) - (row >= 200 ? 0.5 : 0) + (row >= 300 ? 0.5 : 0);
  const broken = (keep: string) => endOf(lessonOf(goal, [`${keep}, says: kept`]), { depthM: ramp, leadKg }).broken;
  expect(broken('do: lead-changes, most: 3')).toEqual([]);
  expect(broken('do: lead-changes, most: 2')).toEqual([300]);
  expect(broken('do: lead-changes, most: 0')).toEqual([100]);
  expect(broken('do: stay, what: leadOffKg, most: 0.9')).toEqual([200]);
  expect(broken('do: end, what: leadOffKg, most: 0.5')).toEqual([]);
  // The top of the head is 0.65 m above mid-chest: at 0.53 m the eyes are at the water.
  const eyes = lessonOf(['do: reach, what: waterlineCm, least: 11.9, most: 12.1']);
  expect(endOf(eyes, { depthM: (row) => 0.7 - row / 1000 })).toMatchObject({ toRow: 169, met: true });
});

test('presses are counted where gas passes, in and out, and measured', () => {
  const goal = ['do: reach, what: depthM, least: 10'];
  // In for 0.5 s from row 100, out for 1.2 s from row 200.
  const letInM3 = (row: number) => Math.min(Math.max(row - 100, 0), 5) * 1e-4;
  const letOutM3 = (row: number) => Math.min(Math.max(row - 200, 0), 12) * 1e-4;
  const broken = (keep: string) =>
    endOf(lessonOf(goal, [`do: presses, ${keep}, says: kept`]), { depthM: ramp, letInM3, letOutM3 }).broken;
  expect(broken('most: 2')).toEqual([]);
  expect(broken('most: 1')).toEqual([201]);
  expect(broken('most: 0')).toEqual([101]);
  expect(broken('most: 2, longestS: 1')).toEqual([201]);
  expect(broken('most: 2, longestS: 1.2')).toEqual([]);
});

test('rows one at a time, in fours and all at once give the same run, also from its JSON', () => {
  const lesson = lessonOf(
    ['do: hold, what: depthM, least: 6, most: 7, forS: 5', 'do: reach, what: depthM, least: 9'],
    ['do: stay, what: depthM, most: 8, says: kept'],
  );
  const all = flown(lesson, madeUp(900, { depthM: ramp }));
  expect(all.phases[0]).toMatchObject({ toRow: 400, met: true, broken: [{ index: 0, row: 301 }] });
  for (const size of [1, 4, 37]) {
    let run = beginLesson(lesson);
    for (let rows = 1; rows < 900; rows += size)
      run = JSON.parse(JSON.stringify(flown(lesson, madeUp(rows, { depthM: ramp }), run))) as LessonRun;
    expect(flown(lesson, madeUp(900, { depthM: ramp }), run)).toEqual(all);
  }
});

test('judgeLesson() fails who did not keep what was asked, and names it with its moment', () => {
  const lesson = lessonOf(['do: reach, what: depthM, least: 9'], ['do: stay, what: depthM, most: 8, says: above 8 m']);
  const recording = madeUp(900, { depthM: ramp });
  const result = judgeLesson(lesson, flown(lesson, recording), { rig: firstDiveRig, recording, changes: [] });
  expect(result).toMatchObject({ verdict: 'fail', missed: null });
  expect(result.demands).toEqual([
    { id: 'only', title: 'Only', says: 'what is asked', met: true, atS: 40 },
    { id: 'only', title: 'Only', says: 'above 8 m', met: false, atS: 30.1 },
  ]);
});

test('retried() takes a step back to its first row, keeps what was predicted before it, and counts the attempt', () => {
  const lesson = lessonOf(['do: reach, what: depthM, least: 8']);
  const recording = madeUp(900, { depthM: ramp });
  const run = flown(lesson, recording);
  const again = retried(lesson, run, 'only')!;
  expect(again).toMatchObject({ attempt: 2, step: 0, nextRow: 0, ended: null });
  expect(flown(lesson, recording, again)).toEqual({ ...run, attempt: 2 });
  expect(retried(lesson, run, 'other')).toBeNull();
});

test('hints and gauges fade from one attempt to the next', () => {
  const lesson = lessonOf(['do: reach, what: depthM, least: 9.9']);
  const seen = (attempt: number, rows: number) => {
    const recording = madeUp(rows, { depthM: ramp });
    const { hint, gauges } = viewLesson(lesson, flown(lesson, recording, beginLesson(lesson, attempt)), recording);
    return [hint, gauges];
  };
  expect(seen(1, 50)).toEqual(['A hint.', 'all']);
  expect(seen(2, 50)).toEqual(['', 'all']);
  expect(seen(2, 250)).toEqual(['A hint.', 'all']);
  expect(seen(3, 250)).toEqual(['', 'rate']);
  expect(seen(4, 250)).toEqual(['', 'none']);
  expect(seen(9, 250)).toEqual(['', 'none']);
});

test('viewLesson() counts what is being held', () => {
  const lesson = lessonOf(['do: reach, what: depthM, least: 6', 'do: hold, what: depthM, least: 6, forS: 20']);
  const recording = madeUp(221, { depthM: ramp });
  const view = viewLesson(lesson, flown(lesson, recording), recording);
  expect(view).toMatchObject({ title: 'Only: what is asked', progress: '1 of 2 done, 11 of 20 s' });
});

test('places and curves are locked within their scales', () => {
  const lesson = loadLessonText(`format: 1
id: made-up
title: Made up
minutes: 5
phase: limits
objective: None.
caution: None.
setup: { ready: first-dive }
start: { place: under, depthM: 8, offNeutralL: 0 }
steps:
  - { kind: watch, id: seen, title: Seen, text: See., pilot: steady, aimM: 8, freezes: [{ atS: 1, words: Now. }] }
  - { kind: predict, id: where, shape: place, topic: stops-at, atM: 8, afterS: 3, question: Q, unit: m, least: 0, most: 12, step: 1, within: 1, why: W }
  - { kind: predict, id: line, shape: curve, topic: gas-curve, question: Q, along: [5, 10], alongUnit: m, unit: L, least: 0, most: 1, step: 0.1, within: 0.1, why: W }
  - { kind: fly, id: only, title: Only, hint: A hint., goal: { kind: float, forS: 3, withinS: 9 } }
marks: []
waterAdds: None.
`);
  let run = beginLesson(lesson);
  expect(promptOf(lesson, run)).toMatchObject({ kind: 'watch', id: 'seen' });
  expect(() => answerPrompt(lesson, run, 3)).toThrow(/cannot be answered/);
  run = answerPrompt(lesson, run, null);
  expect(run.answers).toEqual([]);
  for (const wrong of [-1, 13, 'deep', [3]]) expect(() => answerPrompt(lesson, run, wrong as never)).toThrow(/where/);
  run = answerPrompt(lesson, run, 9);
  for (const wrong of [0.5, [0.5], [0.5, 2], [0.5, 0.5, 0.5]])
    expect(() => answerPrompt(lesson, run, wrong as never)).toThrow(/line/);
  run = answerPrompt(lesson, run, [0.7, 0.5]);
  expect(run.answers.map(({ answer }) => answer)).toEqual([9, [0.7, 0.5]]);
  expect(run.phases.map(({ id }) => id)).toEqual(['only']);
});
