import { expect, test } from 'vitest';
import { Camera } from '../../src/stage/camera.ts';
import {
  depthToY,
  enlargementOf,
  isTooSteep,
  isPressCut,
  pressHeightPx,
  secondsToX,
  slopeOf,
  teethS,
  yToDepth,
} from '../../src/stage/geometry.ts';
import { styleOf } from '../../src/stage/layout.ts';
import { rig, viewOf } from './views.ts';

const sizes = [
  [1095, 488, false],
  [1480, 930, true],
  [860, 520, false],
  [326, 368, false],
] as const;

for (const [width, height, projector] of sizes)
  for (const metresShown of [5, 14, 40])
    test(`the map of ${width}×${height} at ${metresShown} m draws 9 m/min at 45° and shows at least the metres asked for`, () => {
      const view = viewOf({ depthM: 8, metresShown });
      const frame = new Camera().frame(view, styleOf(width, height, 1, 'light', projector));
      const dx = secondsToX(frame, view.nowS + 60) - secondsToX(frame, view.nowS);
      const dy = depthToY(frame, 17) - depthToY(frame, 8);
      expect(dx).toBeCloseTo(dy, 9);
      const slope = slopeOf(frame, -9 / 60);
      expect(slope.x).toBeCloseTo(Math.SQRT1_2, 12);
      expect(slope.y).toBeCloseTo(-Math.SQRT1_2, 12);
      expect(yToDepth(frame, height) - yToDepth(frame, 0)).toBeGreaterThanOrEqual(metresShown - 1e-9);
      for (const depthM of [-1, 0, 7.3, 39]) expect(yToDepth(frame, depthToY(frame, depthM))).toBeCloseTo(depthM, 10);
      expect(secondsToX(frame, view.nowS)).toBeCloseTo((frame.waterPx * 2) / 3, 0);
    });

test('Camera keeps the diver in the middle third and little air and ground in sight', () => {
  const camera = new Camera();
  const style = styleOf(1095, 488, 1, 'light', false);
  for (let i = 0; i < 400; i++) {
    const depthM = 6 + 5 * Math.sin(i / 40);
    const frame = camera.frame(viewOf({ depthM, nowS: i / 20, metresShown: 5 }), style);
    const y = depthToY(frame, depthM) / 488;
    const atSurface = frame.topM < -1.19;
    const atBottom = yToDepth(frame, 488) > 12.99;
    // Easing lags by a moment at speed; a free camera keeps the middle third within a few hundredths.
    if (!atSurface) expect(y).toBeGreaterThan(0.3);
    if (!atBottom) expect(y).toBeLessThan(0.7);
    expect(frame.topM).toBeGreaterThanOrEqual(-1.2 - 1e-9);
    expect(yToDepth(frame, 488)).toBeLessThanOrEqual(13 + 1e-6);
  }
});

test('Camera comes to rest within a quarter second, and at once where motion is unwelcome', () => {
  const style = styleOf(1095, 488, 1, 'light', false);
  const settle = (reducedMotion: boolean, seconds: number) => {
    const camera = new Camera();
    camera.frame(viewOf({ depthM: 5, nowS: 0 }), style);
    let topM = NaN;
    for (let s = 1 / 60; s <= seconds + 1e-9; s += 1 / 60)
      topM = camera.frame(viewOf({ depthM: 8, nowS: s, reducedMotion }), style).topM;
    return topM;
  };
  const rest = settle(true, 1 / 60);
  expect(Math.abs(settle(false, 0.25) - rest)).toBeLessThan(0.06 * 3);
  expect(Math.abs(settle(false, 1) - rest)).toBeLessThan(1e-3);
});

test('Camera holds still while the dive is frozen', () => {
  const style = styleOf(1095, 488, 1, 'light', false);
  const camera = new Camera();
  const view = viewOf({ depthM: 5, nowS: 3, frozen: true });
  const first = camera.frame(view, style);
  expect(camera.frame(view, style)).toEqual(first);
});

test('isTooSteep() asks the limit of the way taken, and none where there is none', () => {
  expect(isTooSteep(-0.16, 0.15, 0.3)).toBe(true);
  expect(isTooSteep(-0.15, 0.15, 0.3)).toBe(false);
  expect(isTooSteep(0.16, 0.15, 0.3)).toBe(false);
  expect(isTooSteep(0.31, 0.15, 0.3)).toBe(true);
  expect(isTooSteep(9, null, null)).toBe(false);
});

test('pressHeightPx() is as high as the litres between a least and a greatest height, at one scale for a zoom', () => {
  for (const pxPerM of [12, 40, 100])
    expect(pressHeightPx(2e-3, 1, pxPerM) / pressHeightPx(1e-3, 1, pxPerM)).toBeCloseTo(2, 12);
  expect(pressHeightPx(1e-3, 2, 200)).toBe(2 * pressHeightPx(1e-3, 1, 100));
  expect(pressHeightPx(0, 1, 100)).toBeGreaterThan(0);
  expect(pressHeightPx(1, 1, 100)).toBeLessThan(40);
  // As high as it may be, it is cut, and not before.
  for (const volumeM3 of [1e-3, 2e-3, 2.2e-3, 9e-3])
    expect(isPressCut(volumeM3, 1, 100)).toBe(pressHeightPx(volumeM3, 1, 100) === pressHeightPx(1, 1, 100));
});

test('teethS() stand each five seconds, strictly between the ends', () => {
  expect(teethS(2, 18)).toEqual([7, 12, 17]);
  expect(teethS(0, 5)).toEqual([]);
  expect(teethS(0, 5.1)).toEqual([5]);
});

test('enlargementOf() leaves the diver true to size where he is long enough, and long enough where not', () => {
  expect(enlargementOf(100, 110)).toBe(1);
  for (const pxPerM of [13, 22, 35, 49]) {
    const times = enlargementOf(pxPerM, 110);
    expect(times * 2.2 * pxPerM).toBeGreaterThanOrEqual(110);
    expect(times).toBeGreaterThan(1);
  }
  // Where the whole column is shown he may not cover his line, and is still seen.
  expect(enlargementOf(10, 110) * 2.2 * 10).toBeGreaterThanOrEqual(60);
});

test('Camera shows the whole head of a diver afloat, however much he is enlarged, and the whole column where it is asked for', () => {
  for (const [width, height, projector] of [
    [1095, 488, false],
    [1480, 930, true],
    [360, 368, false],
    [448, 150, false],
  ] as const)
    for (const metresShown of [5.5, 20, rig.bottomM + 2.2]) {
      const style = styleOf(width, height, 1, 'light', projector);
      const view = viewOf({ depthM: 0.4, metresShown });
      const frame = new Camera().frame({ ...view, state: { ...view.state, pitchCos: 0, pitchSin: 1 } }, style);
      expect(depthToY(frame, 0.4) - 0.64 * frame.pxPerM * frame.enlarged).toBeGreaterThan(0);
      if (metresShown > rig.bottomM) expect(depthToY(frame, rig.bottomM)).toBeLessThan(height);
    }
});
