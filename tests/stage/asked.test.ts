// @vitest-environment happy-dom
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spread } from '../../src/stage/asked-fan.ts';
import { metresFor } from '../../src/stage/asked-room.ts';
import { Camera } from '../../src/stage/camera.ts';
import { depthToY, secondsToX } from '../../src/stage/geometry.ts';
import { styleOf } from '../../src/stage/layout.ts';
import { rig, viewOf } from './views.ts';

test('spread() keeps the order, a gap between any two, and the bounds where all fit between them', () => {
  const heights = fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(heights, (wanted) => {
      const out = spread(wanted, 30, 20, 480);
      const order = wanted.map((_, i) => i).sort((a, b) => out[a]! - out[b]!);
      order.slice(1).forEach((i, rank) => {
        expect(out[i]! - out[order[rank]!]!).toBeGreaterThanOrEqual(30 - 1e-9);
        expect(wanted[i]!).toBeGreaterThanOrEqual(wanted[order[rank]!]!);
      });
      for (const y of out) expect(y >= 20 - 1e-9 && y <= 480 + 1e-9).toBe(true);
    }),
  );
});

test('spread() moves nothing that is apart already', () => {
  expect(spread([200, 40, 120], 30, 0, 500)).toEqual([200, 40, 120]);
});

test.each([
  [1040, 633, 0, false],
  [1500, 800, 0, true],
  [720, 543, 0, true],
  [360, 575, 290, false],
])(
  'metresFor() brings every dot and its letter into the picture: %i × %i, %i covered',
  (widthPx, heightPx, coveredPx, projector) => {
    const style = styleOf(widthPx, heightPx, 1, 'light', projector);
    for (const [overS, fromM, ends] of [
      [10, 0.4, [0.3, 0.9, 2.4]],
      [25, 9.7, [10, 9.7, 8.4, 11]],
      [20, 14.7, [15, 14.5]],
    ] as const) {
      const lines = ends.map((endM) => ({ letter: '', depthsM: [fromM, endM] }));
      const asked = { fromM, overS, lines, pin: null };
      const depthM = overS === 20 ? 7 : fromM;
      const metresShown = Math.max(5.5, metresFor(asked, depthM, { widthPx, heightPx, coveredPx, projector }));
      const camera = new Camera();
      // Where the picture was before: the diver stood at the edge of its middle third.
      camera.frame(viewOf({ depthM: depthM + 0.9, metresShown: 5.5, projector }), style);
      const view = { depthM, coveredPx, metresShown, frozen: true, projector, asked: { ...asked, chosen: '' } };
      const frame = camera.frame(viewOf(view), style);
      expect(secondsToX(frame, overS) + 2.4 * style.textPx).toBeLessThanOrEqual(style.waterPx);
      for (const endM of ends) {
        expect(depthToY(frame, endM)).toBeGreaterThan(0);
        expect(depthToY(frame, endM)).toBeLessThan(heightPx - coveredPx);
      }
    }
  },
);

test.each([
  [1040, 633, 0, 16, 0.4],
  [1040, 633, 260, 16, 0.4],
  [318, 570, 290, 40, 6],
  [1500, 800, 0, 40, 6],
])(
  'metresFor() brings the whole scale of a depth without a moment into the picture, and no more air than is shown: %i × %i, %i covered, to %d m from %d m',
  (widthPx, heightPx, coveredPx, mostM, depthM) => {
    const style = styleOf(widthPx, heightPx, 1, 'light', false);
    const asked = { fromM: depthM, overS: null, lines: [], pin: { atM: mostM, leastM: depthM, mostM, words: '' } };
    const metresShown = metresFor(asked, depthM, { widthPx, heightPx, coveredPx, projector: false });
    const view = { depthM, coveredPx, metresShown, frozen: true, asked: { ...asked, chosen: '' } };
    const deep = { ...rig, bottomM: 60 };
    const frame = new Camera().frame({ ...viewOf(view), rig: deep }, style);
    expect(depthToY(frame, mostM)).toBeLessThan(heightPx - coveredPx);
    expect(depthToY(frame, depthM)).toBeGreaterThan(0);
    // Within a fifth of what the water from the surface down needs at least.
    expect(metresShown).toBeLessThan(((mostM + 0.8 + 3.5) / ((heightPx - coveredPx) / heightPx)) * 1.2);
  },
);

test('Camera keeps what was said of a moment ahead in sight, and moves no further for it than it needs', () => {
  const style = styleOf(1095, 488, 1, 'light', false);
  const frameOf = (...saidM: readonly number[]) => {
    const said = saidM.map((depthM) => ({ fromS: 0, overS: 10, depthsM: [depthM], words: 'you said', came: null }));
    const frame = new Camera().frame(viewOf({ depthM: 8, said }), style);
    return { topM: frame.topM, shareOf: (depthM: number) => depthToY(frame, depthM) / style.heightPx };
  };
  const plain = frameOf();
  // It lies in the picture already, though not in its middle third.
  for (const depthM of [6.5, 9.5]) expect(frameOf(depthM).topM).toBe(plain.topM);
  for (const depthM of [4.5, 5.5, 10.4, 11.4]) {
    const { shareOf } = frameOf(depthM);
    for (const share of [shareOf(depthM), shareOf(8)]) {
      expect(share).toBeGreaterThan(0.1 - 1e-9);
      expect(share).toBeLessThan(0.9 + 1e-9);
    }
  }
  // What can't be shown together with the diver moves nothing.
  expect(frameOf(2).topM).toBe(plain.topM);
  expect(frameOf(5, 11).topM).toBe(plain.topM);
});
