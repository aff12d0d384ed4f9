import { describe, expect, test } from 'vitest';
import { metresFor } from '../../src/stage/asked-room.ts';
import { Camera } from '../../src/stage/camera.ts';
import { DIVER_LENGTH_M, depthToY } from '../../src/stage/geometry.ts';
import { styleOf } from '../../src/stage/layout.ts';
import { sheetOf } from '../../src/stage/run-sheet-layout.ts';
import { Taken } from '../../src/stage/taken.ts';
import { diveAt, rig, viewOf } from './views.ts';

describe('a foot that is covered', () => {
  test.each([
    [1084, 474, 60],
    [828, 257, 62],
    [828, 257, 105],
    [360, 230, 105],
    [360, 160, 54],
    [448, 190, 54],
  ])(
    'Camera keeps the whole diver above it, or his chest in the middle of what is left: %i×%i, %i covered',
    (...size) => {
      const [widthPx, heightPx, coveredPx] = size;
      const style = styleOf(widthPx, heightPx, 1, 'light', false);
      for (const depthM of [0.1, 2, 8, rig.bottomM - 0.3]) {
        const frame = new Camera().frame(viewOf({ depthM, coveredPx, frozen: true, metresShown: 5 }), style);
        const y = depthToY(frame, depthM);
        const halfPx = (DIVER_LENGTH_M / 2) * frame.enlarged * frame.pxPerM;
        const leftPx = heightPx - coveredPx;
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThanOrEqual(Math.max(leftPx - halfPx, leftPx / 2) + 1e-6);
      }
    },
  );

  test('Camera moves nothing where the diver is clear of it', () => {
    const style = styleOf(1084, 474, 1, 'light', false);
    const plain = new Camera().frame(viewOf({ depthM: 8 }), style);
    expect(new Camera().frame(viewOf({ depthM: 8, coveredPx: 60 }), style)).toEqual(plain);
  });

  test('Taken gives no place in it', () => {
    const taken = new Taken({ left: 0, top: 0, right: 100, bottom: 100 });
    const low = { left: 10, top: 70, right: 40, bottom: 90 };
    taken.clear();
    expect(taken.isFree(low)).toBe(true);
    taken.clear(20);
    expect(taken.isFree(low)).toBe(false);
    taken.clear();
    expect(taken.isFree(low)).toBe(true);
  });
});

test('sheetOf() has room for the other lines: as long as the longest, as deep as the deepest', () => {
  const dive = diveAt(8, 2e-3);
  dive.advance(120 * 20);
  const longer = diveAt(11, 0);
  longer.advance(120 * 300);
  const ghost = { recording: longer.recording, fromS: 0, letter: '', words: 'ghost', dashed: true };
  const options = { widthPx: 200, rowPx: 160, pixelRatio: 1, textPx: 16 };
  const alone = sheetOf(viewOf({ recording: dive.recording }), options);
  const both = sheetOf(viewOf({ recording: dive.recording, branches: [ghost] }), options);
  expect(both.deepestM).toBeGreaterThan(11);
  expect(both.rows).toBeGreaterThan(alone.rows);
  const end = both.place(300, longer.recording);
  expect(end.x).toBeLessThanOrEqual(both.rowS * both.pxPerS);
  expect(end.y).toBeLessThan(both.heightPx);
  expect(60 * both.pxPerS).toBeCloseTo(9 * both.pxPerM, 9);
});

test.each([
  [1040, 480, 0],
  [760, 400, 90],
  [318, 248, 0],
])(
  'Camera keeps what was said in the picture until its moment has passed, and the diver with it: %i×%i, %i covered',
  (widthPx, heightPx, coveredPx) => {
    const style = styleOf(widthPx, heightPx, 1, 'light', false);
    for (const saidM of [5.5, 8, 10.5]) {
      const said = [{ fromS: 0, overS: 10, depthsM: [saidM], words: '', came: null }];
      const lines = [{ letter: '', depthsM: [saidM] }];
      for (const depthM of [7.4, 8.3]) {
        const room = { widthPx, heightPx, coveredPx, projector: false };
        const metresShown = Math.max(5.5, metresFor({ fromM: depthM, overS: 10, lines, pin: null }, depthM, room));
        const frame = new Camera().frame(viewOf({ depthM, coveredPx, metresShown, said, nowS: 4 }), style);
        for (const one of [saidM, depthM]) {
          expect(depthToY(frame, one)).toBeGreaterThan(0);
          expect(depthToY(frame, one)).toBeLessThan(heightPx - coveredPx);
        }
        // Afterwards it goes with the paper.
        const late = { depthM, coveredPx, metresShown, nowS: 11 };
        expect(new Camera().frame(viewOf({ ...late, said }), style)).toEqual(new Camera().frame(viewOf(late), style));
      }
    }
  },
);
