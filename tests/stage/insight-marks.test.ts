// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { arrowStepM, barKg, crossingsM, greatestKgf, pxPerKgfOf } from '../../src/stage/force-scale.ts';
import type { Frame } from '../../src/stage/geometry.ts';
import { styleOf } from '../../src/stage/layout.ts';
import { Camera } from '../../src/stage/camera.ts';
import { crowdOf, groupsOf, ledgePlace, ledgeWords, middleOf } from '../../src/stage/ledge-places.ts';
import { wordsOf } from '../../src/stage/neutral-signs.ts';
import { placesBeside, placesLeftOf } from '../../src/stage/plate.ts';
import { madeUpMap, mapOverlay } from './insight-views.ts';
import { viewOf } from './views.ts';

test('pxPerKgfOf() never lets an arrow outgrow the one on the diver, and keeps nearly all within the room between two', () => {
  expect(pxPerKgfOf(0.3, 60, 46)).toBe(46);
  for (const greatest of [0.7, 1.9, 4, 7.7, 15]) {
    const px = pxPerKgfOf(greatest, 60, 46);
    expect(px).toBeLessThanOrEqual(46);
    expect(px * greatest * 0.8).toBeLessThanOrEqual(60 + 1e-9);
    // Not smaller than it need be by more than a step of the scale.
    expect(px * greatest).toBeGreaterThan(60 * 0.5);
  }
});

test('arrowStepM() and barKg() are the least whole steps that are long enough', () => {
  expect(arrowStepM(81, 44)).toBe(1);
  expect(arrowStepM(35, 44)).toBe(2);
  expect(arrowStepM(11, 44)).toBe(5);
  expect(barKg(46, 14)).toBe(1);
  expect(barKg(6, 14)).toBe(5);
});

test('crossingsM() finds where a straight run of forces changes its sign, and nothing where it does not', () => {
  const arrows = Array.from({ length: 12 }, (_, m) => ({ depthM: m, netN: 3 * (4.25 - m) }));
  expect(crossingsM(arrows)).toHaveLength(1);
  expect(crossingsM(arrows)[0]).toBeCloseTo(4.25, 12);
  expect(crossingsM(arrows.slice(5))).toEqual([]);
});

test('greatestKgf() looks at the picture alone, in whole five metres', () => {
  const arrows = Array.from({ length: 31 }, (_, m) => ({ depthM: m, netN: -9.80665 * m }));
  expect(greatestKgf(arrows, 6, 11)).toBeCloseTo(15, 12);
  expect(greatestKgf(arrows, 6.4, 11.3)).toBe(greatestKgf(arrows, 6, 11));
});

const frame: Frame = {
  waterPx: 900,
  heightPx: 400,
  nowX: 600,
  nowS: 50,
  pxPerM: 40,
  pxPerS: 6,
  topM: 3,
  enlarged: 1,
};
const within = { left: 5, top: 30, right: 895, bottom: 395 };

test('ledgePlace() stands on time and depth of the dive, or at the edge behind which it lies', () => {
  expect(ledgePlace({ words: '', atS: 60, depthM: 8 }, frame, within)).toEqual({ x: 660, y: 200, off: null });
  expect(ledgePlace({ words: '', atS: 150, depthM: 8 }, frame, within)).toEqual({ x: 895, y: 200, off: 'later' });
  expect(ledgePlace({ words: '', atS: 60, depthM: 21 }, frame, within)).toEqual({ x: 660, y: 395, off: 'deeper' });
  expect(ledgePlace({ words: '', atS: 60, depthM: 1 }, frame, within).off).toBe('shallower');
});

test('ledgeWords() say when, where the picture cannot show it, and only there', () => {
  const near = { words: 'breath: 8.0 m', atS: 60, depthM: 8 };
  const far = { words: 'jacket: 21 m', atS: 74, depthM: 21 };
  expect(ledgeWords(near, ledgePlace(near, frame, within), 50)).toBe('breath: 8.0 m');
  expect(ledgeWords(far, ledgePlace(far, frame, within), 50)).toBe('jacket: 21 m, in 24 s');
});

test('groupsOf() puts every ledge into one group, close ones together from the top down, and middleOf() reaches all of them', () => {
  const at = (x: number, y: number, off: 'deeper' | null = null) => ({ x, y, off });
  const places = [at(640, 220), at(650, 205), at(700, 330), at(610, 395, 'deeper'), at(890, 395, 'deeper')];
  expect(groupsOf(places, 20)).toEqual([[1, 0], [2], [3, 4]]);
  expect(groupsOf(places, 5)).toEqual([[1], [0], [2], [3, 4]]);
  const { x, y, spread } = middleOf([places[0]!, places[1]!]);
  for (const place of [places[0]!, places[1]!]) expect(Math.abs(place.x - x)).toBeLessThanOrEqual(spread);
  expect(y).toBe(212.5);
});

test('crowdOf() leaves a pile one rim and one row of supports, in the order in which the diver comes to its ledges', () => {
  const at = (x: number, y: number) => ({ x, y, off: null });
  const pile = [at(100, 60), at(104, 48), at(102, 55), at(300, 55)];
  for (const way of [1, -1] as const) {
    const crowds = pile.map((_, i) => crowdOf(pile, i, way, 14));
    expect(crowds.slice(0, 3).filter(({ before }) => !before)).toHaveLength(1);
    expect(crowds.slice(0, 3).filter(({ beyond }) => !beyond)).toHaveLength(1);
    expect(crowds[way === 1 ? 0 : 1]).toEqual({ before: true, beyond: false });
    expect(crowds[3]).toEqual({ before: false, beyond: false });
  }
  // Two at the very same place are a pile of two.
  const same = [at(10, 10), at(10, 10)].map((_, i, both) => crowdOf(both, i, 1, 14));
  expect(same).toEqual([
    { before: false, beyond: true },
    { before: true, beyond: false },
  ]);
});

test('wordsOf() a neutral depth tell a hilltop from a hollow', () => {
  expect(wordsOf({ depthM: 9.43, stable: false })[0]).toBe("neutral 9.4 m, won't hold");
  expect(wordsOf({ depthM: 9.43, stable: true })[0]).toBe('neutral 9.4 m, holds');
});

test('placesBeside() and placesLeftOf() keep off what they stand beside and try the nearest first', () => {
  const size = [80, 18] as const;
  const places = placesBeside(300, 200, 25, size);
  for (const box of places) {
    expect(box.left >= 325 || box.right <= 275).toBe(true);
    expect(box.right - box.left).toBeCloseTo(80, 9);
  }
  expect(places[0]).toEqual({ left: 325, top: 191, right: 405, bottom: 209 });
  for (const box of placesLeftOf(300, 200, size, 1)) expect(box.right).toBe(300);
});

for (const [width, height, projector] of [
  [1095, 488, false],
  [1480, 930, true],
  [360, 368, false],
] as const)
  test(`a map on ${width}×${height} has room before the scale, and the metres asked for show above its axis`, () => {
    const style = styleOf(width, height, 1, 'light', projector, true);
    expect(style.freePx).toBeGreaterThan(style.nowX);
    expect(style.waterPx - style.freePx).toBeGreaterThanOrEqual(Math.min(230, width * 0.33));
    const overlay = mapOverlay([madeUpMap(5e-3, 8)]);
    const frame = new Camera().frame(viewOf({ depthM: 8, metresShown: 14, overlay }), style);
    expect((height - style.footPx) / frame.pxPerM).toBeGreaterThanOrEqual(14 - 1e-9);
  });
