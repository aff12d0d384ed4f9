import type { Box } from './words-place.ts';

/** An area of a map on the page: upper and lower edge, pixels, straight between the given places, which ascend. */
export interface Shape {
  readonly xs: readonly number[];
  readonly tops: readonly number[];
  readonly bottoms: readonly number[];
}

/** Heights of the picture that words may use, and of the hair and the dots, which they keep off; all in the map's own pixels. */
export interface Seen {
  readonly top: number;
  readonly bottom: number;
  readonly hair: number;
  readonly dots: readonly Box[];
}

/** Height of an edge at x, by straight lines; beyond its ends that of the end. */
export function edgeAt(xs: readonly number[], ys: readonly number[], x: number): number {
  let [low, high] = [0, xs.length - 1];
  if (x <= xs[low]!) return ys[low]!;
  if (x >= xs[high]!) return ys[high]!;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (xs[middle]! < x) low = middle;
    else high = middle;
  }
  return ys[low]! + ((ys[high]! - ys[low]!) * (x - xs[low]!)) / (xs[high]! - xs[low]!);
}

/** The stretch of x = const within a shape, or undefined beside it. */
export function uprightOf({ xs, tops, bottoms }: Shape, x: number): readonly [top: number, bottom: number] | undefined {
  if (x < xs[0]! || x > xs[xs.length - 1]!) return undefined;
  return [edgeAt(xs, tops, x), edgeAt(xs, bottoms, x)];
}

/** The stretches of y = const within a shape, left to right. */
export function levelsOf({ xs, tops, bottoms }: Shape, y: number): (readonly [left: number, right: number])[] {
  const out: [number, number][] = [];
  for (let i = 1; i < xs.length; i++) {
    const t0 = tops[i - 1]! - y;
    const t1 = tops[i]! - y;
    const b0 = y - bottoms[i - 1]!;
    const b1 = y - bottoms[i]!;
    // Most columns lie wholly beside the height.
    if ((t0 > 0 && t1 > 0) || (b0 > 0 && b1 > 0)) continue;
    const [x0, x1] = [xs[i - 1]!, xs[i]!];
    // Within one column: where y is below the upper edge, and above the lower one.
    const [low, high] = within(t0, t1);
    const [low2, high2] = within(b0, b1);
    const [from, to] = [Math.max(low, low2), Math.min(high, high2)];
    if (!(to > from)) continue;
    const [left, right] = [x0 + (x1 - x0) * from, x0 + (x1 - x0) * to];
    const last = out[out.length - 1];
    if (last && left - last[1] < 1e-6) last[1] = right;
    else out.push([left, right]);
  }
  return out;
}

/** The part of 0…1 in which a straight line from a to b is at most 0. */
function within(a: number, b: number): readonly [number, number] {
  if (a <= 0 && b <= 0) return [0, 1];
  if (a > 0 && b > 0) return [1, 0];
  const at = a / (a - b);
  return a <= 0 ? [0, at] : [at, 1];
}

/** The stretch of heights free for a box from left to right throughout; undefined where it is lower than the box. */
export function roomFor(
  { xs, tops, bottoms }: Shape,
  left: number,
  right: number,
  height: number,
): readonly [top: number, bottom: number] | undefined {
  let top = Math.max(edgeAt(xs, tops, left), edgeAt(xs, tops, right));
  let bottom = Math.min(edgeAt(xs, bottoms, left), edgeAt(xs, bottoms, right));
  for (let i = 0; i < xs.length && bottom - top >= height && xs[i]! <= right; i++) {
    if (xs[i]! < left) continue;
    top = Math.max(top, tops[i]!);
    bottom = Math.min(bottom, bottoms[i]!);
  }
  return bottom - top >= height ? [top, bottom] : undefined;
}
