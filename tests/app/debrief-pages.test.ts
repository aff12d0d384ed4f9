import { describe, expect, test } from 'vitest';
import { pageAfter, type ReadPart } from '../../src/app/debrief-pages.ts';

/** Parts below one another, so high each; negative: a heading. */
function stacked(...heights: readonly number[]): ReadPart[] {
  let top = 20;
  return heights.map((height) => {
    const part = { top, bottom: top + Math.abs(height), heads: height < 0 };
    top = part.bottom + 10;
    return part;
  });
}

describe('pageAfter()', () => {
  test('begins with what the page before did not show whole', () => {
    const parts = stacked(100, 200, 150, 120, 300);
    // 20–120, 130–330, 340–490, 500–620, 630–930
    expect(pageAfter(parts, 0, 500)).toBe(500 - 6);
    expect(pageAfter(parts, 486, 400)).toBe(630 - 6);
    expect(pageAfter(parts, 624, 500)).toBe(624);
  });

  test('a heading at the foot of a page goes over to the next one with what it heads', () => {
    const parts = stacked(300, -30, 250, 100);
    // 20–320, 330–360, 370–620
    expect(pageAfter(parts, 0, 400)).toBe(330 - 6);
  });

  test('what is higher than a page is read on, and nothing of it is left out', () => {
    const parts = stacked(1400, 100);
    const first = pageAfter(parts, 0, 500);
    expect(first).toBeGreaterThan(0);
    expect(first).toBeLessThanOrEqual(500);
    let [at, pages] = [0, 0];
    while (at + 500 < 1530 && pages++ < 10) {
      const next = pageAfter(parts, at, 500);
      expect(next - at).toBeGreaterThan(0);
      expect(next - at).toBeLessThanOrEqual(500);
      at = next;
    }
    expect(pages).toBeLessThan(6);
  });
});
