import { expect, test } from 'vitest';
import { heldBreaths } from '../../src/lesson/habits.ts';
import { hoverMark } from '../../src/lesson/hover-mark.ts';
import type { HoldGoal } from '../../src/lesson/lesson.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { evenly, madeUp, type Columns } from '../fixtures/lessons/made-up.ts';

// Expected values are worked out by hand from the formula: 100·G·Fin·Balance·[0.60 lin(RMS; 0.1, 1.5) + 0.20 share within
// ±0.5 m + 0.20 lin(T; 3, 10 L a minute)], window of 45 s from row 100.
const goal: HoldGoal = { kind: 'hold', atM: 8, bandM: 1, settleS: 10, forS: 45 };
const KGF_N = 9.80665;

function hover(columns: Columns, rows = 560) {
  const trace = traceOf({ rig, recording: madeUp(rows, { depthM: () => 8, ...columns }), changes: [] });
  return hoverMark(trace, goal, 0, heldBreaths(rig, trace));
}
const lost = (mark: ReturnType<typeof hover>, id: string) => mark.parts.find((part) => part.id === id)?.pointsLost;

test('hoverMark() gives 100 to a diver who is there, still and neutral', () => {
  const mark = hover({});
  expect(mark).toMatchObject({ score: 100, word: 'secure', ok: true });
  expect(mark.parts.every(({ pointsLost }) => pointsLost === 0)).toBe(true);
});

test('hoverMark() counts half a metre off as 82.86: RMS credit (1.5 − 0.5)/1.4', () => {
  const mark = hover({ depthM: () => 8.5 });
  expect(mark.score).toBeCloseTo(100 * (0.6 * (1 / 1.4) + 0.4), 9);
  expect(lost(mark, 'distance')).toBeCloseTo(100 * 0.6 * (0.4 / 1.4), 9);
  expect(mark.parts.find(({ id }) => id === 'distance')).toMatchObject({ raw: 0.5, good: 0.1, bad: 1.5, unit: 'm' });
});

test('hoverMark() gives half the points at least when all that was asked for is met', () => {
  const mark = hover({ depthM: () => 7.001 });
  expect(0.6 * (0.501 / 1.4) + 0.2).toBeLessThan(0.5);
  expect(mark).toMatchObject({ score: 50, word: 'nearly', ok: true });
  expect(lost(mark, 'floor')).toBeLessThan(0);
});

test('hoverMark() halves by the gate at two bands', () => {
  const mark = hover({ depthM: () => 10 });
  expect(mark.score).toBeCloseTo(100 * 0.5 * 0.2, 9);
  expect(mark).toMatchObject({ word: 'not yet', ok: false });
});

test('hoverMark() counts only the window: 10 s after the depth is reached, for its fixed length', () => {
  const outside = hover({ depthM: (row) => (row < 100 || row >= 550 ? 11 : 8) });
  expect(outside.score).toBe(100);
  const inside = hover({ depthM: (row) => (row < 101 ? 11 : 8) });
  expect(inside.score).toBeLessThan(100);
  expect(inside.parts.find(({ id }) => id === 'distance')?.atS).toBe(10);
});

test('hoverMark() counts a second on the bottom, or not recorded, as three bands', () => {
  const half = 100 * 0.5 * (0.2 * 0.5 + 0.2);
  expect(hover({ resting: (row) => (row >= 100 && row < 325 ? 1 : 0) }).score).toBeCloseTo(half, 9);
  expect(hover({}, 325).score).toBeCloseTo(half, 9);
});

test('hoverMark() counts what carries a diver between reaching the depth and the window as well', () => {
  // Five seconds more of three bands beside forty-five good ones: a tenth of the gate and of the half metre, RMS 3 m · √0.1.
  const mark = hover({ resting: (row) => (row < 50 ? 1 : 0) });
  const rms = 3 * Math.sqrt(0.1);
  expect(mark.score).toBeCloseTo(100 * 0.9 * (0.6 * ((1.5 - rms) / 1.4) + 0.2 * 0.9 + 0.2), 9);
});

test('hoverMark() counts a hand on the up-line as three bands', () => {
  const controls = { holdLine: 1 } as never;
  const trace = traceOf({ rig, recording: madeUp(560, { depthM: () => 8 }), changes: [{ tick: 0, controls }] });
  expect(rig.line).toBe(true);
  expect(hoverMark(trace, goal, 0, []).score).toBe(0);
});

test('hoverMark() takes fins by thrust: 0.0515 kgf would cost half, 0.035 a third, and still meets the task', () => {
  const mark = hover({ finsUpNs: evenly(0.035 * KGF_N * 55, 0, 550) });
  expect(mark.score).toBeCloseTo((100 * 0.065) / 0.097, 6);
  expect(mark.ok).toBe(true);
});

test('hoverMark() forgives a touch of the fins, takes two points at most for a tap, and counts what is sculled within the limit', () => {
  expect(hover({ finsUpNs: evenly(1.6, 100, 102) }).score).toBeCloseTo(100, 9);
  expect(hover({ finsUpNs: evenly(2.6, 100, 103) }).score).toBeGreaterThan(98);
  const sculled = hover({ finsUpNs: evenly(0.02 * KGF_N * 55, 0, 550) });
  expect(sculled.score).toBeCloseTo(100 - (100 * 0.017) / 0.097, 6);
});

test('hoverMark() caps at 45 above 20 N s of fins, up or down', () => {
  for (const name of ['finsUpNs', 'finsDownNs'] as const) {
    const mark = hover({ [name]: evenly(20.5, 100, 550) });
    expect(mark).toMatchObject({ score: 45, ok: false, word: 'not yet' });
  }
  const below = hover({ finsUpNs: evenly(19.9, 100, 550) });
  expect(below.parts.some(({ id }) => id === 'fins-in-hold')).toBe(false);
  expect(below.score).toBeGreaterThan(60);
});

test('hoverMark() counts fins from the moment the depth is reached: kicked into place before the window opens is 45 at most', () => {
  const mark = hover({ finsUpNs: evenly(25, 10, 60) });
  expect(mark).toMatchObject({ score: 45, ok: false });
  expect(mark.parts.find(({ id }) => id === 'fins-in-hold')?.atS).toBeLessThan(10);
});

test('hoverMark() caps at 45 when lead was let go by hand, and not when a hand lets it go after the end', () => {
  const letGo = (row: number) => {
    const changes = [0, 1].map((releaseMask) => ({ tick: releaseMask * row * 12, controls: { releaseMask } as never }));
    const trace = traceOf({ rig, recording: madeUp(600, { depthM: () => 8 }), changes });
    return hoverMark(trace, goal, 0, []);
  };
  expect(letGo(300)).toMatchObject({ score: 45, word: 'not yet' });
  expect(letGo(300).parts.at(-1)).toMatchObject({ id: 'lead-let-go', atS: 30 });
  expect(letGo(560).score).toBe(100);
});

test('hoverMark() lets no fins through by short bursts: 100 N for 5 % of the time is 0', () => {
  const impulse = (row: number) => Math.floor(row / 10) * 5 + Math.min(row % 10, 1) * 5;
  expect(hover({ finsUpNs: impulse }).score).toBe(0);
});

test('hoverMark() halves for 0.9 kg light or heavy at mid-breath', () => {
  for (const sign of [1, -1]) {
    const mark = hover({ midNetN: () => sign * 0.9 * KGF_N });
    expect(mark.score).toBeCloseTo(50, 9);
    expect(mark.parts.find(({ id }) => id === 'balance')?.reason).toContain(sign > 0 ? 'light' : 'heavy');
  }
});

test('hoverMark() counts gas to and fro by the minute: 5 L in and out of 45 s', () => {
  const mark = hover({ letInM3: evenly(5e-3, 100, 300), letOutM3: evenly(5e-3, 300, 550) });
  expect(mark.score).toBeCloseTo(100 * (0.8 + (0.2 * (10 - 5 / 0.75)) / 7), 6);
});

test('hoverMark() leaves gas that only went in, or only out, unpunished', () => {
  expect(hover({ letInM3: evenly(5e-3, 100, 300) }).score).toBe(100);
  expect(hover({ letOutM3: evenly(5e-3, 100, 300) }).score).toBe(100);
});

test('hoverMark() meets the task at 80 % in the band, and is at most 79 below', () => {
  const outFor = (rows: number) => hover({ depthM: (row) => (row >= 100 && row < 100 + rows ? 9.05 : 8) });
  expect(outFor(90).ok).toBe(true);
  const missed = outFor(91);
  expect(missed).toMatchObject({ ok: false, score: 79, word: 'nearly' });
  expect(missed.parts.at(-1)).toMatchObject({ id: 'ceiling' });
});

test('hoverMark() is 0 when a full breath is held while rising', () => {
  const swelling = (row: number) => (row < 200 ? 8 : Math.max(7.3, 8 - (row - 200) * 0.01));
  const mark = hover({ depthM: swelling, lungM3: () => 5e-3, lungMol: () => 0.3 });
  expect(mark.score).toBe(0);
  expect(mark.parts.at(-1)).toMatchObject({ id: 'breath-held' });
});
