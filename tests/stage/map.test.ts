import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { MapBand } from '../../src/insight/index.ts';
import { areasOf, kindOf, type Area } from '../../src/stage/map-areas.ts';
import { edgeAt, levelsOf, roomFor, uprightOf, type Shape } from '../../src/stage/map-shape.ts';
import { madeUpMap } from './insight-views.ts';

const kinds = ['none', 'breath', 'fins', 'gas', 'all', 'lead', 'lost'] as const;
const ways = [-1, 0, 1] as const;

/** Columns of any bands from 0 to 30 m without gaps. */
const columns = fc.array(
  fc
    .array(
      fc.record({
        high: fc.float({ min: 0.125, max: 5, noNaN: true }),
        means: fc.constantFrom(...kinds),
        way: fc.constantFrom(...ways),
      }),
      { minLength: 1, maxLength: 7 },
    )
    .map((parts) => {
      const whole = parts.reduce((sum, { high }) => sum + high, 0);
      let fromM = 0;
      return parts.map(({ high, means, way }, i): MapBand => {
        const toM = i === parts.length - 1 ? 30 : fromM + (high / whole) * 30;
        const band = { fromM, toM, means, way };
        fromM = toM;
        return band;
      });
    }),
  { minLength: 2, maxLength: 6 },
);

const valuesOf = (count: number) => Array.from({ length: count }, (_, i) => i * i + 1);
const heightAt = (area: Area, x: number) =>
  x < area.across[0]! || x > area.across[area.across.length - 1]!
    ? 0
    : edgeAt(area.across, area.bottomsM, x) - edgeAt(area.across, area.topsM, x);

test('areasOf() covers every column and all between them without gap or overlap', () => {
  fc.assert(
    fc.property(columns, fc.float({ min: Math.fround(0.01), max: Math.fround(0.99), noNaN: true }), (bands, share) => {
      const values = valuesOf(bands.length);
      const areas = areasOf({ across: { kind: 'lead', values }, columns: bands });
      for (let i = 1; i < values.length; i++) {
        const x = values[i - 1]! + (values[i]! - values[i - 1]!) * share;
        const stretches = areas
          .filter(({ across }) => across[0]! <= x && x <= across[across.length - 1]!)
          .map(({ across, topsM, bottomsM }) => [edgeAt(across, topsM, x), edgeAt(across, bottomsM, x)] as const)
          .sort((a, b) => a[0] + a[1] - b[0] - b[1]);
        let downToM = 0;
        for (const [top, bottom] of stretches) {
          expect(top).toBeCloseTo(downToM, 6);
          expect(bottom).toBeGreaterThanOrEqual(top - 1e-9);
          downToM = bottom;
        }
        expect(downToM).toBeCloseTo(30, 6);
      }
    }),
  );
});

test('areasOf() gives each kind as much of a column as its bands have there', () => {
  fc.assert(
    fc.property(columns, (bands) => {
      const values = valuesOf(bands.length);
      const areas = areasOf({ across: { kind: 'speed', values }, columns: bands });
      bands.forEach((column, i) => {
        for (const means of kinds)
          for (const way of ways) {
            const alike = (each: { means: string; way: number }) => each.means === means && each.way === way;
            const inBands = column.filter(alike).reduce((sum, { fromM, toM }) => sum + toM - fromM, 0);
            const inAreas = areas.filter(alike).reduce((sum, area) => sum + heightAt(area, values[i]!), 0);
            expect(inAreas).toBeCloseTo(inBands, 6);
          }
      });
    }),
  );
});

test('areasOf() joins the bands of a smooth map into one area each, its edges straight from column to column', () => {
  const map = madeUpMap(5e-3, 8);
  const areas = areasOf(map);
  const names = areas.map(({ means, way }) => `${means} ${way}`);
  expect(new Set(names).size).toBe(names.length);
  expect(names).toContain('lost 1');
  expect(names).toContain('lost -1');
});

const wedge: Shape = { xs: [0, 10, 20], tops: [0, 5, 0], bottoms: [10, 10, 20] };

test('levelsOf() and uprightOf() are the chords of a shape', () => {
  expect(uprightOf(wedge, 5)).toEqual([2.5, 10]);
  expect(uprightOf(wedge, 21)).toBeUndefined();
  expect(levelsOf(wedge, 2.5)).toEqual([
    [0, 5],
    [15, 20],
  ]);
  expect(levelsOf(wedge, 7)).toEqual([[0, 20]]);
  expect(levelsOf(wedge, 15)).toEqual([[15, 20]]);
  expect(levelsOf(wedge, 21)).toEqual([]);
});

test('levelsOf() and uprightOf() measure the same area', () => {
  const step = 0.01;
  let [across, down] = [0, 0];
  for (let x = step / 2; x < 20; x += step) {
    const [top, bottom] = uprightOf(wedge, x)!;
    across += (bottom - top) * step;
  }
  for (let y = step / 2; y < 20; y += step)
    for (const [left, right] of levelsOf(wedge, y)) down += (right - left) * step;
  expect(down).toBeCloseTo(across, 3);
  expect(across).toBeCloseTo(200, 3);
});

test('roomFor() is inside the shape over the whole width, and undefined where a box does not fit', () => {
  expect(roomFor(wedge, 4, 14, 4)).toEqual([5, 10]);
  expect(roomFor(wedge, 4, 14, 5.1)).toBeUndefined();
  expect(roomFor(wedge, 16, 20, 4)).toEqual([2, 16]);
});

test('kindOf() tells dangers apart where there is room for words of both, and means alone on a narrow page', () => {
  const area = (means: 'breath' | 'fins', way: 1 | -1) => ({ means, way, across: [], topsM: [], bottomsM: [] });
  expect(kindOf(area('breath', 1), false)).not.toBe(kindOf(area('breath', -1), false));
  expect(kindOf(area('breath', 1), true)).toBe(kindOf(area('breath', -1), true));
  expect(kindOf(area('breath', 1), true)).not.toBe(kindOf(area('fins', 1), true));
});
