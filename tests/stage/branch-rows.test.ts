import { describe, expect, test } from 'vitest';
import { branchRows, dashesOf, lastSeen } from '../../src/stage/branch-rows.ts';
import type { Frame } from '../../src/stage/geometry.ts';
import { diveAt } from './views.ts';

const dive = diveAt(8);
dive.advance(120 * 60);
const { recording } = dive;
const branch = { recording, fromS: 20, letter: 'A', words: 'A: on', dashed: false };
/** 100 pixels a metre, 15 a second: ten seconds to the right of now, twenty to the left. */
const frame = (nowS: number): Frame => {
  const topM = recording.at(nowS * 10, 'depthM') - 3;
  return { waterPx: 450, heightPx: 600, nowX: 300, nowS, pxPerM: 100, pxPerS: 15, topM, enlarged: 1 };
};

describe('other lines', () => {
  test('branchRows(): from the knot on, ahead of now too, never beyond the end', () => {
    expect(branchRows(branch, frame(20))[0]).toBe(200);
    expect(branchRows(branch, frame(20))[1]).toBeGreaterThanOrEqual(300);
    const [from, to] = branchRows(branch, frame(58));
    expect(from).toBeLessThanOrEqual(380);
    expect(from).toBeGreaterThan(300);
    expect(to).toBe(600);
  });

  test('lastSeen(): where the line leaves the water that is shown, or ends', () => {
    const row = lastSeen(branch, frame(20))!;
    expect(row / 10).toBeGreaterThan(20);
    expect(row / 10).toBeLessThanOrEqual(30);
    expect(lastSeen({ ...branch, fromS: 59 }, frame(20))).toBeUndefined();
  });

  test('dashesOf(): long strokes with gaps, the same wherever the piece of line begins', () => {
    const seconds = Array.from({ length: 101 }, (_, i) => i / 10);
    const depths = seconds.map((s) => s * 0.2);
    const dashes = dashesOf(seconds, depths, 2, 1);
    expect(dashes).toHaveLength(4);
    expect(dashes[0]!.slice(0, 2)).toEqual([0, 0]);
    expect(dashes[1]![0]).toBeCloseTo(3, 9);
    const later = dashesOf(seconds.slice(40), depths.slice(40), 2, 1);
    expect(later.at(-1)).toEqual(dashes.at(-1));
  });
});
