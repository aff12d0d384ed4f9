import { describe, expect, test } from 'vitest';
import {
  areaOf,
  floatingAt,
  metacentricHeightM,
  restingAngles,
  rightingNm,
  type Floater,
  type Point,
} from '../../src/bench/index.ts';

const WATER = 1000;
const G = 9.80665;
const at = (xM: number, yM: number): Point => ({ xM, yM });

/** A full section, its centre of mass in its centroid. */
function solid(outline: readonly Point[], densityKgPerM3: number, lengthM = 0.3): Floater {
  const { areaM2, xM, yM } = areaOf(outline);
  const hull = outline.map((point) => at(point.xM - xM, point.yM - yM));
  return { hull, lengthM, massKg: areaM2 * lengthM * densityKgPerM3 };
}

const box = (b: number, h: number) => [at(0, 0), at(b, 0), at(b, h), at(0, h)];
const arc = (from: number, to: number, r: number, n = 4000) =>
  Array.from({ length: n + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / n;
    return at(r * Math.cos(angle), r * Math.sin(angle));
  });
const cylinder = (r: number) => arc(0, 2 * Math.PI, r).slice(0, -1);
/** The round side down. */
const bowl = (r: number) => arc(0, Math.PI, r);
/** The edge down. */
const wedge = (b: number, h: number) => [at(-b / 2, 0), at(b / 2, 0), at(0, h)];

describe('floatingAt() against closed forms', () => {
  test.each([0.1, 0.35, 0.5, 0.8, 0.999])('a box of relative density %f floats that share of its height deep', (s) => {
    const floating = floatingAt(solid(box(0.4, 0.12), s * WATER), 0, WATER)!;
    expect(floating.draughtM).toBeCloseTo(s * 0.12, 9);
    expect(floating.freeboardM).toBeCloseTo((1 - s) * 0.12, 9);
    expect(floating.buoyancyYM).toBeCloseTo((0.12 - s * 0.12) / 2, 9);
  });

  test.each([0.1, 0.4, 0.9])('a wedge of relative density %f, edge down: draught h√s', (s) => {
    expect(floatingAt(solid(wedge(0.3, 0.2), s * WATER), 0, WATER)!.draughtM).toBeCloseTo(0.2 * Math.sqrt(s), 9);
  });

  test.each([0.1, 0.5, 0.75])('a cylinder lying: the segment θ − sin θ = 2πs is under, whatever its angle', (s) => {
    const r = 0.08;
    for (const angle of [0, 0.7, 3]) {
      const { draughtM } = floatingAt(solid(cylinder(r), s * WATER), angle, WATER)!;
      const half = Math.acos(1 - draughtM / r);
      expect((2 * half - Math.sin(2 * half)) / (2 * Math.PI)).toBeCloseTo(s, 5);
    }
  });

  test.each([0.2, 0.6])('half a cylinder, round side down: the segment under is s of half a circle', (s) => {
    const r = 0.1;
    const { draughtM } = floatingAt(solid(bowl(r), s * WATER), 0, WATER)!;
    const half = Math.acos(1 - draughtM / r);
    expect((2 * half - Math.sin(2 * half)) / Math.PI).toBeCloseTo(s, 5);
  });

  test('a tray floats mass over density and plan deep; denser water lifts it by the ratio of densities', () => {
    const tray: Floater = {
      hull: box(0.3, 0.05).map(({ xM, yM }) => at(xM - 0.15, yM - 0.04)),
      lengthM: 0.2,
      massKg: 1.2,
    };
    const fresh = floatingAt(tray, 0, WATER)!;
    const salt = floatingAt(tray, 0, 1026)!;
    expect(fresh.draughtM).toBeCloseTo(1.2 / (WATER * 0.3 * 0.2), 9);
    expect(salt.draughtM).toBeCloseTo((fresh.draughtM * WATER) / 1026, 9);
  });

  test('what is denser than water as a whole sinks', () => {
    expect(floatingAt(solid(box(0.1, 0.1), 1001), 0, WATER)).toBeNull();
    expect(rightingNm(solid(box(0.1, 0.1), 1001), 0.2, WATER, G)).toBe(0);
    expect(metacentricHeightM(solid(box(0.1, 0.1), 1001), 0.2, WATER)).toBeNull();
  });
});

// BM = I/V, and for a barge b²/(12 d): E. C. Tupper, Introduction to Naval Architecture, on initial stability (recalled).
describe('metacentricHeightM(), rightingNm(): a rectangular barge', () => {
  test.each([0.2, 0.5, 0.9])('GM = b²/(12 sh) − h(1 − s)/2 at relative density %f', (s) => {
    const [b, h] = [0.5, 0.1];
    const gm = b ** 2 / (12 * s * h) - (h * (1 - s)) / 2;
    expect(metacentricHeightM(solid(box(b, h), s * WATER), 0, WATER)).toBeCloseTo(gm, 8);
  });

  test('small heels: moment m g GM sin φ within 0.1 %', () => {
    const barge = solid(box(0.5, 0.1), 500);
    const gm = metacentricHeightM(barge, 0, WATER)!;
    const phi = 0.5 * (Math.PI / 180);
    expect(rightingNm(barge, phi, WATER, G) / (barge.massKg * G * gm * Math.sin(phi))).toBeCloseTo(1, 3);
  });

  test('up to the dry corner: GZ = sin φ (GM + ½ BM tan² φ), the wall-sided formula, to 1e-6', () => {
    const [b, h, s] = [0.5, 0.1, 0.5];
    const barge = solid(box(b, h), s * WATER);
    const bm = b ** 2 / (12 * s * h);
    const gm = bm - (h * (1 - s)) / 2;
    // The deck edge goes under at tan φ = h(1 − s) / (b/2), 11.3°.
    for (const degrees of [2, 5, 8, 11]) {
      const phi = (degrees * Math.PI) / 180;
      const gz = Math.sin(phi) * (gm + 0.5 * bm * Math.tan(phi) ** 2);
      expect(rightingNm(barge, phi, WATER, G) / (barge.massKg * G)).toBeCloseTo(gz, 6);
    }
  });
});

describe('restingAngles()', () => {
  test('a flat barge rests on either face, a square log of half density on an edge', () => {
    const faces = restingAngles(solid(box(0.5, 0.1), 500), WATER);
    expect(faces.map((angle) => Math.abs(angle)).sort((a, b) => a - b)).toEqual([
      expect.closeTo(0, 5),
      expect.closeTo(Math.PI, 5),
    ]);
    const log = restingAngles(solid(box(0.1, 0.1), 500), WATER);
    expect(log).toHaveLength(4);
    for (const angle of log) expect(Math.abs(Math.sin(2 * angle))).toBeCloseTo(1, 4);
  });

  test('the square log: floats level only where s(1 − s) < 1/6, by GM > 0', () => {
    for (const s of [0.1, 0.2, 0.22, 0.3, 0.7, 0.85]) {
      const level = restingAngles(solid(box(0.1, 0.1), s * WATER), WATER).some((angle) => Math.abs(angle) < 1e-4);
      expect({ s, level }).toEqual({ s, level: s * (1 - s) < 1 / 6 });
    }
  });
});
