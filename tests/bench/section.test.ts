import fc from 'fast-check';
import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { areaOf, below, placed, polarSecondMomentM4, waterline, wetAreaM2, type Point } from '../../src/bench/index.ts';

const at = (xM: number, yM: number): Point => ({ xM, yM });
const RECTANGLE = [at(0, 0), at(0.4, 0), at(0.4, 0.1), at(0, 0.1)];

/** Star-shaped outlines are simple, and hollow enough to come up through a surface more than once. */
const outlines = fc
  .tuple(
    fc.array(fc.double({ min: 0.02, max: 0.5, noNaN: true }), { minLength: 3, maxLength: 24 }),
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.boolean(),
  )
  .map(([radii, turned, backward]) => {
    const points = radii.map((r, i) => {
      const angle = turned + (2 * Math.PI * i) / radii.length;
      return at(r * Math.cos(angle), r * Math.sin(angle));
    });
    return backward ? points.reverse() : points;
  });

describe('areaOf(), below()', () => {
  test('a rectangle, half of it and none of it', () => {
    expect(areaOf(RECTANGLE)).toEqual({
      areaM2: expect.closeTo(0.04, 12),
      xM: expect.closeTo(0.2),
      yM: expect.closeTo(0.05),
    });
    const wet = areaOf(below(RECTANGLE, 0.04));
    expect(wet.areaM2).toBeCloseTo(0.024, 12);
    expect(wet.yM).toBeCloseTo(0.07, 12);
    expect(below(RECTANGLE, 0.1)).toEqual([]);
    expect(below(RECTANGLE, -1)).toEqual(RECTANGLE);
  });

  test('area and centroid under a surface are those of the clipping library, for any outline and surface', () => {
    fc.assert(
      fc.property(outlines, fc.double({ min: -0.5, max: 0.5, noNaN: true }), (outline, surfaceM) => {
        const wet = areaOf(below(outline, surfaceM));
        const ring = outline.map(({ xM, yM }): [number, number] => [xM, yM]);
        const box: [number, number][] = [
          [-2, surfaceM],
          [2, surfaceM],
          [2, 2],
          [-2, 2],
        ];
        const parts = polygonClipping.intersection([ring], [box]).flatMap((polygon) =>
          polygon.map((part, i) => ({
            ...areaOf(part.slice(0, -1).map(([x, y]) => at(x, y))),
            sign: i === 0 ? 1 : -1,
          })),
        );
        const areaM2 = parts.reduce((sum, part) => sum + part.sign * part.areaM2, 0);
        expect(wet.areaM2).toBeCloseTo(areaM2, 6);
        expect(wetAreaM2(outline, surfaceM)).toBeCloseTo(wet.areaM2, 12);
        if (areaM2 < 1e-4) return;
        const mean = (of: 'xM' | 'yM') =>
          parts.reduce((sum, part) => sum + part.sign * part.areaM2 * part[of], 0) / areaM2;
        expect(wet.xM).toBeCloseTo(mean('xM'), 6);
        expect(wet.yM).toBeCloseTo(mean('yM'), 6);
      }),
      { numRuns: 500 },
    );
  });

  test('area under a surface against fine sampling: rows between the depths of corners, where widths are linear', () => {
    const rows = 400;
    fc.assert(
      fc.property(outlines, fc.double({ min: -0.4, max: 0.4, noNaN: true }), (outline, surfaceM) => {
        const corners = outline.map(({ yM }) => yM).filter((yM) => yM > surfaceM);
        const depths = [...(corners.length > 0 ? [surfaceM] : []), ...corners].sort((a, b) => a - b);
        let sum = 0;
        let moment = 0;
        for (let k = 1; k < depths.length; k++)
          for (let i = 0; i < rows; i++) {
            const high = (depths[k]! - depths[k - 1]!) / rows;
            const y = depths[k - 1]! + high * (i + 0.5);
            const xs = waterline(outline, y);
            let wide = 0;
            for (let n = 0; n + 1 < xs.length; n += 2) wide += xs[n + 1]! - xs[n]!;
            sum += wide * high;
            moment += wide * y * high;
          }
        const wet = areaOf(below(outline, surfaceM));
        expect(Math.abs(wet.areaM2 - sum)).toBeLessThan(1e-6);
        expect(Math.abs(wet.areaM2 * wet.yM - moment)).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('turning and moving keep area and polar moment, and carry the centroid along', () => {
    fc.assert(
      fc.property(outlines, fc.double({ min: -7, max: 7, noNaN: true }), (outline, angle) => {
        const before = areaOf(outline);
        const moved = placed(outline, angle, at(3, -2));
        const after = areaOf(moved);
        const [centre] = placed([at(before.xM, before.yM)], angle, at(3, -2));
        expect(after.areaM2).toBeCloseTo(before.areaM2, 9);
        if (before.areaM2 < 1e-3) return;
        expect(after.xM).toBeCloseTo(centre!.xM, 8);
        expect(after.yM).toBeCloseTo(centre!.yM, 8);
        expect(polarSecondMomentM4(moved)).toBeCloseTo(polarSecondMomentM4(outline), 9);
      }),
    );
  });

  test('the polar moment of a rectangle: bh(b² + h²)/12', () => {
    expect(polarSecondMomentM4(RECTANGLE)).toBeCloseTo((0.4 * 0.1 * (0.4 ** 2 + 0.1 ** 2)) / 12, 12);
  });
});
