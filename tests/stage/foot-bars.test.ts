// @vitest-environment happy-dom
import { Text } from 'pixi.js';
import { describe, expect, test } from 'vitest';
import { withNumbersOf } from '../../src/app/look-bars.ts';
import { barsOf, barsRoom, gathered, ledgerPxPerKgf, saidSumKgf, sumKgf } from '../../src/stage/bars-scale.ts';
import { Camera } from '../../src/stage/camera.ts';
import { FootBars } from '../../src/stage/foot-bars.ts';
import { PX_PER_KGF, depthToY } from '../../src/stage/geometry.ts';
import { styleOf } from '../../src/stage/layout.ts';
import type { PullBar } from '../../src/stage/view.ts';
import { viewOf } from './views.ts';

const part = (words: string, kgf: number, isGas = false): PullBar => ({ words, kgf, isGas, saidKgf: kgf });
const up = [part('suit', 6), part('jacket', 5, true), part('lungs', 3.4, true)];
const down = [part('rest', 1.1), part('body', 1), part('lead', 8), part('cylinder', 3.6)];
const sizes = [
  [1095, 488, false],
  [1480, 930, true],
  [360, 368, false],
] as const;

describe('ledgerPxPerKgf()', () => {
  test.each(sizes)(
    '%i × %i: the longer bar ends where its words begin, and no kilogram is longer than the arrow has it',
    (w, h, big) => {
      const style = styleOf(w, h, 1, 'light', big, false, 2);
      const { x, px } = barsRoom(style);
      const pxPerKgf = ledgerPxPerKgf(style, up, down);
      expect(14.4 * pxPerKgf).toBeLessThanOrEqual(px);
      expect(x + px).toBeLessThan(style.waterPx);
      expect(pxPerKgf).toBeLessThanOrEqual(PX_PER_KGF * style.unit);
    },
  );

  test('stands still while gas works within four kilograms', () => {
    const style = styleOf(1095, 488, 1, 'light', false, false, 2);
    const more = [...up, part('loop', 0.9, true)];
    expect(ledgerPxPerKgf(style, more, down)).toBe(ledgerPxPerKgf(style, up, down));
  });
});

test('gathered() puts short parts together and keeps the sum; gas stays by itself', () => {
  const told = gathered(down, ({ kgf }) => kgf > 3);
  expect(told.map(({ words }) => words)).toEqual(['rest', 'lead', 'cylinder']);
  expect(told.reduce((sum, { kgf }) => sum + kgf, 0)).toBeCloseTo(13.7, 12);
  expect(gathered(up, () => false).filter(({ isGas }) => isGas)).toHaveLength(2);
});

test('withNumbersOf() keeps the bars of now and the numbers of the sentence, sums and surplus alike', () => {
  const then = { kind: 'ledger', up, down } as const;
  const fuller = {
    kind: 'ledger',
    up: [...up.slice(0, 2), part('lungs', 4.1, true), part('loop', 0.3, true)],
    down,
  } as const;
  const told = withNumbersOf(fuller, then);
  if (told.kind !== 'ledger') throw new Error('bars became something else');
  expect(sumKgf(told.up)).toBeCloseTo(sumKgf(fuller.up), 12);
  // What was not there when it was said has its own number.
  expect(saidSumKgf(told.up)).toBeCloseTo(sumKgf(up) + 0.3, 12);
  expect(saidSumKgf(gathered(told.down, ({ kgf }) => kgf > 3))).toBeCloseTo(sumKgf(down), 12);
  expect(withNumbersOf(fuller, { kind: 'forces', arrows: [] })).toBe(fuller);
});

test('barsOf() counts a bar a store of gas, and two for the ledger', () => {
  const store = { words: 'lungs', hereM3: 3e-3, surfaceM3: 6e-3 };
  expect(barsOf({ kind: 'volumes', stores: [store, store, store], scaleM3: 16e-3 })).toBe(3);
  expect(barsOf({ kind: 'ledger', up, down })).toBe(2);
  expect(barsOf({ kind: 'forces', arrows: [] })).toBe(0);
});

test.each(sizes)(
  '%i × %i: FootBars marks a surplus under water, none of who floats, and says what balances him',
  (w, h, big) => {
    const wordsOf = (afloat: boolean) => {
      const bars = new FootBars(styleOf(w, h, 1, 'light', big, false, 2));
      bars.draw(viewOf({ overlay: { kind: 'ledger', up, down, afloat } }));
      return bars.root.children
        .flatMap((child) => (child instanceof Text && child.visible ? [child.text] : []))
        .join('|');
    };
    const [under, afloat] = [wordsOf(false), wordsOf(true)];
    if (!big) expect(under).toContain('0.7 kgf');
    expect(afloat).not.toContain('kgf');
    expect(under).not.toContain('out of the water');
    expect(afloat).toContain('balanced by what is out of the water');
  },
);

test.each(sizes)('%i × %i: the diver and the ground stay above the bars', (w, h, big) => {
  const style = styleOf(w, h, 1, 'light', big, false, 2);
  for (const depthM of [0.3, 5, 11.5]) {
    const frame = new Camera().frame(viewOf({ depthM }), style);
    expect(depthToY(frame, depthM)).toBeLessThan(h - style.footPx);
    expect(depthToY(frame, depthM)).toBeGreaterThan(0);
  }
});

test.each(sizes)(
  '%i × %i: where the strip of time covers the foot, the diver stays above the bars that stand on it',
  (w, h, big) => {
    const style = styleOf(w, h, 1, 'light', big, false, 3);
    for (const depthM of [4.7, 8, 11.5]) {
      const coveredPx = 90;
      const frame = new Camera().frame({ ...viewOf({ depthM }), coveredPx, frozen: true }, style);
      const middlePx = (h - style.footPx - coveredPx) / 2;
      expect(depthToY(frame, depthM)).toBeLessThanOrEqual(
        Math.max(h - style.footPx - coveredPx - 0.5 * frame.pxPerM, middlePx + 1e-6),
      );
    }
  },
);
