// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { areasOf } from '../../src/stage/map-areas.ts';
import { asidePlace } from '../../src/stage/map-aside-place.ts';
import { beyondOf } from '../../src/stage/map-beyond.ts';
import { uprightOf, type Shape } from '../../src/stage/map-shape.ts';
import { crosses, type Box } from '../../src/stage/words-place.ts';
import { madeUpMap } from './insight-views.ts';

/** The made-up map, so many pixels wide, at so many pixels a metre. */
function shapesOf(widthPx: number, pxPerM: number): Shape[] {
  const most = 14e-3;
  return areasOf(madeUpMap(5e-3, 8)).map(({ across, topsM, bottomsM }) => ({
    xs: across.map((m3) => (m3 / most) * widthPx),
    tops: topsM.map((m) => m * pxPerM),
    bottoms: bottomsM.map((m) => m * pxPerM),
  }));
}

for (const [widthPx, pxPerM, size] of [
  [250, 13, [86, 19]],
  [132, 7, [84, 19]],
  [330, 22, [180, 38]],
] as const)
  test(`asidePlace() on ${widthPx} px: a level or upright hair from the area to free words, off hair and dot`, () => {
    const shapes = shapesOf(widthPx, pxPerM);
    const seen = { top: 0, bottom: 30 * pxPerM, hair: 8 * pxPerM, dots: [] };
    const dot: Box = { left: 79, top: 8 * pxPerM - 10, right: 99, bottom: 8 * pxPerM + 10 };
    let found = 0;
    for (const shape of shapes) {
      const aside = asidePlace({ shape, shapes, size, seen, taken: [dot], unit: 1, before: undefined });
      if (!aside) continue;
      found++;
      const { box, hair, from, to } = aside;
      expect(from[0] === to[0] || from[1] === to[1]).toBe(true);
      const [top, bottom] = uprightOf(shape, from[0])!;
      expect(from[1]).toBeGreaterThanOrEqual(top);
      expect(from[1]).toBeLessThanOrEqual(bottom);
      expect(crosses(box, dot) || crosses(hair, dot)).toBe(false);
      expect(box.bottom <= seen.hair || box.top >= seen.hair).toBe(true);
      expect(box.left >= 0 && box.right <= widthPx && box.top >= seen.top && box.bottom <= seen.bottom).toBe(true);
      // The same place while it is good.
      expect(asidePlace({ shape, shapes, size, seen, taken: [dot], unit: 1, before: aside })).toBe(aside);
    }
    expect(found).toBeGreaterThan(shapes.length / 2);
  });

test('beyondOf() names the water that a map leaves out, and is silent where it reaches from surface to ground', () => {
  expect(beyondOf({ topM: -0.4, bottomM: 29.8 }, 30)).toEqual([]);
  expect(beyondOf({ topM: 22, bottomM: 29.8 }, 30)).toEqual([
    { fromM: 0, toM: 22, edgeM: 22, words: 'reckoned from 22 m down' },
  ]);
  expect(beyondOf({ topM: 0.6, bottomM: 8.62 }, 30)).toEqual([
    { fromM: 8.62, toM: 30, edgeM: 8.62, words: 'reckoned down to 8.6 m' },
  ]);
});
