import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  LENGTH_M,
  PUTTY_BALL,
  PUTTY_BOAT,
  PUTTY_RANGES,
  PUTTY_TRAY,
  TankDesk,
  areaOf,
  floatingAt,
  materialOf,
  metacentricHeightM,
  puttySection,
  type Point,
  type PuttyShape,
} from '../../src/bench/index.ts';

const AREA_M2 = 2e-3;
const anything = fc.oneof(fc.double(), fc.double({ min: -2, max: 9, noNaN: true }));
const shapes: fc.Arbitrary<PuttyShape> = fc.record({ flatness: anything, hollow: anything, square: anything });

const side = (a: Point, b: Point, c: Point) => (b.xM - a.xM) * (c.yM - a.yM) - (b.yM - a.yM) * (c.xM - a.xM);
/** Whether two edges that do not meet in a corner cross. */
function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  return side(a, b, c) * side(a, b, d) < -1e-24 && side(c, d, a) * side(c, d, b) < -1e-24;
}

describe('puttySection()', () => {
  test('whatever the handles say, the area stays, the centre is the origin and the outline never crosses itself', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const { solid, hull, hollow } = puttySection(shape, AREA_M2);
        const { areaM2, xM, yM } = areaOf(solid);
        expect(areaM2 / AREA_M2).toBeCloseTo(1, 9);
        expect(xM).toBeCloseTo(0, 9);
        expect(yM).toBeCloseTo(0, 9);
        expect(areaOf(hull).areaM2).toBeCloseTo(AREA_M2 + (hollow.length > 0 ? areaOf(hollow).areaM2 : 0), 8);
        for (let i = 0; i < solid.length; i++)
          for (let k = i + 2; k < solid.length; k++) {
            if (i === 0 && k === solid.length - 1) continue;
            const crosses = cross(solid[i]!, solid[i + 1]!, solid[k]!, solid[(k + 1) % solid.length]!);
            if (crosses) expect({ shape, i, k }).toBe('an outline that does not cross itself');
          }
      }),
      { numRuns: 200 },
    );
  });

  test('whatever handles are set to, one after the other in the tank: the mass stays, and the section weighs it', () => {
    const handle = fc.record({ id: fc.constantFrom('flatness', 'hollow', 'square'), value: anything });
    fc.assert(
      fc.property(fc.array(handle, { minLength: 1, maxLength: 6 }), (handles) => {
        const desk = new TankDesk();
        for (const { id, value } of handles) desk.hear({ do: 'dial', id, value });
        const { thing } = desk.view().things[0]!;
        expect(thing.massKg).toBe(0.35);
        expect(areaOf(thing.solid).areaM2 * LENGTH_M * materialOf('putty').densityKgPerM3).toBeCloseTo(0.35, 9);
      }),
      { numRuns: 60 },
    );
  });

  test('a top that is flat but for a rounding is a body like any other', () => {
    const desk = new TankDesk();
    desk.hear({ do: 'dial', id: 'hollow', value: -6.674401171723006e-16 });
    const { thing } = desk.view().things[0]!;
    expect(thing.pieces).toHaveLength(1);
    expect(areaOf(thing.solid).areaM2 * LENGTH_M * materialOf('putty').densityKgPerM3).toBeCloseTo(0.35, 9);
  });

  test('a small turn of a handle moves the outline little: no jump from ball to tray', () => {
    const way = Array.from({ length: 401 }, (_, i) => {
      const share = i / 400;
      const mix = (key: keyof PuttyShape) => PUTTY_BALL[key] + share * (PUTTY_TRAY[key] - PUTTY_BALL[key]);
      return areaOf(
        puttySection({ flatness: mix('flatness'), hollow: mix('hollow'), square: mix('square') }, AREA_M2).hull,
      );
    });
    for (let i = 1; i < way.length; i++)
      expect(Math.abs(way[i]!.areaM2 - way[i - 1]!.areaM2)).toBeLessThan(
        0.03 * AREA_M2 * (1 + way[i]!.areaM2 / AREA_M2),
      );
  });

  test('the ball is round', () => {
    const { solid, hollow } = puttySection(PUTTY_BALL, AREA_M2);
    const radii = solid.map(({ xM, yM }) => Math.hypot(xM, yM));
    const r = Math.sqrt(AREA_M2 / Math.PI);
    expect(Math.min(...radii) / r).toBeGreaterThan(0.995);
    expect(Math.max(...radii) / r).toBeLessThan(1.005);
    expect(hollow).toEqual([]);
  });

  test('as a ball it sinks; the same mass as a tray or a boat floats upright', () => {
    const { densityKgPerM3 } = materialOf('putty');
    const afloat = (shape: PuttyShape) => {
      const { hull } = puttySection(shape, AREA_M2);
      return { hull, lengthM: 0.1, massKg: AREA_M2 * 0.1 * densityKgPerM3 };
    };
    expect(floatingAt(afloat(PUTTY_BALL), 0, 1000)).toBeNull();
    for (const shape of [PUTTY_TRAY, PUTTY_BOAT]) {
      expect(floatingAt(afloat(shape), 0, 1000)!.freeboardM).toBeGreaterThan(0.005);
      expect(metacentricHeightM(afloat(shape), 0, 1000)!).toBeGreaterThan(0);
    }
  });

  test('puttySection() throws if the area is not positive', () => {
    for (const areaM2 of [0, -1, NaN]) expect(() => puttySection(PUTTY_BALL, areaM2)).toThrow('must be positive');
    expect(PUTTY_RANGES.hollow[1]).toBeLessThan(1);
  });
});
