import { expect, test } from 'vitest';
import { liesFreest } from '../../src/app/hill-place.ts';

const boxes = {
  low: { left: 10, right: 300, top: 200, bottom: 400 },
  high: { left: 10, right: 300, top: 0, bottom: 190 },
};
/** A line from one place to another, a point every ten pixels. */
const line = (fromY: number, toY: number) =>
  Array.from({ length: 60 }, (_, i) => ({ x: i * 10, y: fromY + ((toY - fromY) * i) / 59 }));

test('liesFreest() leaves the foot to a line that is there, and the head to one that is there', () => {
  expect(liesFreest(line(300, 320), boxes, 'low')).toBe('high');
  expect(liesFreest(line(60, 80), boxes, 'high')).toBe('low');
});

test('liesFreest() stays where nothing is won by going', () => {
  const right = line(60, 320).filter(({ x }) => x > 320);
  for (const now of ['low', 'high'] as const) expect(liesFreest(right, boxes, now)).toBe(now);
});

test('liesFreest() chooses the place that hides less of a line that runs through both', () => {
  expect(liesFreest(line(20, 240), boxes, 'high')).toBe('low');
  expect(liesFreest(line(380, 100), boxes, 'low')).toBe('high');
});
