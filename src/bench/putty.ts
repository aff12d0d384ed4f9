import { areaOf, type Point } from './section.ts';

/** A lump of putty of fixed mass, as it has been shaped. Every number may be set freely: it is brought into its range. */
export interface PuttyShape {
  /** Width from rim to rim over the depth below the rim: 2 is round, more is flatter. */
  readonly flatness: number;
  /** How deep the hollow is, of the height below the rim: 0 flat on top, up to 0.92; negative a dome, −1 a whole ball. */
  readonly hollow: number;
  /** How square the sides stand: 0 round as a bowl, 1 nearly a box. */
  readonly square: number;
}

/** What each number may be. */
export const PUTTY_RANGES: Readonly<Record<keyof PuttyShape, readonly [least: number, most: number]>> = {
  flatness: [1, 8],
  hollow: [-1, 0.92],
  square: [0, 1],
};

/** Shapes on the way from a lump to a boat. */
export const PUTTY_BALL: PuttyShape = { flatness: 2, hollow: -1, square: 0 };
export const PUTTY_TRAY: PuttyShape = { flatness: 4, hollow: 0.88, square: 1 };
export const PUTTY_BOAT: PuttyShape = { flatness: 3.2, hollow: 0.9, square: 0.25 };

/** Corners along each of the two curves. Chosen: a ball's area is exact by scaling whatever the number. */
const CORNERS = 24;
/** The thickest a wall gets at its rim, as a share of the half width. Chosen. */
const RIM_SHARE = 0.12;

/** A shape brought into its ranges; what is no number becomes the least. */
export function allowedShape(shape: PuttyShape): PuttyShape {
  const within = (key: keyof PuttyShape) => {
    const [least, most] = PUTTY_RANGES[key];
    const value = shape[key];
    return value >= least ? Math.min(value, most) : least;
  };
  return { flatness: within('flatness'), hollow: within('hollow'), square: within('square') };
}

/** The lump in section: the putty itself, and the hull that keeps water out, both with the putty's centre at the origin. */
export interface PuttySection {
  readonly solid: readonly Point[];
  /** The outside, closed from rim to rim; the same as the putty where it has no hollow. */
  readonly hull: readonly Point[];
  /** The hollow, closed from rim to rim; empty where there is none. */
  readonly hollow: readonly Point[];
}

/**
 * The section of a lump of a given area. Outside below the rim: |x/a|ⁿ + |y/b|ⁿ = 1 with n from 2 to 8 as the sides stand; above
 * it a dome of the same kind, or a hollow, whose floor and walls lie within the outside, so that the outline never crosses itself.
 * @param areaM2 of the putty; kept to rounding whatever the shape
 * @throws {RangeError} when the area is not positive
 */
export function puttySection(shape: PuttyShape, areaM2: number): PuttySection {
  if (!(areaM2 > 0)) throw new RangeError(`puttySection: areaM2 is ${areaM2}; it must be positive`);
  const { flatness, hollow, square } = allowedShape(shape);
  const power = 2 + 6 * square * square;
  const deep = 1;
  const half = flatness / 2;
  const isHollow = hollow > 0;
  const inside = isHollow ? half * (1 - RIM_SHARE * Math.min(1, hollow * 4)) : half;
  const outer = curve(half, deep, power);
  const inner = curve(inside, hollow * deep, power);
  const whole = [...outer, ...inner.slice(isHollow ? 0 : 1, isHollow ? undefined : -1).reverse()];
  const { areaM2: unit, xM, yM } = areaOf(whole);
  const scale = Math.sqrt(areaM2 / unit);
  const scaled = (points: readonly Point[]) =>
    points.map((point) => ({ xM: (point.xM - xM) * scale, yM: (point.yM - yM) * scale }));
  const solid = scaled(whole);
  return isHollow ? { solid, hull: scaled(outer), hollow: scaled(inner) } : { solid, hull: solid, hollow: [] };
}

/** From the left rim to the right one, below the rim for a positive depth, above it for a negative one. */
function curve(half: number, depth: number, power: number): Point[] {
  return Array.from({ length: CORNERS + 1 }, (_, i) => {
    const angle = Math.PI * (1 - i / CORNERS);
    const x = Math.sign(Math.cos(angle)) * Math.abs(Math.cos(angle)) ** (2 / power);
    const y = Math.abs(Math.sin(angle)) ** (2 / power);
    // The rims themselves are exact: a sine of π is not.
    return { xM: half * x, yM: i === 0 || i === CORNERS ? 0 : depth * y };
  });
}
