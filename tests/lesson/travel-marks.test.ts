import { expect, test } from 'vitest';
import { ascentMark } from '../../src/lesson/ascent-mark.ts';
import type { AscentTask } from '../../src/lesson/ascent-terms.ts';
import { descentMark } from '../../src/lesson/descent-mark.ts';
import type { HoldGoal } from '../../src/lesson/lesson.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { evenly, madeUp, type Columns } from '../fixtures/lessons/made-up.ts';

const KGF_N = 9.80665;
const trace = (rows: number, columns: Columns) => traceOf({ rig, recording: madeUp(rows, columns), changes: [] });

// Down from 0 to 8 m at a given rate, then there for ever. Reached at 7 m.
const below: HoldGoal = { kind: 'hold', atM: 8, bandM: 1, settleS: 10, forS: 45 };
function descent(mpmin: number, columns: Columns = {}) {
  const reachedRow = Math.ceil((7 / mpmin) * 600);
  const depthM = (row: number) => Math.min(8, (row * mpmin) / 600);
  return descentMark(trace(reachedRow + 560, { depthM, ...columns }), 0, below, reachedRow, []);
}

test('descentMark() gives 100 at 18 m/min and loses a sixth of a quarter at 20', () => {
  expect(descent(18)).toMatchObject({ ok: true });
  expect(descent(18).score).toBeCloseTo(100, 9);
  const fast = descent(20);
  expect(fast.parts.find(({ id }) => id === 'peak-rate')?.pointsLost).toBeCloseTo(25 / 6, 9);
  expect(fast).toMatchObject({ ok: false, score: 79 });
});

test('descentMark() counts gas that was let in and out again: 7 L cost half of a quarter', () => {
  const mark = descent(15, { letInM3: evenly(7e-3, 50, 100), letOutM3: evenly(9e-3, 150, 300) });
  expect(mark.score).toBeCloseTo(100 - 12.5, 6);
});

test('descentMark() does not count the gas that the dive began with', () => {
  expect(descent(15, { letOutM3: evenly(8e-3, 0, 100) }).score).toBeCloseTo(100, 9);
});

test('descentMark() counts fins against the way and not with it', () => {
  const reachedRow = Math.ceil((7 / 15) * 600);
  const impulse = evenly((0.0515 * KGF_N * reachedRow) / 10, 0, reachedRow);
  expect(descent(15, { finsUpNs: impulse }).score).toBeCloseTo(50, 6);
  expect(descent(15, { finsDownNs: impulse }).score).toBeCloseTo(100, 6);
});

test('descentMark() and ascentMark() take an imbalance of 0.9 kgf in the hold for half: the lungs carried it', () => {
  const midNetN = () => -0.9 * KGF_N;
  expect(descent(15, { midNetN }).score).toBeCloseTo(50, 6);
  expect(part(ascent(9, 9, { midNetN }), 'balance').pointsLost).toBeCloseTo(50, 6);
});

test('descentMark() caps at 50 when the bottom is touched', () => {
  const mark = descent(15, { resting: (row) => (row === 150 ? 1 : 0) });
  expect(mark).toMatchObject({ score: 50, ok: false });
  expect(mark.criteria.find(({ id }) => id === 'bottom')).toMatchObject({ met: false, atS: 15 });
});

// At 8 m, from row 100 up to 5 m at a rate, 70 s there, then up at a rate of its own; out at 0.6 m.
const stop: HoldGoal = { kind: 'hold', atM: 5, bandM: 1, settleS: 10, forS: 60 };
function ascent(mpmin: number, lastMpmin: number, columns: Columns = {}, more: Partial<AscentTask> = {}) {
  const reachedRow = 100 + Math.ceil((2 / mpmin) * 600);
  const stopEnd = reachedRow + 700;
  const depthM = (row: number) => {
    if (row < stopEnd) return Math.max(5, 8 - Math.max(0, row - 100) * (mpmin / 600));
    return Math.max(0.3, 5 - (row - stopEnd) * (lastMpmin / 600));
  };
  const task = { fromRow: 100, stop, reachedRow, surfaceWithinS: 120, fastAscentIsThePoint: false, ...more };
  return ascentMark(trace(stopEnd + 1300, { depthM, ...columns }), task, []);
}
const part = (mark: ReturnType<typeof ascent>, id: string) => mark.parts.find((one) => one.id === id)!;

test('ascentMark() gives 100 at 9 m/min with a still stop', () => {
  const mark = ascent(9, 9);
  expect(mark).toMatchObject({ ok: true, word: 'secure' });
  expect(mark.score).toBeCloseTo(100, 9);
});

test('ascentMark() measures the climb above the limit: at 12 m/min over 3 m it is 0.6375 m', () => {
  // The 3 s mean of a climb of 15 s at 0.2 m/s: 12 s at 0.05 above the limit, and two triangles of 0.75 s.
  expect(part(ascent(12, 8), 'excess-climb').raw).toBeCloseTo(12 * 0.05 + 2 * (0.75 * 0.05) * 0.5, 2);
});

test('ascentMark() counts the last metres like the others', () => {
  const fast = ascent(8, 16);
  expect(part(fast, 'excess-climb').raw).toBeGreaterThan(1);
  expect(fast.ok).toBe(false);
});

test('ascentMark() caps at 49 above 18 m/min over 3 s, unless a fast ascent is the point', () => {
  expect(ascent(8, 19).score).toBeLessThanOrEqual(49);
  expect(part(ascent(8, 19), 'fast').raw).toBeCloseTo(19, 6);
  const meant = ascent(8, 19, {}, { fastAscentIsThePoint: true });
  expect(meant.parts.some(({ id }) => id === 'fast')).toBe(false);
  expect(meant.score).toBeGreaterThan(49);
});

test('ascentMark() takes excess and peak as bad when nobody surfaces in time', () => {
  const stayed = ascent(9, 0.01);
  expect(part(stayed, 'excess-climb')).toMatchObject({ raw: 5, pointsLost: 40 });
  expect(part(stayed, 'peak-rate').pointsLost).toBeCloseTo(5, 9);
  expect(stayed.criteria.find(({ id }) => id === 'surfaced')).toMatchObject({ met: false });
  expect(stayed.score).toBeLessThanOrEqual(50);
});

test('ascentMark() gives all for the pace from half the limit on, ten seconds to begin with let pass, and none at a quarter', () => {
  const pace = (mpmin: number) => part(ascent(mpmin, 8), 'pace');
  expect(pace(9).pointsLost).toBeCloseTo(0, 9);
  // Two metres up to the band: at 3 m/min they take 40 s, of which 30 count.
  expect(pace(3)).toMatchObject({ good: 4.5, bad: 2.25 });
  expect(pace(3).raw).toBeCloseTo(4, 9);
  expect(pace(3).pointsLost).toBeCloseTo((5 * 0.5) / 2.25, 9);
  expect(pace(1.5).pointsLost).toBeCloseTo(5, 9);
  // Whoever is there already has no way to be slow on.
  const there = (row: number) => (row < 940 ? 5 : Math.max(0.3, 5 - (row - 940) * (8 / 600)));
  expect(part(ascent(9, 8, { depthM: there }), 'pace').pointsLost).toBe(0);
});

test("ascentMark() caps at 25 for a head out before the stop's end", () => {
  const depthM = (row: number) => (row < 500 ? 5 : row < 560 ? 0.5 : row < 1100 ? 5 : 0.3);
  const mark = ascent(9, 9, { depthM });
  expect(mark.score).toBeLessThanOrEqual(25);
  expect(mark.criteria.find(({ id }) => id === 'stayed')).toMatchObject({ met: false });
});

test('ascentMark() takes braking with fins for what it is', () => {
  const braking = (row: number) => Math.max(0, row - 100) * 0.1 * 0.2 * KGF_N;
  expect(ascent(9, 9, { finsDownNs: braking }).score).toBe(0);
});

test('ascentMark() never gives more for a faster climb', () => {
  let before = Infinity;
  for (let mpmin = 6; mpmin <= 40; mpmin += 1) {
    const { score } = ascent(mpmin, 8);
    expect(score, `${mpmin} m/min`).toBeLessThanOrEqual(before + 1e-9);
    before = score;
  }
  expect(before).toBeLessThan(50);
});
