// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { eventWords, inOneGo } from '../../src/stage/event-words.ts';
import { PLACE_ALPHA, contrastOf, mixed, tokensOf } from '../../src/stage/tokens.ts';
import { awayFrom, isFree, placesAround, placesNear } from '../../src/stage/words-place.ts';
import { elbow, hull, lobe, rib } from '../../src/stage/figure-shape.ts';

for (const theme of ['light', 'dark'] as const) {
  const tokens = tokensOf(theme);

  test(`tokensOf(${theme}) reads at 7:1 on paper and at 4.5:1 on water, and shapes stand out at 3:1`, () => {
    for (const ink of [tokens.ink, tokens.gasWords, tokens.placeWords, tokens.secondary])
      expect(contrastOf(ink, tokens.paper)).toBeGreaterThanOrEqual(7);
    for (const water of [tokens.waterTop, tokens.waterBottom]) {
      const green = mixed(water, tokens.place, PLACE_ALPHA);
      for (const words of [tokens.ink, tokens.secondary, tokens.placeWords, tokens.forceUp, tokens.forceDown])
        expect(contrastOf(words, water)).toBeGreaterThanOrEqual(4.5);
      expect(contrastOf(tokens.placeWords, green)).toBeGreaterThanOrEqual(4.5);
      expect(contrastOf(tokens.ink, green)).toBeGreaterThanOrEqual(4.5);
    }
    // Amber has an ink outline, and the outline stands out from the gas within.
    expect(contrastOf(tokens.ink, tokens.ground)).toBeGreaterThanOrEqual(4.5);
    expect(contrastOf(tokens.gas, tokens.ink)).toBeGreaterThanOrEqual(theme === 'light' ? 3 : 1.5);
  });
}

test('contrastOf() gives the published extremes', () => {
  expect(contrastOf(0x000000, 0xffffff)).toBeCloseTo(21, 10);
  expect(contrastOf(0x777777, 0xffffff)).toBeCloseTo(4.48, 2);
});

test('eventWords() names what the picture cannot show by itself', () => {
  expect(eventWords({ tick: 0, kind: 'lead-released', massKg: 1.7300000001 })).toBe('1.73 kg let go');
  expect(eventWords({ tick: 0, kind: 'head-out' })).toBeUndefined();
  expect(eventWords({ tick: 0, kind: 'nudged-up' })).toBe('nudge upwards');
  expect(eventWords({ tick: 0, kind: 'down-current' })).toBe('down-current');
  expect(eventWords({ tick: 0, kind: 'gas-lost', massKg: 2.1 })).toBe('gas low');
});

test('placesAround() offers places of the size asked for, off the point and the nearest first, in all directions', () => {
  const places = placesAround(120, 20, 9);
  const away = places.map((box) => awayFrom(box, 0, 0));
  for (const [i, { left, top, right, bottom }] of places.entries()) {
    expect(right - left).toBeCloseTo(120, 9);
    expect(bottom - top).toBeCloseTo(20, 9);
    expect(away[i]).toBeGreaterThanOrEqual(9);
    // Level with a point, or to its right, counts as a line and a half nearer at most.
    expect(away[i]! - Math.min(...away.slice(i))).toBeLessThanOrEqual(30);
  }
  expect(places[0]!.left).toBeGreaterThan(0);
  expect(places.some(({ right }) => right < 0)).toBe(true);
  expect(places.some(({ top }) => top > 0) && places.some(({ bottom }) => bottom < 0)).toBe(true);
});

test('placesNear() offers places of the size asked for, and isFree() refuses what crosses a line or a box', () => {
  const within = { left: 0, top: 0, right: 400, bottom: 300 };
  const boxes = [{ left: 205, top: 90, right: 300, bottom: 110 }];
  const lines = [{ y: 130, fromX: 0 }];
  const places = placesNear(200, 100, 120, 20, within, 9);
  const free = places.filter((box) => isFree(box, { boxes, lines, within }));
  expect(free.length).toBeGreaterThan(0);
  for (const box of places) expect([box.right - box.left, box.bottom - box.top].map(Math.round)).toEqual([120, 20]);
  for (const box of free) {
    expect(box.bottom <= 130 || box.top >= 130).toBe(true);
    expect(box.right <= 205 || box.left >= 300 || box.bottom <= 90 || box.top >= 110).toBe(true);
  }
  expect(isFree({ left: 10, top: 120, right: 50, bottom: 140 }, { boxes: [], lines, within })).toBe(false);
  expect(
    isFree({ left: 10, top: 120, right: 50, bottom: 140 }, { boxes: [], lines: [{ y: 130, fromX: 60 }], within }),
  ).toBe(true);
});

/** Area of a polygon, by the shoelace law. */
function areaOf(points: readonly number[]): number {
  let twice = 0;
  for (let i = 0; i < points.length; i += 2) {
    const j = (i + 2) % points.length;
    twice += points[i]! * points[j + 1]! - points[j]! * points[i + 1]!;
  }
  return Math.abs(twice) / 2;
}

test('lobe() has the area asked for, so that volumes compare', () => {
  for (const area of [0.01, 0.03, 0.06]) expect(areaOf(lobe({ x: 0.1, y: 0 }, 0.15, area)) / area).toBeCloseTo(1, 1);
  expect(areaOf(lobe({ x: 0, y: 0 }, 0.2, 0.04)) / areaOf(lobe({ x: 3, y: 1 }, 0.1, 0.01))).toBeCloseTo(4, 10);
});

test('hull() surrounds its spine', () => {
  const points = hull([rib(0, 0, 0.1), rib(1, 0, 0.1)]);
  expect(areaOf(points)).toBeGreaterThan(0.2);
  expect(areaOf(points)).toBeLessThan(0.2 + Math.PI * 0.01 + 1e-9);
});

test('elbow() lies a bone from the shoulder and a bone from the hand', () => {
  const joint = elbow({ x: 0, y: 0 }, { x: 0.3, y: 0.1 }, 0.2, 0.22);
  expect(Math.hypot(joint.x, joint.y)).toBeCloseTo(0.2, 12);
  expect(Math.hypot(joint.x - 0.3, joint.y - 0.1)).toBeCloseTo(0.22, 12);
});

test('inOneGo() adds up lead that goes the same way within a second of the piece before, and nothing else', () => {
  const off = (tick: number) => ({ tick, kind: 'lead-taken-off', massKg: 0.5 }) as const;
  const on = { tick: 250, kind: 'lead-put-on', massKg: 0.5 } as const;
  const events = [off(0), off(200), off(240), on, off(300), off(900)];
  expect(inOneGo(events, 4).massKg).toBe(1.5);
  expect(inOneGo(events, 3).massKg).toBe(0.5);
  expect(inOneGo(events, 5).massKg).toBe(0.5);
  expect(inOneGo([{ tick: 0, kind: 'head-out' }], 0).massKg).toBeUndefined();
});
