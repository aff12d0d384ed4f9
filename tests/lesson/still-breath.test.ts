import { expect, test } from 'vitest';
import { ascentMark } from '../../src/lesson/ascent-mark.ts';
import { descentMark } from '../../src/lesson/descent-mark.ts';
import { hoverMark } from '../../src/lesson/hover-mark.ts';
import type { HoldGoal } from '../../src/lesson/lesson.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { madeUp, type Columns } from '../fixtures/lessons/made-up.ts';

const goal: HoldGoal = { kind: 'hold', atM: 8, bandM: 1, settleS: 10, forS: 45 };
const wave = (row: number) => 3.2e-3 + 0.5e-3 * Math.sin((2 * Math.PI * row) / 60);
/** Breathes but for a stretch of rows, in which the lungs stay as they are. */
const stops = (from: number, to: number) => (row: number) => (row >= from && row < to ? wave(from) : wave(row));

/** A still hover at 8 m under controls of one breathing: 0 automatic, 1 by the diver's own will, 2 held. */
function trace(breath: number, columns: Columns) {
  const changes = [{ tick: 0, controls: { breath, holdLine: 0, releaseMask: 0 } as never }];
  return traceOf({ rig, recording: madeUp(560, { depthM: () => 8, ...columns }), changes });
}
const lungs = (lungM3: (row: number) => number): Columns => ({ lungM3, lungMol: (row) => lungM3(row) * 60 });
const hover = (breath: number, columns: Columns) => hoverMark(trace(breath, columns), goal, 0, []);

test('a breath that stands still for seventeen seconds keeps every mark from secure, and says for how long', () => {
  const still = lungs(stops(200, 371));
  expect(hover(1, still)).toMatchObject({ score: 79, word: 'nearly', ok: true });
  const cap = hover(1, still).parts.find(({ id }) => id === 'breath-still')!;
  expect(cap.raw).toBeGreaterThanOrEqual(17);
  expect(cap.raw).toBeLessThan(22);
  expect(cap.reason).toMatch(/^For (17|18|19|20|21) s in all you hardly breathed/);
  expect(descentMark(trace(1, still), 0, goal, 0, []).score).toBe(79);
  const ascent = { fromRow: 0, stop: goal, reachedRow: 0, surfaceWithinS: 10, fastAscentIsThePoint: false };
  expect(ascentMark(trace(1, still), ascent, []).parts.some(({ id }) => id === 'breath-still')).toBe(true);
});

test('a closed airway counts by its gas, though the lungs swell', () => {
  const lungM3 = (row: number) => 3e-3 + row * 1e-6;
  expect(hover(2, { lungM3, lungMol: () => 0.2 }).score).toBe(79);
});

test('sips of three tenths of a litre count as none, a breath of a litre every twelve seconds as breathing', () => {
  const breaths = (litres: number, everyS: number) => (row: number) =>
    3.2e-3 + 0.5e-3 * litres * Math.sin((2 * Math.PI * row) / (10 * everyS));
  expect(hover(1, lungs(breaths(0.3, 3))).score).toBe(79);
  expect(hover(1, lungs(breaths(1, 12))).score).toBeCloseTo(100, 9);
});

test('pauses count together, each of five seconds and more, up to fifteen seconds in all', () => {
  expect(hover(1, lungs(stops(200, 310))).score).toBeCloseTo(100, 9);
  const twice = (row: number) => (row < 300 ? stops(150, 230)(row) : stops(400, 480)(row));
  expect(hover(1, lungs(twice)).score).toBe(79);
  const sixShort = (row: number) => stops(50 * Math.floor(row / 80), 50 * Math.floor(row / 80) + 30)(row);
  expect(hover(1, lungs(sixShort)).score).toBeCloseTo(100, 9);
});

test('who breathes, breathes by himself however slowly, or has his head out is never said to stand still', () => {
  expect(hover(1, {}).score).toBeCloseTo(100, 9);
  expect(hover(0, lungs(stops(100, 500))).score).toBeCloseTo(100, 9);
  const out = hover(1, { depthM: (row) => (row >= 180 && row < 390 ? 0.4 : 8), ...lungs(stops(200, 371)) });
  expect(out.parts.some(({ id }) => id === 'breath-still')).toBe(false);
});
