import { materialOf, type MaterialId } from './materials.ts';
import { puttySection, type PuttyShape } from './putty.ts';
import { areaOf, polarSecondMomentM4, type Point } from './section.ts';

/** All things are prisms of this length square to the section, metres: the tank is as deep from front to back. */
export const LENGTH_M = 0.1;

/** What can be put in the tank. Lengths in metres, masses in kilograms, sections in m². */
export type ThingSpec =
  | { readonly kind: 'putty'; readonly massKg: number; readonly shape: PuttyShape }
  /** A round stone of any density: five of one size make a row. */
  | { readonly kind: 'stone'; readonly massKg: number; readonly volumeM3: number }
  | { readonly kind: 'odd-stone'; readonly material: MaterialId; readonly massKg: number }
  | { readonly kind: 'block'; readonly material: MaterialId; readonly widthM: number; readonly heightM: number }
  /** A closed can: steel all round, air inside. */
  | { readonly kind: 'can'; readonly widthM: number; readonly heightM: number; readonly wallM: number };

/** A thing worked out: outlines about its centre of mass. */
export interface Thing {
  readonly spec: ThingSpec;
  readonly massKg: number;
  /** Square to the section through the centre of mass, kg m². */
  readonly inertiaKgM2: number;
  /** What is drawn, what keeps water out, and what may fill up: see the putty. */
  readonly solid: readonly Point[];
  readonly hull: readonly Point[];
  readonly hollow: readonly Point[];
  /** The same in convex pieces, for whatever touches it. */
  readonly pieces: readonly (readonly Point[])[];
}

/** Widths and heights, walls, masses and volumes that the bench allows. Chosen: what fits the tank and can be seen. */
export const THING_RANGES = {
  sizeM: [0.02, 0.4],
  wallM: [0.0005, 0.02],
  massKg: [0.005, 8],
  volumeM3: [2e-5, 2e-3],
} as const;

/** Corners of what is round. */
const ROUND = 40;
/** Convex pieces into which the wall of a hollow is cut. */
const PIECES = 16;

/** A thing from what it is to be. @throws {RangeError} where a number is out of its range, saying which and what is allowed */
export function thingOf(spec: ThingSpec): Thing {
  switch (spec.kind) {
    case 'putty':
      return puttyThing(spec);
    case 'stone': {
      within('volumeM3', spec.volumeM3, THING_RANGES.volumeM3);
      return full(spec, roundOf(spec.volumeM3 / LENGTH_M), within('massKg', spec.massKg, THING_RANGES.massKg));
    }
    case 'odd-stone': {
      const areaM2 =
        within('massKg', spec.massKg, THING_RANGES.massKg) / (materialOf(spec.material).densityKgPerM3 * LENGTH_M);
      return full(spec, oddOf(areaM2), spec.massKg);
    }
    case 'block': {
      const outline = boxOf(
        within('widthM', spec.widthM, THING_RANGES.sizeM),
        within('heightM', spec.heightM, THING_RANGES.sizeM),
      );
      return full(spec, outline, areaOf(outline).areaM2 * LENGTH_M * materialOf(spec.material).densityKgPerM3);
    }
    case 'can':
      return canThing(spec);
  }
}

function puttyThing(spec: Extract<ThingSpec, { kind: 'putty' }>): Thing {
  const { densityKgPerM3 } = materialOf('putty');
  const massKg = within('massKg', spec.massKg, THING_RANGES.massKg);
  const section = puttySection(spec.shape, massKg / (densityKgPerM3 * LENGTH_M));
  const inertiaKgM2 = polarSecondMomentM4(section.solid) * LENGTH_M * densityKgPerM3;
  const pieces = section.hollow.length > 0 ? wallPieces(section.hull, section.hollow) : [thinned(section.solid)];
  return { spec, massKg, inertiaKgM2, ...section, pieces };
}

function canThing(spec: Extract<ThingSpec, { kind: 'can' }>): Thing {
  const { densityKgPerM3 } = materialOf('steel');
  const [widthM, heightM] = [
    within('widthM', spec.widthM, THING_RANGES.sizeM),
    within('heightM', spec.heightM, THING_RANGES.sizeM),
  ];
  const wallM = Math.min(within('wallM', spec.wallM, THING_RANGES.wallM), widthM / 2, heightM / 2);
  const outline = boxOf(widthM, heightM);
  // Closed at the front and back as well: the air inside is shorter than the can by two walls.
  const [airWide, airHigh, airLong] = [widthM - 2 * wallM, heightM - 2 * wallM, Math.max(0, LENGTH_M - 2 * wallM)];
  const air = boxOf(airWide, airHigh);
  const massKg = densityKgPerM3 * (widthM * heightM * LENGTH_M - airWide * airHigh * airLong);
  const inertiaKgM2 = densityKgPerM3 * (polarSecondMomentM4(outline) * LENGTH_M - polarSecondMomentM4(air) * airLong);
  return { spec, massKg, inertiaKgM2, solid: outline, hull: outline, hollow: [], pieces: [outline] };
}

/** A full thing of one density. */
function full(spec: ThingSpec, outline: readonly Point[], massKg: number): Thing {
  const { areaM2 } = areaOf(outline);
  const inertiaKgM2 = (polarSecondMomentM4(outline) / areaM2) * massKg;
  return { spec, massKg, inertiaKgM2, solid: outline, hull: outline, hollow: [], pieces: [outline] };
}

function boxOf(widthM: number, heightM: number): Point[] {
  const [x, y] = [widthM / 2, heightM / 2];
  return [
    { xM: -x, yM: -y },
    { xM: x, yM: -y },
    { xM: x, yM: y },
    { xM: -x, yM: y },
  ];
}

/** A regular outline of just this area. */
function roundOf(areaM2: number): Point[] {
  const r = Math.sqrt((2 * areaM2) / (ROUND * Math.sin((2 * Math.PI) / ROUND)));
  return Array.from({ length: ROUND }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.5)) / ROUND;
    return { xM: r * Math.cos(angle), yM: r * Math.sin(angle) };
  });
}

/** Distances of the corners of the odd stone from a point within, in turn. Invented; convex. */
const ODD = [1, 0.86, 0.93, 1.05, 0.82, 0.95, 1.12, 1.02] as const;

function oddOf(areaM2: number): Point[] {
  const rough = ODD.map((r, i) => {
    const angle = (2 * Math.PI * i) / ODD.length;
    return { xM: r * 1.3 * Math.cos(angle), yM: r * Math.sin(angle) };
  });
  const { areaM2: unit, xM, yM } = areaOf(rough);
  const scale = Math.sqrt(areaM2 / unit);
  return rough.map((point) => ({ xM: (point.xM - xM) * scale, yM: (point.yM - yM) * scale }));
}

/** The wall between an outside and a hollow, cut across into quadrangles. */
function wallPieces(hull: readonly Point[], hollow: readonly Point[]): Point[][] {
  const along = (points: readonly Point[], i: number) => points[Math.round((i * (points.length - 1)) / PIECES)]!;
  return Array.from({ length: PIECES }, (_, i) => [
    along(hull, i),
    along(hull, i + 1),
    along(hollow, i + 1),
    along(hollow, i),
  ]);
}

function thinned(outline: readonly Point[]): Point[] {
  return outline.filter((_, i) => i % 2 === 0);
}

function within(name: string, value: number, [least, most]: readonly [number, number]): number {
  if (value >= least && value <= most) return value;
  throw new RangeError(`thingOf: ${name} is ${value}; ${least} to ${most} is allowed`);
}
