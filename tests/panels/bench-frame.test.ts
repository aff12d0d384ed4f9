// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import type { TankView } from '../../src/bench/index.ts';
import { frameOf, xPx, yPx } from '../../src/panels/bench-frame.ts';

const hull = [
  { xM: 0, yM: 0 },
  { xM: 0.1, yM: 0.1 },
];
const TANK = {
  set: 'stones',
  hookYM: null,
  spoutYM: 0.1,
  widthM: 0.6,
  heightM: 0.3,
  things: [{ thing: { hull }, at: { xM: 0.3, yM: -0.1 } }],
} as unknown as TankView;

test.each([1, 40, 120, 320, 1280])(
  'frameOf() in %i px of width draws no tank that is less wide or high than nothing',
  (widePx) => {
    for (const highPx of [1, 200, 700]) {
      const frame = frameOf(TANK, widePx, highPx);
      expect(xPx(frame, TANK.widthM)).toBeGreaterThan(xPx(frame, 0));
      expect(yPx(frame, TANK.heightM)).toBeGreaterThan(yPx(frame, 0));
    }
  },
);

test('frameOf() gives a tank with room all of it: both walls lie within the picture, and its foot too', () => {
  const frame = frameOf(TANK, 1280, 700);
  expect(xPx(frame, 0)).toBeGreaterThan(0);
  expect(xPx(frame, TANK.widthM)).toBeLessThan(1280);
  expect(yPx(frame, TANK.heightM)).toBeLessThanOrEqual(700);
});
