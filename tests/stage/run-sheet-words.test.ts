// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest';
import type { LineEvidence } from '../../src/lesson/index.ts';
import { sheetOf } from '../../src/stage/run-sheet-layout.ts';
import { RING_PX, ringsOn } from '../../src/stage/run-sheet-rings.ts';
import { standingIn } from '../../src/stage/run-sheet-taken.ts';
import { wordsOn } from '../../src/stage/run-sheet-words.ts';
import { crosses } from '../../src/stage/words-place.ts';
import { diveAt, viewOf } from './views.ts';

const options = { widthPx: 470, rowPx: 150, pixelRatio: 1, textPx: 16 };
const widthOf = (words: string) => words.length * 8;

/** What a dive that nobody steers wrote in some seconds. */
function recordingOf(depthM: number, jacketM3: number, seconds: number) {
  const dive = diveAt(depthM, jacketM3);
  dive.advance(120 * seconds);
  return dive.recording;
}

/** A hover beside whose words a ghost and a branch end. */
function viewWith(otherM: number, seconds: number) {
  const recording = recordingOf(8, 2e-3, seconds);
  const lasts = { fromS: 0, toS: seconds };
  const hold = { ...lasts, atM: 8, bandM: 1, rmsM: 0.4, out: [{ fromS: seconds * 0.45, toS: seconds * 0.55 }] };
  const evidence = { tasks: [], gaps: [], holds: [hold], fins: [] } as unknown as LineEvidence;
  const other = { recording: recordingOf(otherM, 2e-3, seconds), fromS: 0 };
  const branches = [
    { ...other, letter: '', words: 'ghost: steady, simulated', dashed: true },
    { ...other, fromS: seconds / 2, letter: 'A', words: 'A: went on', dashed: false },
  ];
  return viewOf({ recording, evidence, branches, rings: [{ atS: seconds / 2, number: 1 }] });
}

describe.each([7.6, 8, 8.4])('another line from %s m', (otherM) => {
  test.each([40, 75, 160])(
    'wordsOn(): after %i s no words lie on others, on the line or beyond the water',
    (seconds) => {
      const view = viewWith(otherM, seconds);
      const sheet = sheetOf(view, options);
      const placed = wordsOn(view, sheet, widthOf);
      expect(placed.slice(-2).map(({ words }) => words.split(':')[0])).toEqual(['ghost', 'A']);
      for (const [i, one] of placed.entries()) {
        const { boxes, within } = standingIn(view, sheet, ringsOn(view, sheet), one.row);
        for (const box of boxes) expect(crosses(one.box, box), one.words).toBe(false);
        expect(one.box.left >= within.left && one.box.right <= within.right, one.words).toBe(true);
        for (const other of placed.slice(i + 1)) {
          if (other.row !== one.row) continue;
          expect(crosses(one.box, other.box), `${one.words} on ${other.words}`).toBe(false);
          if (one.hair) expect(crosses(one.hair, other.box)).toBe(false);
        }
      }
    },
  );
});

test('ringsOn() covers no part of the line that is hollow, and still knows its point', () => {
  for (const seconds of [40, 75, 160]) {
    const view = viewWith(8, seconds);
    const sheet = sheetOf(view, options);
    const [ring] = ringsOn(view, sheet);
    expect({ x: ring!.lineX, y: ring!.lineY }).toEqual(sheet.place(seconds / 2));
    for (let s = seconds * 0.45; s <= seconds * 0.55; s += 0.25) {
      const { x, y } = sheet.place(s);
      const row = Math.floor(y / (sheet.heightPx / sheet.rows));
      if (row === ring!.row) expect(Math.hypot(ring!.x - x, ring!.y - y)).toBeGreaterThan(RING_PX + 3);
    }
  }
});
