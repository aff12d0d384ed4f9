/** A point of a section through the tank, metres: x to the right, y downward from the lip of the tank or from a body's own origin. */
export interface Point {
  readonly xM: number;
  readonly yM: number;
}

/** What a closed outline encloses. */
export interface Area {
  readonly areaM2: number;
  /** Its centroid; of an outline without area, its first point. */
  readonly xM: number;
  readonly yM: number;
}

/** Outlines smaller than this enclose nothing, m²: a thousandth of a square millimetre. */
const NOTHING_M2 = 1e-9;

/** Area and centroid of a simple outline, whichever way round it is written. Sums of triangles about the first point (shoelace). */
export function areaOf(outline: readonly Point[]): Area {
  const first = outline[0] ?? { xM: 0, yM: 0 };
  let twice = 0;
  let x = 0;
  let y = 0;
  for (let i = 1; i + 1 < outline.length; i++) {
    const [a, b] = [outline[i]!, outline[i + 1]!];
    const [ax, ay, bx, by] = [a.xM - first.xM, a.yM - first.yM, b.xM - first.xM, b.yM - first.yM];
    const cross = ax * by - bx * ay;
    twice += cross;
    x += cross * (ax + bx);
    y += cross * (ay + by);
  }
  if (Math.abs(twice) < NOTHING_M2) return { areaM2: 0, ...first };
  return { areaM2: Math.abs(twice) / 2, xM: first.xM + x / (3 * twice), yM: first.yM + y / (3 * twice) };
}

/** Second moment of an outline's area about an axis through its centroid and square to the section, m⁴. */
export function polarSecondMomentM4(outline: readonly Point[]): number {
  const { xM, yM } = areaOf(outline);
  let sum = 0;
  let twice = 0;
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i]!;
    const b = outline[(i + 1) % outline.length]!;
    const [ax, ay, bx, by] = [a.xM - xM, a.yM - yM, b.xM - xM, b.yM - yM];
    const cross = ax * by - bx * ay;
    twice += cross;
    sum += cross * (ax * ax + ax * bx + bx * bx + ay * ay + ay * by + by * by);
  }
  return twice === 0 ? 0 : (sum / 12) * Math.sign(twice);
}

/**
 * The part of an outline below a level surface. Where an outline comes up more than once, the parts hang together by edges
 * along the surface, which enclose nothing: areas and centroids are exact all the same (Sutherland and Hodgman 1974, one edge).
 */
export function below(outline: readonly Point[], surfaceYM: number): Point[] {
  const kept: Point[] = [];
  for (let i = 0; i < outline.length; i++) {
    const from = outline[i]!;
    const to = outline[(i + 1) % outline.length]!;
    const [wet, wetAfter] = [from.yM > surfaceYM, to.yM > surfaceYM];
    if (wet) kept.push(from);
    if (wet !== wetAfter) kept.push(crossing(from, to, surfaceYM));
  }
  return kept;
}

/** Area of the part of an outline below a level surface, m²: as `below` and `areaOf` say, in one go and without a list. */
export function wetAreaM2(outline: readonly Point[], surfaceYM: number): number {
  let twice = 0;
  for (let i = 0; i < outline.length; i++) {
    const from = outline[i]!;
    const to = outline[i + 1 < outline.length ? i + 1 : 0]!;
    // Twice the area between the surface and an edge, trapezium by trapezium; an edge through it counts as far as it is wet.
    const [a, b] = [from.yM - surfaceYM, to.yM - surfaceYM];
    const acrossM = to.xM - from.xM;
    if (a >= 0 && b >= 0) twice += acrossM * (a + b);
    else if (a > 0) twice += (acrossM * a * a) / (a - b);
    else if (b > 0) twice += (acrossM * b * b) / (b - a);
  }
  return Math.abs(twice) / 2;
}

/** Where an outline meets a level surface, from left to right, in pairs: inside from the first to the second, and so on. */
export function waterline(outline: readonly Point[], surfaceYM: number): number[] {
  const xs: number[] = [];
  for (let i = 0; i < outline.length; i++) {
    const from = outline[i]!;
    const to = outline[(i + 1) % outline.length]!;
    if (from.yM > surfaceYM !== to.yM > surfaceYM) xs.push(crossing(from, to, surfaceYM).xM);
  }
  return xs.sort((a, b) => a - b);
}

/** An outline turned about the origin, clockwise on a page with y downward positive, and then moved. */
export function placed(outline: readonly Point[], angleRad: number, at: Point): Point[] {
  const cos = Math.cos(angleRad);
  const sin = Math.sin(angleRad);
  return outline.map(({ xM, yM }) => ({ xM: at.xM + xM * cos - yM * sin, yM: at.yM + xM * sin + yM * cos }));
}

function crossing(from: Point, to: Point, yM: number): Point {
  const share = (yM - from.yM) / (to.yM - from.yM);
  return { xM: from.xM + share * (to.xM - from.xM), yM };
}
