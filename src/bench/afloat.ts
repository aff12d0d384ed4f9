import { areaOf, below, placed, waterline, type Point } from './section.ts';

/** Something that may float: a prism of one section, its origin at its centre of mass. */
export interface Floater {
  /** What keeps the water out: of a tray its outside, closed over by the line from rim to rim. */
  readonly hull: readonly Point[];
  /** Length square to the section, metres. */
  readonly lengthM: number;
  readonly massKg: number;
}

/** How something lies in still water. */
export interface Floating {
  /** How far the centre of mass is below the surface, metres: negative above it. */
  readonly depthM: number;
  /** How far the lowest point is below the surface, and the highest point of the hull above it, metres. */
  readonly draughtM: number;
  readonly freeboardM: number;
  /** Centre of the displaced water from the centre of mass, metres: to the right, and downward. */
  readonly buoyancyXM: number;
  readonly buoyancyYM: number;
  readonly displacedM3: number;
}

/** A depth is found to within this, metres. */
const FOUND_M = 1e-10;

/**
 * How a floater lies when it is held at an angle and left to find its depth: displaced water as heavy as itself.
 * @param angleRad heel, clockwise
 * @returns null where it sinks
 */
export function floatingAt(floater: Floater, angleRad: number, densityKgPerM3: number): Floating | null {
  const hull = placed(floater.hull, angleRad, { xM: 0, yM: 0 });
  const wantedM2 = floater.massKg / (densityKgPerM3 * floater.lengthM);
  if (areaOf(hull).areaM2 < wantedM2) return null;
  const ys = hull.map(({ yM }) => yM);
  const [topM, bottomM] = [Math.min(...ys), Math.max(...ys)];
  // The surface in the body's own frame, between wholly under and wholly out.
  let under = topM;
  let out = bottomM;
  while (out - under > FOUND_M) {
    const middle = (under + out) / 2;
    if (areaOf(below(hull, middle)).areaM2 > wantedM2) under = middle;
    else out = middle;
  }
  const surfaceM = (under + out) / 2;
  const water = areaOf(below(hull, surfaceM));
  return {
    depthM: -surfaceM,
    draughtM: bottomM - surfaceM,
    freeboardM: surfaceM - topM,
    buoyancyXM: water.xM,
    buoyancyYM: water.yM,
    displacedM3: water.areaM2 * floater.lengthM,
  };
}

/**
 * The moment that turns a heeled floater back, newton metres: positive against the heel. From the true centre of the displaced
 * water, not from the metacentre; 0 where it sinks.
 */
export function rightingNm(floater: Floater, angleRad: number, densityKgPerM3: number, gravityMps2: number): number {
  const floating = floatingAt(floater, angleRad, densityKgPerM3);
  // Upward force at buoyancyXM to the right of the weight turns anticlockwise.
  return floating ? floater.massKg * gravityMps2 * floating.buoyancyXM : 0;
}

/**
 * Metacentric height at an angle, metres: positive where a small heel rights itself. BM = I/V, the second moment of the
 * waterplane about its own centre over the displaced volume; GM = BM − BG, B below G counted positive.
 * @returns null where it sinks
 */
export function metacentricHeightM(floater: Floater, angleRad: number, densityKgPerM3: number): number | null {
  const floating = floatingAt(floater, angleRad, densityKgPerM3);
  if (!floating) return null;
  const hull = placed(floater.hull, angleRad, { xM: 0, yM: floating.depthM });
  const xs = waterline(hull, 0);
  let wide = 0;
  let moment = 0;
  for (let i = 0; i + 1 < xs.length; i += 2) {
    const [a, b] = [xs[i]!, xs[i + 1]!];
    wide += b - a;
    moment += ((b - a) * (a + b)) / 2;
  }
  const middle = wide > 0 ? moment / wide : 0;
  let second = 0;
  for (let i = 0; i + 1 < xs.length; i += 2) second += ((xs[i + 1]! - middle) ** 3 - (xs[i]! - middle) ** 3) / 3;
  return (second * floater.lengthM) / floating.displacedM3 - floating.buoyancyYM;
}

/** Heels are looked at so far apart, radians, before the places between are found to within the other. */
const LOOKED_RAD = Math.PI / 180;
const FOUND_RAD = 1e-7;

/** The angles at which a floater rests, radians from −π to π: the moment vanishes there and rights on either side. */
export function restingAngles(floater: Floater, densityKgPerM3: number): number[] {
  const moment = (angle: number) => rightingNm(floater, angle, densityKgPerM3, 1);
  const found: number[] = [];
  const count = Math.round((2 * Math.PI) / LOOKED_RAD);
  // Half a step aside, so that upright and upside down lie between two looks.
  const angleOf = (i: number) => -Math.PI + (i + 0.5) * LOOKED_RAD;
  let before = moment(angleOf(-1));
  for (let i = 0; i < count; i++) {
    const here = moment(angleOf(i));
    // Turned too far this way it turns back, too far the other way too: the moment goes from negative to positive.
    if (before < 0 && here >= 0) {
      let [low, high] = [angleOf(i - 1), angleOf(i)];
      while (high - low > FOUND_RAD) {
        const middle = (low + high) / 2;
        if (moment(middle) < 0) low = middle;
        else high = middle;
      }
      found.push((low + high) / 2);
    }
    before = here;
  }
  return found;
}
