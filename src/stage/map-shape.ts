/** An area of a map on the page: upper and lower edge, pixels, straight between the given places, which ascend. */
export interface Shape {
  readonly xs: readonly number[];
  readonly tops: readonly number[];
  readonly bottoms: readonly number[];
}

/** Height of an edge at x, by straight lines; beyond its ends that of the end. */
export function edgeAt(xs: readonly number[], ys: readonly number[], x: number): number {
  if (x <= xs[0]!) return ys[0]!;
  for (let i = 1; i < xs.length; i++)
    if (x <= xs[i]!) {
      const span = xs[i]! - xs[i - 1]!;
      return span === 0 ? ys[i]! : ys[i - 1]! + ((ys[i]! - ys[i - 1]!) * (x - xs[i - 1]!)) / span;
    }
  return ys[ys.length - 1]!;
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
    const [x0, x1] = [xs[i - 1]!, xs[i]!];
    // Within one column: where y is below the upper edge, and above the lower one.
    const [low, high] = within(tops[i - 1]! - y, tops[i]! - y);
    const [low2, high2] = within(y - bottoms[i - 1]!, y - bottoms[i]!);
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

/** The stretch of heights free for a box from left to right throughout; empty when its end lies above its start. */
export function roomFor(
  { xs, tops, bottoms }: Shape,
  left: number,
  right: number,
): readonly [top: number, bottom: number] {
  let top = Math.max(edgeAt(xs, tops, left), edgeAt(xs, tops, right));
  let bottom = Math.min(edgeAt(xs, bottoms, left), edgeAt(xs, bottoms, right));
  xs.forEach((x, i) => {
    if (x < left || x > right) return;
    top = Math.max(top, tops[i]!);
    bottom = Math.min(bottom, bottoms[i]!);
  });
  return [top, bottom];
}
