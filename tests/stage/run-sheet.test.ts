// @vitest-environment happy-dom
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthAtM } from '../../src/stage/line.ts';
import { sheetOf } from '../../src/stage/run-sheet-layout.ts';
import { leadMoves } from '../../src/stage/event-words.ts';
import { drawPresses, pressesIn } from '../../src/stage/run-sheet-presses.ts';
import { RING_PX, ringsOn } from '../../src/stage/run-sheet-rings.ts';
import { raisedLefts, taskLefts } from '../../src/stage/run-sheet-tasks.ts';
import { tokensOf } from '../../src/stage/tokens.ts';
import { diveAt, viewOf } from './views.ts';

const options = { widthPx: 470, rowPx: 150, pixelRatio: 1, textPx: 16 };

/** A view of a dive that nobody steers, after some seconds. */
function after(seconds: number, depthM = 8, jacketM3 = 2e-3) {
  const dive = diveAt(depthM, jacketM3);
  dive.advance(120 * seconds);
  return viewOf({ recording: dive.recording });
}

describe('sheetOf()', () => {
  test.each([30, 75, 200, 400, 900])('a run of %i s fills its rows, and 9 m/min stays 45°', (seconds) => {
    const view = after(seconds);
    const sheet = sheetOf(view, options);
    expect(60 * sheet.pxPerS).toBeCloseTo(9 * sheet.pxPerM, 9);
    const depths = view.recording.column('depthM');
    const used = Math.max(...depths) - Math.min(...depths);
    const filled = (seconds - (sheet.rows - 1) * sheet.rowS) / sheet.rowS;
    // Steeper than the paper is wide, it is as high as it may be instead.
    if (sheet.depthPx < 2.19 * options.rowPx) expect(filled).toBeGreaterThan(0.9);
    expect(filled).toBeLessThanOrEqual(1);
    expect(sheet.deepestM - sheet.topM).toBeLessThan(used + 4);
    expect(sheet.widthPx).toBeLessThanOrEqual(options.widthPx);
  });

  test('leaves out the water above a hover, and shows the surface to whoever was near it', () => {
    const hover = sheetOf(after(20), options);
    expect(hover.topM).toBeGreaterThan(4);
    expect(hover.topM).toBeLessThan(Math.min(...after(20).recording.column('depthM')));
    expect(sheetOf(after(5, 1.5, 0), options).topM).toBeLessThan(0);
  });

  test('a place to be without an end below does not squeeze the line', () => {
    const view = after(20);
    const band = { fromS: 0, toS: null, topM: 7, bottomM: 200, words: '' };
    expect(sheetOf({ ...view, bands: [band] }, options).deepestM).toBeLessThan(sheetOf(view, options).deepestM + 2);
  });

  test('whoever stayed at the surface is one row, however long, and 9 m/min is 45° in it too', () => {
    const view = after(300, 0.4, 8e-3);
    expect(Math.max(...view.recording.column('depthM'))).toBeLessThan(1);
    const sheet = sheetOf(view, options);
    expect(sheet.rows).toBe(1);
    expect(60 * sheet.pxPerS).toBeCloseTo(9 * sheet.pxPerM, 9);
    expect(sheetOf(after(300), options).rows).toBeGreaterThan(1);
  });

  test('words of tasks go on two lines where one would not fit', () => {
    const view = after(60);
    const task = { title: 'descent', word: 'not yet', fromS: 0 } as const;
    const lines = (toS: number) =>
      sheetOf({ ...view, evidence: { tasks: [{ ...task, toS }], gaps: [], holds: [], fins: [], presses: 0 } }, options)
        .headLines;
    expect([lines(60), lines(8)]).toEqual([1, 2]);
  });
});

test('ringsOn() keeps seven rings apart and in their water, each knowing its point on the line', () => {
  const view = after(200);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 1990 }), { minLength: 1, maxLength: 7 }), (tenths) => {
      const rings = tenths.map((tenth, i) => ({ atS: tenth / 10, number: i + 1 }));
      const sheet = sheetOf(view, options);
      const placed = ringsOn({ ...view, rings }, sheet);
      expect(placed.map(({ number }) => number)).toEqual(rings.map(({ number }) => number));
      for (const { x, inRowY, atS, lineX, lineY } of placed) {
        expect(x).toBeGreaterThanOrEqual(RING_PX);
        expect(x).toBeLessThanOrEqual(sheet.waterPx - RING_PX);
        expect(inRowY).toBeGreaterThanOrEqual(sheet.headPx + RING_PX);
        expect(inRowY).toBeLessThanOrEqual(sheet.headPx + sheet.depthPx - RING_PX);
        expect({ x: lineX, y: lineY }).toEqual(sheet.place(atS));
      }
      for (const a of placed)
        for (const b of placed)
          if (a !== b && a.row === b.row)
            expect(Math.hypot(a.x - b.x, a.inRowY - b.inRowY)).toBeGreaterThan(2 * RING_PX);
    }),
    { numRuns: 60 },
  );
});

test('pressesIn() stands each press on its own row of the line: gas let in above it, gas let out below', () => {
  const dive = diveAt(8);
  const press = (of: Partial<typeof dive.controls>) => {
    dive.steer({ ...dive.controls, ...of });
    dive.advance(60);
  };
  dive.advance(240);
  press({ jacketAdd: 1 });
  press({ jacketAdd: 0 });
  dive.advance(120 * 60);
  press({ jacketVent: 1 });
  press({ jacketVent: 0 });
  dive.advance(120 * 5);
  const view = viewOf({ recording: dive.recording, changes: dive.changes });
  const sheet = sheetOf(view, { ...options, widthPx: 240 });
  const rowOf = (atS: number) => Math.floor(atS / sheet.rowS);
  expect(rowOf(63)).toBeGreaterThan(rowOf(2));
  const on = (row: number) => pressesIn(view, sheet, row * sheet.rowS);
  const middle = (outline: readonly number[], from: 0 | 1) => {
    const own = outline.filter((_, i) => i % 2 === from);
    return (Math.min(...own) + Math.max(...own)) / 2;
  };
  for (const [atS, above] of [
    [2.25, true],
    [63.25, false],
  ] as const) {
    const row = rowOf(atS);
    expect(on(row)).toHaveLength(1);
    const { outline } = on(row)[0]!;
    expect(middle(outline, 0)).toBeCloseTo((atS - row * sheet.rowS) * sheet.pxPerS, 0);
    const lineY = depthAtM(dive.recording, atS) * sheet.pxPerM;
    expect(middle(outline, 1) < lineY).toBe(above);
  }
});

test('leadMoves() tells pieces that go in one go once, with all they weigh', () => {
  const off = (tick: number) => ({ tick, kind: 'lead-taken-off', massKg: 0.5 }) as const;
  const moves = leadMoves([off(240), off(300), off(360), off(420), off(900), { tick: 901, kind: 'bottom-touched' }]);
  expect(moves.map(({ tick, massKg }) => [tick, massKg])).toEqual([
    [420, 2],
    [900, 0.5],
  ]);
});

describe('raisedLefts()', () => {
  test('a name begins over the middle of its bracket, further left at the edge, and not at all where its stem would miss it', () => {
    const task = (from: number, to: number, wide: number) => ({ from, to, wide });
    expect(raisedLefts([task(2, 14, 60)], 400, 6)).toEqual([8]);
    expect(raisedLefts([task(360, 380, 60)], 400, 6)).toEqual([340]);
    expect(raisedLefts([task(0, 20, 60), task(30, 50, 40), task(90, 110, 40)], 400, 6)).toEqual([10, null, 100]);
    expect(raisedLefts([task(0, 20, 60)], 50, 6)).toEqual([null]);
  });
});

describe('taskLefts()', () => {
  const task = (from: number, to: number, wide: number, marked = true) => ({ from, to, wide, marked });

  test('words begin at their bracket where they are narrower', () => {
    expect(taskLefts([task(0, 100, 60), task(104, 200, 60)], 400, 6)).toEqual([0, 104]);
  });

  test('words that are wider than their bracket take room to its left, and the next ones give way to them', () => {
    expect(taskLefts([task(2, 14, 8, false), task(17, 50, 55), task(53, 142, 52)], 400, 6)).toEqual([null, 0, 61]);
  });

  test('words at the right edge end there, and what has no room has none', () => {
    expect(taskLefts([task(360, 398, 60)], 400, 6)).toEqual([338]);
    expect(taskLefts([task(0, 10, 60), task(12, 22, 60)], 400, 6)).toEqual([0, null]);
  });

  test('words never lie on each other, nor beyond the water', () => {
    const one = fc.record({
      lasts: fc.integer({ min: 4, max: 200 }),
      wide: fc.integer({ min: 8, max: 120 }),
      marked: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 8 }), (all) => {
        let from = 0;
        const tasks = all.map(({ lasts, wide, marked }) => task(from, (from += lasts) - 3, wide, marked));
        const placed = taskLefts(tasks, from, 6).flatMap((left, i) =>
          left === null ? [] : [{ left, right: left + tasks[i]!.wide }],
        );
        for (const { left, right } of placed) expect(left >= 0 && right <= from + 1e-9).toBe(true);
        for (const [i, { right }] of placed.slice(0, -1).entries())
          expect(placed[i + 1]!.left).toBeGreaterThanOrEqual(right + 6 - 1e-9);
      }),
    );
  });
});

test('drawPresses() writes no lead over that of another go, however soon after it', () => {
  const off = (tick: number) => ({ tick, kind: 'lead-taken-off', massKg: 0.5 }) as const;
  const view = viewOf({
    recording: after(60, 0.4, 8e-3).recording,
    changes: [],
    events: [off(240), off(480), off(720), off(960)],
  });
  const sheet = sheetOf(view, options);
  const said: { x: number; y: number; wide: number }[] = [];
  const wideOf = (words: string) => words.length * 8;
  const c = new Proxy({} as CanvasRenderingContext2D, {
    get: (_, name) => {
      if (name === 'measureText') return (words: string) => ({ width: wideOf(words) });
      if (name === 'fillText') return (words: string, x: number, y: number) => said.push({ x, y, wide: wideOf(words) });
      return () => undefined;
    },
    set: () => true,
  });
  drawPresses({ c, tokens: tokensOf('light'), sheet, fromS: sheet.startS }, view);
  expect(said).toHaveLength(4);
  for (const [i, one] of said.entries())
    for (const other of said.slice(i + 1))
      expect(other.x > one.x + one.wide || Math.abs(other.y - one.y) >= options.textPx).toBe(true);
});
