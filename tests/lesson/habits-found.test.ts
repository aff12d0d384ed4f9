import { expect, test } from 'vitest';
import type { ControlChange } from '../../src/dive/index.ts';
import { findHabits } from '../../src/lesson/find-habits.ts';
import type { HabitId } from '../../src/lesson/habit-kinds.ts';
import type { FlownPhase, LessonRun } from '../../src/lesson/run.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import { trialLesson } from '../../src/lesson/trials.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { evenly, madeUp, type Columns } from '../fixtures/lessons/made-up.ts';

// Dives that nobody dived, each with one habit or just without it. Limits are those of the definitions, worked out by hand.
const KGF_N = 9.80665;
const ROWS = 900;
type Press = readonly [way: 1 | -1, fromS: number, toS: number];

/** Controls of presses, in order of time. */
function changesOf(presses: readonly Press[]): ControlChange[] {
  const rest = { jacketAdd: 0, jacketVent: 0, oral: 0, suitAdd: 0, suitVent: 0, holdLine: 0, releaseMask: 0 };
  const at = (tS: number, controls: object) => ({ tick: Math.round(tS * 120), controls: controls as never });
  return [
    at(0, rest),
    ...presses.flatMap(([way, fromS, toS]) => [
      at(fromS, { ...rest, ...(way > 0 ? { jacketAdd: 1 } : { jacketVent: 2 }) }),
      at(toS, rest),
    ]),
  ];
}

/** Habits of a stretch of 90 s: a hold at 8 m, a hold at 5 m after a way up, a way up from 18 to 5 m, or down to 12 m. */
function found(
  kind: 'hold' | 'stop' | 'climb' | 'descent',
  columns: Columns,
  presses: readonly Press[] = [],
): HabitId[] {
  const task = kind === 'hold' ? 'hover' : kind === 'descent' ? 'descent' : 'ascent';
  const lesson = trialLesson(task, 1);
  const phase = (id: string, fromRow: number, toRow: number): FlownPhase => ({
    id,
    fromRow,
    toRow,
    reachedRow: fromRow,
    met: true,
    each: [],
    broken: [],
  });
  const phases =
    kind === 'hold'
      ? [phase('hover', 0, ROWS)]
      : kind === 'stop'
        ? [phase('ascent', 0, 50), phase('stop', 50, ROWS)]
        : [phase(kind === 'climb' ? 'ascent' : 'descent', 0, ROWS)];
  const depthM = columns.depthM!;
  const speedMps = (row: number) => (row === 0 ? 0 : (depthM(row) - depthM(row - 1)) * 10);
  const recording = madeUp(ROWS, { speedMps, jacketM3: () => 2e-3, ...columns });
  const flown = { rig, recording, changes: changesOf(presses) };
  const run = { phases } as unknown as LessonRun;
  return findHabits(lesson, run, flown, traceOf(flown)).map(({ id }) => id);
}
const light = (kgf: number) => () => kgf * KGF_N;
/** Up from 18 m at a rate, m/min, from a second on for so many seconds. */
const rising = (mpmin: number, fromS: number, forS: number) => (row: number) =>
  18 - (mpmin / 600) * Math.min(Math.max(0, row - fromS * 10), forS * 10);

test('a calm hold, a way up at 8 m/min and a way down at 12 have no habit', () => {
  expect(found('hold', { depthM: (row) => 8 + 0.3 * Math.sin(row / 60) })).toEqual([]);
  expect(found('climb', { depthM: rising(8, 0, 90) })).toEqual([]);
  expect(found('descent', { depthM: (row) => Math.min(12, 1.2 + row * 0.02) })).toEqual([]);
});

test('jacket as a lift: 2.5 L let in on the way up while not heavy', () => {
  const up = (litres: number, kgf: number) =>
    found('climb', { depthM: rising(8, 0, 90), letInM3: evenly(litres * 1e-3, 100, 300), midNetN: light(kgf) });
  expect(up(2.6, -0.1)).toContain('jacket-as-a-lift');
  expect(up(2.4, -0.1)).toEqual([]);
  expect(up(4, -0.3)).toEqual([]);
});

test('late or no venting: 1.2 m above the limit before gas goes out, light and with gas to let out', () => {
  const up = (columns: Columns) => found('climb', { depthM: rising(12, 5, 30), midNetN: light(1), ...columns });
  expect(up({})).toContain('vents-late');
  // The 3 s mean passes 9 m/min after 2.25 s of rising at 12: a vent then counts, one five seconds later does not.
  expect(up({ letOutM3: evenly(1e-3, 65, 120) })).toEqual([]);
  expect(up({ letOutM3: evenly(1e-3, 170, 200) })).toContain('vents-late');
  expect(up({ jacketM3: () => 0.2e-3 })).toEqual([]);
  expect(up({ midNetN: light(0.2) })).toEqual([]);
});

test('stop-and-go: four turns between fast up and sinking', () => {
  const wave = (turns: number) => (row: number) =>
    row < 75 * 2 * turns ? 12 + Math.cos((row * 2 * Math.PI) / 150) * 2 : 14;
  expect(found('climb', { depthM: wave(4) })).toContain('stop-and-go');
  expect(found('climb', { depthM: wave(1) })).not.toContain('stop-and-go');
});

test('everything let out at once: an empty jacket still vented near the top, and then too fast with no gas in between', () => {
  const depthM = (row: number) => (row < 100 ? 1.2 + row * 0.02 : Math.min(12, 3.2 + (row - 100) * 0.04));
  const down = (columns: Columns) =>
    found('descent', { depthM, jacketM3: () => 0.1e-3, midNetN: light(-1.5), ...columns }, [[-1, 2, 9]]);
  expect(down({})).toContain('all-vented-at-once');
  expect(down({ jacketM3: () => 0.4e-3 })).not.toContain('all-vented-at-once');
  expect(down({ letInM3: evenly(1e-3, 92, 105) })).not.toContain('all-vented-at-once');
  expect(down({ midNetN: light(-0.8) })).not.toContain('all-vented-at-once');
});

test('pressing until it moves: 1.2 s of gas that ends light, twice', () => {
  const held = (kgf: number, ...presses: Press[]) => found('hold', { depthM: () => 8, midNetN: light(kgf) }, presses);
  expect(held(0.8, [1, 10, 11.3], [1, 40, 41.5])).toContain('presses-until-it-moves');
  expect(held(0.8, [1, 10, 11.3])).toEqual([]);
  expect(held(0.8, [1, 10, 11], [1, 40, 41])).toEqual([]);
  expect(held(0.6, [1, 10, 11.3], [1, 40, 41.5])).toEqual([]);
});

test('presses that overshoot: light after the press and past the depth within 15 s, twice', () => {
  const depthM = (row: number) => 8 - (row % 400 > 200 ? 0.8 : 0);
  const presses: Press[] = [
    [1, 10, 10.5],
    [1, 50, 50.5],
  ];
  expect(found('hold', { depthM, midNetN: light(0.9) }, presses)).toContain('press-overshoots');
  expect(found('hold', { depthM, midNetN: light(0.9) }, presses.slice(1))).not.toContain('press-overshoots');
  expect(found('hold', { depthM, midNetN: light(0.7) }, presses)).not.toContain('press-overshoots');
});

test('up and down: four errors of 0.8 m by turns in 90 s', () => {
  const wave = (amountM: number) => (row: number) => 8 + amountM * Math.sin((row * 2 * Math.PI) / 400);
  expect(found('hold', { depthM: wave(0.9) })).toContain('up-and-down');
  expect(found('hold', { depthM: wave(0.7) })).not.toContain('up-and-down');
});

test('kicking while heavy: 60 N s upward within a minute', () => {
  const held = (impulse: number, kgf: number) =>
    found('hold', { depthM: () => 8, finsUpNs: evenly(impulse, 100, 500), midNetN: light(kgf) });
  expect(held(61, -0.2)).toContain('kicks-while-heavy');
  expect(held(59, -0.2)).toEqual([]);
  expect(held(200, 0)).toEqual([]);
});

test('the wrong button: an add while too shallow, rising and light, twice', () => {
  const depthM = (row: number) => 7.6 - 0.006 * (row % 100);
  const held = (...presses: Press[]) => found('hold', { depthM, midNetN: light(0.5) }, presses);
  expect(held([1, 12, 12.3], [1, 22, 22.3])).toContain('wrong-way');
  expect(held([1, 12, 12.3])).not.toContain('wrong-way');
  expect(held([-1, 12, 12.3], [-1, 22, 22.3])).not.toContain('wrong-way');
});

test('a late first action: the depth is left outward twice and neither hand nor breath answers', () => {
  // Down by 1 m at 4 m/min, back at the same rate, and again.
  const depthM = (row: number) => 8 + Math.abs(((row + 150) % 300) - 150) / 150;
  const still = { lungM3: () => 3.2e-3, lungMol: () => 0.2 };
  expect(found('hold', { depthM, ...still })).toContain('late-first-action');
  const answers = [0, 1, 2].map((i): Press => [1, 10 + 30 * i, 10.4 + 30 * i]);
  expect(found('hold', { depthM, ...still }, answers)).not.toContain('late-first-action');
  expect(found('hold', { depthM, lungM3: () => 3.6e-3, lungMol: () => 0.2 })).not.toContain('late-first-action');
});

test('a late first action: once is enough where nothing answers until 1.2 m off', () => {
  const still = { lungM3: () => 3.2e-3, lungMol: () => 0.2 };
  const drifts = (toM: number) => (row: number) => 8 + Math.min(Math.max(0, (row - 100) / 150), toM);
  expect(found('hold', { depthM: drifts(1.3), ...still })).toContain('late-first-action');
  expect(found('hold', { depthM: drifts(1.1), ...still })).not.toContain('late-first-action');
  // It is 0.7 m off after 20.5 s and 1.2 m after 28 s: a press between the two answers, one that comes after does not.
  expect(found('hold', { depthM: drifts(1.3), ...still }, [[1, 26, 26.4]])).not.toContain('late-first-action');
  expect(found('hold', { depthM: drifts(1.3), ...still }, [[1, 30, 30.4]])).toContain('late-first-action');
});

test('no use of the breath: lungs that stay full or empty are in use', () => {
  const depthM = (row: number) => (row > 300 && row < 700 ? 8.6 : 8);
  const about = (litres: number) => (row: number) => litres * 1e-3 + 0.5e-3 * Math.sin((2 * Math.PI * row) / 60);
  expect(found('hold', { depthM, lungM3: about(3.3) })).toContain('no-breath');
  expect(found('hold', { depthM, lungM3: about(4) })).not.toContain('no-breath');
});

test('no use of the breath: 20 s off the depth, and the lungs do not answer', () => {
  const depthM = (row: number) => (row > 300 && row < 700 ? 8.6 : 8);
  expect(found('hold', { depthM })).toContain('no-breath');
  expect(found('hold', { depthM: (row) => (row > 300 && row < 480 ? 8.6 : 8) })).not.toContain('no-breath');
  const answering = (row: number) => 3.2e-3 + (row > 500 ? 0.6e-3 : 0) + 0.5e-3 * Math.sin((2 * Math.PI * row) / 60);
  expect(found('hold', { depthM, lungM3: answering })).not.toContain('no-breath');
});

test('the stop left early: one and a half bands above it for 3 s, and only after a way up', () => {
  const depthM = (forRows: number) => (row: number) =>
    row < 50 ? 18 - row * 0.012 : row > 400 && row < 400 + forRows ? 3.4 : 5;
  expect(found('stop', { depthM: depthM(40) })).toContain('stop-left-early');
  expect(found('stop', { depthM: depthM(20) })).not.toContain('stop-left-early');
  expect(found('hold', { depthM: (row) => (row > 400 && row < 500 ? 6.4 : 8) })).not.toContain('stop-left-early');
});
