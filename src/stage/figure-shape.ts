/** A point of the figure in its own frame: metres from mid-chest toward the head and toward the belly. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A place on the spine of a limb, with how far flesh reaches toward the back and toward the belly. */
export interface Rib extends Spot {
  readonly back: number;
  readonly belly: number;
}

/** A rib of equal reach to both sides. */
export function rib(x: number, y: number, back: number, belly = back): Rib {
  return { x, y, back, belly };
}

/** Smooth curve through four values, at a share of the way between the middle two (Catmull and Rom). */
function smooth(a: number, b: number, c: number, d: number, t: number): number {
  return b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}

/**
 * Outline of a limb, as x, y pairs of a closed polygon: flesh on both sides of a smooth spine, its ends rounded.
 * @param ribs at least two, from one end to the other
 */
export function hull(ribs: readonly Rib[], steps = 5): number[] {
  const spine: Rib[] = [];
  const at = (i: number) => ribs[Math.min(Math.max(i, 0), ribs.length - 1)]!;
  for (let i = 0; i < ribs.length - 1; i++)
    for (let k = 0; k < steps; k++) {
      const four = [at(i - 1), at(i), at(i + 1), at(i + 2)] as const;
      const of = (name: keyof Rib) => smooth(four[0][name], four[1][name], four[2][name], four[3][name], k / steps);
      spine.push(rib(of('x'), of('y'), of('back'), of('belly')));
    }
  spine.push(at(ribs.length - 1));
  const one: number[] = [];
  const other: number[] = [];
  spine.forEach((here, i) => {
    const before = spine[Math.max(i - 1, 0)]!;
    const after = spine[Math.min(i + 1, spine.length - 1)]!;
    const dx = after.x - before.x;
    const dy = after.y - before.y;
    const length = Math.hypot(dx, dy) || 1;
    one.push(here.x - (dy / length) * here.back, here.y + (dx / length) * here.back);
    other.unshift(here.x + (dy / length) * here.belly, here.y - (dx / length) * here.belly);
  });
  const start = spine[0]!;
  const end = spine[spine.length - 1]!;
  const last = spine[spine.length - 2]!;
  return [...one, ...cap(end, last), ...other, ...cap(start, spine[1]!)];
}

/** Half circle around the end of a limb, from its back side to its belly side, seen from the rib before it. */
function cap(end: Rib, inner: Rib): number[] {
  const angle = Math.atan2(end.y - inner.y, end.x - inner.x);
  const radius = (end.back + end.belly) / 2;
  return [0.75, 0.5, 0.25, 0, -0.25, -0.5, -0.75].flatMap((share) => {
    const a = angle + (share * Math.PI) / 2;
    return [end.x + Math.cos(a) * radius, end.y + Math.sin(a) * radius];
  });
}

/** Egg of a given length and area, the blunt end toward the feet, as x, y pairs about its middle. */
export function lobe(middle: Spot, halfLength: number, areaM2: number, blunt = 0.2): number[] {
  const half = areaM2 / (Math.PI * halfLength);
  return Array.from({ length: 28 }, (_, i) => {
    const a = (i / 28) * 2 * Math.PI;
    return [middle.x + halfLength * Math.cos(a), middle.y + half * Math.sin(a) * (1 - blunt * Math.cos(a))];
  }).flat();
}

/** Elbow of an arm of two bones from a shoulder to a hand, on the side of the belly and the feet; an arm too short for its hand is drawn longer. */
export function elbow(shoulder: Spot, hand: Spot, upperM: number, lowerM: number): Spot {
  const dx = hand.x - shoulder.x;
  const dy = hand.y - shoulder.y;
  const reach = Math.hypot(dx, dy) || 1e-6;
  const longer = Math.max(1, reach / ((upperM + lowerM) * 0.98));
  const [upper, lower] = [upperM * longer, lowerM * longer];
  const bend = Math.acos(Math.min(1, Math.max(-1, (upper ** 2 + reach ** 2 - lower ** 2) / (2 * upper * reach))));
  const angle = Math.atan2(dy, dx) + bend;
  return { x: shoulder.x + upper * Math.cos(angle), y: shoulder.y + upper * Math.sin(angle) };
}

/** The same outline with its first side once more, so that a wide stroke joins where it began. */
export function joined(points: readonly number[]): number[] {
  return [...points, ...points.slice(0, 4)];
}
