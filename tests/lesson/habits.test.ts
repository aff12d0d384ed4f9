import { expect, test } from 'vitest';
import { heldBreaths } from '../../src/lesson/habits.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { madeUp, type Columns } from '../fixtures/lessons/made-up.ts';

const found = (columns: Columns) => heldBreaths(rig, traceOf({ rig, recording: madeUp(300, columns), changes: [] }));
const MOL_PER_M3 = 60;
/** Up by 0.7 m in 14 s, from the 10th second on. */
const rising = (row: number) => 6 - Math.min(0.7, Math.max(0, row - 100) * 0.005);
const full = { lungM3: () => 5e-3, lungMol: () => 5e-3 * MOL_PER_M3 };

test('heldBreaths() finds a full breath that is held while rising half a metre', () => {
  const [first, ...others] = found({ depthM: rising, ...full });
  expect(others).toEqual([]);
  expect(first?.risenM).toBeCloseTo(0.7, 9);
  expect(first?.to).toBe(300);
});

test('heldBreaths() finds held gas that swells: the volume alone would hide it', () => {
  const depthM = (row: number) => 6 - Math.min(4, Math.max(0, row - 100) * 0.02);
  const lungM3 = (row: number) => (5e-3 * 16) / (10 + depthM(row));
  expect(lungM3(299) - lungM3(0)).toBeGreaterThan(0.3e-3);
  expect(found({ depthM, lungM3, lungMol: () => 0.3 })).toHaveLength(1);
});

test('heldBreaths() leaves breathing alone, however far somebody rises', () => {
  expect(found({ depthM: (row) => 9 - row * 0.02 })).toEqual([]);
});

test('heldBreaths() leaves a breath alone that is held at one depth, or while sinking', () => {
  expect(found({ depthM: () => 6, ...full })).toEqual([]);
  expect(found({ depthM: (row) => 6 + row * 0.01, ...full })).toEqual([]);
});

test('heldBreaths() leaves lungs alone that are not full: 0.3 L above mid-breath', () => {
  const half = (lungM3: number) => ({ lungM3: () => lungM3, lungMol: () => lungM3 * MOL_PER_M3 });
  expect(found({ depthM: rising, ...half(3.45e-3) })).toEqual([]);
  expect(found({ depthM: rising, ...half(3.55e-3) })).toHaveLength(1);
});

test('heldBreaths() looks only under water', () => {
  expect(found({ depthM: (row) => rising(row) - 5.45, ...full })).toEqual([]);
});

test('heldBreaths() wants five seconds', () => {
  const lungM3 = (row: number) => (row % 48 < 24 ? 5e-3 : 4.8e-3);
  const depthM = (row: number) => 9 - row * 0.02;
  expect(found({ depthM, lungM3, lungMol: (row) => lungM3(row) * MOL_PER_M3 })).toEqual([]);
});
