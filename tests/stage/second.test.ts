import { describe, expect, test } from 'vitest';
import { Camera } from '../../src/stage/camera.ts';
import { depthToY } from '../../src/stage/geometry.ts';
import { styleOf } from '../../src/stage/layout.ts';
import { dashesAlong, lengthTo, type Dash } from '../../src/stage/second-dashes.ts';
import { lookedAt } from '../../src/stage/second-looked.ts';
import type { SecondView } from '../../src/stage/view.ts';
import { contrastOf, tokensOf } from '../../src/stage/tokens.ts';
import { diveAt, rig, viewOf } from './views.ts';

const pattern = [0.4, 0.15, 0.1, 0.15];
const period = 0.8;

/** A wave of a line, ten points a second. */
function wave(seconds: number): { s: number[]; m: number[]; lengths: number[] } {
  const s = Array.from({ length: seconds * 10 + 1 }, (_, i) => i / 10);
  const m = s.map((at) => 6 + 3 * Math.sin(at / 4));
  const lengths = [0];
  for (let i = 1; i < s.length; i++) lengths.push(lengthTo(lengths[i - 1]!, m[i - 1]!, m[i]!, 0.1));
  return { s, m, lengths };
}

const inkOf = (dashes: readonly Dash[]) =>
  dashes.reduce((sum, { points }) => {
    let at = 0;
    for (let i = 2; i < points.length; i += 2)
      at += Math.hypot((points[i]! - points[i - 2]!) * 0.15, points[i + 1]! - points[i - 1]!);
    return sum + at;
  }, 0);

describe('dashesAlong()', () => {
  test('inks the share of the line that its pattern has, whatever its slope', () => {
    const { s, m, lengths } = wave(60);
    const whole = Math.floor(lengths.at(-1)! / period) * period;
    expect(whole).toBeGreaterThan(10);
    const ink = inkOf(dashesAlong(s, m, lengths, pattern));
    expect(ink / lengths.at(-1)!).toBeCloseTo(0.5 / period, 1);
  });

  test('joins where pieces of the line meet: together they are the line drawn at once', () => {
    const { s, m, lengths } = wave(40);
    const once = inkOf(dashesAlong(s, m, lengths, pattern));
    let pieces = 0;
    for (let i = 0; i < 400; i += 40)
      pieces += inkOf(dashesAlong(s.slice(i, i + 41), m.slice(i, i + 41), lengths.slice(i, i + 41), pattern));
    expect(pieces).toBeCloseTo(once, 2);
  });

  test('says how steep each piece of ink is, down positive', () => {
    const s = [0, 1, 2];
    const [down] = dashesAlong(s, [2, 3, 4], [0, 1.02, 2.04], [10, 1]);
    expect(down!.speedMps).toBeCloseTo(1, 9);
  });
});

describe('Camera with two divers', () => {
  const secondAt = (depthM: number): SecondView => {
    const dive = diveAt(depthM);
    const { state, controls, recording } = dive;
    return { rig, state, depthM, controls, recording, words: '2 kg more lead', looked: false };
  };
  const style = styleOf(1040, 440, 1, 'light', false);
  const frameOf = (oneM: number, twoM: number, metresShown: number) =>
    new Camera().frame(viewOf({ depthM: oneM, metresShown, second: secondAt(twoM) }), style);

  test.each([
    [6, 9, 7],
    [6, 2, 7],
    [4, 10, 9],
    [10, 11.5, 7],
  ])('keeps %d m and %d m in a picture of %d m', (oneM, twoM, shownM) => {
    const frame = frameOf(oneM, twoM, shownM);
    for (const depthM of [oneM, twoM]) {
      expect(depthToY(frame, depthM)).toBeGreaterThan(0.09 * style.heightPx);
      expect(depthToY(frame, depthM)).toBeLessThan(0.91 * style.heightPx);
    }
  });

  test('keeps the first in the middle third where both do not fit', () => {
    const y = depthToY(frameOf(5, 11.9, 5), 5);
    expect(y).toBeGreaterThanOrEqual(style.heightPx / 3 - 1e-6);
    expect(y).toBeLessThanOrEqual((style.heightPx * 2) / 3 + 1e-6);
  });

  test('lookedAt() is the second where the looks are about him, the first else', () => {
    const second = secondAt(9);
    const view = viewOf({ depthM: 4, second });
    expect(lookedAt(view)).toBe(view);
    const other = lookedAt({ ...view, second: { ...second, looked: true } });
    expect(other.depthM).toBe(9);
    expect(other.recording).toBe(second.recording);
    expect(other.nowS).toBe(view.nowS);
  });
});

test.each(['light', 'dark'] as const)(
  'the second diver stands out from the %s water, and his words from paper',
  (theme) => {
    const { secondDiver, waterTop, waterBottom, paper } = tokensOf(theme);
    expect(contrastOf(secondDiver, waterTop)).toBeGreaterThan(3);
    expect(contrastOf(secondDiver, waterBottom)).toBeGreaterThan(3);
    expect(contrastOf(secondDiver, paper)).toBeGreaterThan(7);
  },
);
