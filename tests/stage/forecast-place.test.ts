// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { Camera } from '../../src/stage/camera.ts';
import { ForecastPlace } from '../../src/stage/forecast-place.ts';
import { depthToY, secondsToX } from '../../src/stage/geometry.ts';
import { styleOf } from '../../src/stage/layout.ts';
import { Taken } from '../../src/stage/taken.ts';
import { awayFrom, crosses, type Box } from '../../src/stage/words-place.ts';
import { viewOf } from './views.ts';

const style = styleOf(1084, 480, 1, 'light', false);

/** Where words of a forecast that goes down so fast stand, with boxes about its ring, and where that is. */
function drawn(mps: number, about: (x: number, y: number) => Box[], metresShown: number) {
  const view = viewOf({ forecastM: Array.from({ length: 11 }, (_, i) => 8 + i * mps), frozen: true, metresShown });
  const frame = new Camera().frame(view, style);
  const [x, y] = [secondsToX(frame, 10), depthToY(frame, view.forecastM![10]!)];
  const taken = new Taken({ left: 5, top: 30, right: style.freePx - 5, bottom: style.heightPx - 5 });
  taken.boxes.push(...about(x, y));
  const placed = new ForecastPlace(style).seek(190, 22, view, frame, taken)!;
  const dots = view.forecastM!.map((depthM, i) => ({ x: secondsToX(frame, i), y: depthToY(frame, depthM) }));
  return { ...placed, x, y, taken, dots };
}

test('ForecastPlace is beside the ring; what stands about it sends words no further than they must, with a hair back', () => {
  const open = drawn(0.1, () => [], 14);
  expect(awayFrom(open.box, open.x, open.y)).toBeLessThan(20);
  expect(open.hair).toBeNull();
  // A row of small boxes to the right, as a limit's hair has them, and an arrow to the left.
  const hemmed = drawn(
    0.1,
    (x, y) => [
      { left: x - 40, top: y - 60, right: x - 16, bottom: y + 60 },
      ...Array.from({ length: 12 }, (_, i) => ({
        left: x + 12 + i * 5,
        top: y - 40 + i * 8,
        right: x + 20 + i * 5,
        bottom: y - 32 + i * 8,
      })),
    ],
    14,
  );
  expect(awayFrom(hemmed.box, hemmed.x, hemmed.y)).toBeLessThan(90);
  expect(hemmed.hair?.slice(0, 2)).toEqual([hemmed.x, hemmed.y]);
  for (const box of hemmed.taken.boxes) expect(crosses(hemmed.box, box)).toBe(false);
});

test('ForecastPlace of a ring out of the picture is beside the last dot in it, without a hair', () => {
  const { box, hair, y, taken, dots } = drawn(0.9, () => [], 5);
  expect(y).toBeGreaterThan(taken.within.bottom);
  expect(hair).toBeNull();
  const last = dots.filter((dot) => dot.y < taken.within.bottom).at(-1)!;
  expect(awayFrom(box, last.x, last.y)).toBeLessThan(20);
});
