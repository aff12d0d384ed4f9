import { describe, expect, test } from 'vitest';
import { decode } from 'fast-png';
import { CELL_PX, INK, PAPER, RISING_GROUND, pictureOf, pngOf } from '../../src/cli/png-map.ts';
import { MEANS, type MapBand, type RecoveryMap } from '../../src/insight/index.ts';

/** A column for each means, sinking above 10 m and rising below; the diver is off the picture. */
function mapOf(means: readonly MapBand['means'][], here = { across: 0, depthM: 90 }): RecoveryMap {
  return {
    across: { kind: 'lead', values: means.map((_, i) => i) },
    topM: 0,
    bottomM: 20,
    here,
    columns: means.map((one) => [
      { fromM: 0, toM: 10, means: one, way: 1 },
      { fromM: 10, toM: 20, means: one, way: -1 },
    ]),
  };
}

const ALL = [...MEANS, 'lost'] as const;

function cellOf({ greys, widthPx }: ReturnType<typeof pictureOf>, column: number, row: number): number[] {
  const at = (i: number) => (row * CELL_PX + Math.floor(i / CELL_PX)) * widthPx + column * CELL_PX + (i % CELL_PX);
  return Array.from({ length: CELL_PX * CELL_PX }, (_, i) => greys[at(i)]);
}

const inkOf = (cell: number[]) => cell.filter((grey) => grey === INK).length / cell.length;

describe('pictureOf()', () => {
  test('has more ink the more it takes, none where nothing is needed, nothing else where all is lost', () => {
    const picture = pictureOf(mapOf(ALL), 2);
    const inks = ALL.map((_, column) => inkOf(cellOf(picture, column, 0)));
    expect(inks[0]).toBe(0);
    expect(inks.at(-1)).toBe(1);
    for (let i = 1; i < inks.length; i++) expect(inks[i] - inks[i - 1]).toBeGreaterThan(0.05);
  });

  test('lies on white where the danger is sinking, on grey where it is rising, with the same ink', () => {
    const picture = pictureOf(mapOf(ALL), 2);
    ALL.slice(0, -1).forEach((_, column) => {
      const [sinking, rising] = [cellOf(picture, column, 0), cellOf(picture, column, 1)];
      expect(new Set(sinking)).toContain(PAPER);
      expect(rising).toEqual(sinking.map((grey) => (grey === INK ? INK : RISING_GROUND)));
    });
  });

  test('shows in a cell what works in its middle', () => {
    // Rows of 20/7 m: the middle of the fourth is 10 m, where the lower band begins.
    const picture = pictureOf(mapOf(['none', 'none']), 7);
    expect([0, 1, 2, 3, 4, 5, 6].map((row) => cellOf(picture, 0, row)[0])).toEqual([
      ...Array<number>(3).fill(PAPER),
      ...Array<number>(4).fill(RISING_GROUND),
    ]);
  });

  test.each(ALL)('the diver can be seen on %s: an ink heart in a ring of paper', (means) => {
    const columns = Array<MapBand['means']>(5).fill(means);
    const { greys, widthPx } = pictureOf(mapOf(columns, { across: 2, depthM: 7.5 }), 8);
    // The middle of the third column, three eighths down.
    const at = (x: number, y: number) => greys[(24 + y) * widthPx + 20 + x];
    expect([at(0, 0), at(4, 0), at(-5, 0), at(0, 4), at(0, -5)]).toEqual([INK, PAPER, PAPER, PAPER, PAPER]);
    expect([at(5, 2), at(0, 5), at(-6, 0)]).toEqual([INK, INK, INK]);
  });

  test('a diver between two columns stands between their middles, one past the edge is cut off', () => {
    const columns = Array<MapBand['means']>(4).fill('none');
    const heartXs = (across: number) => {
      const { greys, widthPx } = pictureOf(mapOf(columns, { across, depthM: 5 }), 8);
      // One row of pixels through the middle: edge, ring, heart, ring, edge.
      const row = [...greys.subarray(16 * widthPx, 17 * widthPx)];
      return row.flatMap((grey, x) => (grey === INK ? [x + 0.5] : []));
    };
    const middle = (xs: number[]) => xs.reduce((sum, x) => sum + x, 0) / xs.length;
    expect(middle(heartXs(1.5))).toBe(16);
    expect(middle(heartXs(1.75))).toBeCloseTo(18, 9);
    expect(heartXs(40)).toEqual([]);
    expect(heartXs(-0.5).length).toBeGreaterThan(0);
  });
});

describe('pngOf()', () => {
  test('keeps every pixel and the text', () => {
    const picture = pictureOf(mapOf(ALL), 3);
    const read = decode(pngOf(picture, 'Downward: depth.'), { checkCrc: true });
    expect([read.width, read.height, read.channels, read.depth]).toEqual([7 * CELL_PX, 3 * CELL_PX, 1, 8]);
    expect(Uint8Array.from(read.data)).toEqual(picture.greys);
    expect(read.text['Description']).toBe('Downward: depth.');
  });
});
