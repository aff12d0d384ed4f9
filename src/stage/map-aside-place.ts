import { uprightOf, type Seen, type Shape } from './map-shape.ts';
import { crosses, type Box } from './words-place.ts';

/** Words beside an area: their box, and the hair from a point in the area to it, level or upright. */
export interface Aside {
  readonly box: Box;
  readonly turned: boolean;
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  /** What the hair takes on the page. */
  readonly hair: Box;
}

/** What a place beside an area is looked for with; all in the map's own pixels. */
export interface AsideAsk {
  readonly shape: Shape;
  readonly shapes: readonly Shape[];
  readonly size: readonly [width: number, height: number];
  readonly seen: Seen;
  readonly taken: readonly Box[];
  readonly unit: number;
  readonly before: Aside | undefined;
}

/** Places across at which the hair may leave the area, and distances that it may bridge, in heights of the words. */
const TRIES = 16;
const AWAY = [0.4, 1, 1.8, 2.8, 4, 6, 9];
/** Least height of an area that a hair can end in, in units. */
const LEAST = 2.5;

/** The nearest free place beside an area, best within one neighbour alone; the one of before while it is still good. */
export function asidePlace(ask: AsideAsk): Aside | undefined {
  const { shape, size, seen, unit, before } = ask;
  const panel = panelOf(ask);
  if (before && isGood(before, ask, panel)) return before;
  const [left, right] = panel;
  let best: Aside | undefined;
  let least = Infinity;
  const look = (aside: Aside, cost: number) => {
    // The dear question last: most places are farther off than the best so far, or taken.
    const near = cost + (aside.turned ? 4 * size[1] : 0);
    if (near >= least || !isGood(aside, ask, panel)) return;
    const whole = near + (isWithinOne(aside.box, ask) ? 0 : 3 * size[1]);
    if (whole >= least) return;
    [best, least] = [aside, whole];
  };
  const xs = shape.xs;
  for (let i = 0; i <= TRIES; i++) {
    const x = xs[0]! + ((xs[xs.length - 1]! - xs[0]!) * (i + 0.5)) / (TRIES + 1);
    const upright = uprightOf(shape, x);
    if (!upright) continue;
    const [top, bottom] = [Math.max(upright[0], seen.top), Math.min(upright[1], seen.bottom)];
    if (bottom - top < LEAST * unit) continue;
    const y = (top + bottom) / 2;
    const thin = Math.max(0, 8 * unit - (bottom - top)) * 4;
    for (const turned of [false, true]) {
      const [width, height] = turned ? [size[1], size[0]] : size;
      for (const away of AWAY.map((heights) => heights * size[1]))
        for (const way of [1, -1] as const) {
          const boxTop = way === 1 ? bottom + away : top - away - height;
          const boxLeft = Math.min(Math.max(x - width / 2, left), right - width);
          const end = way === 1 ? boxTop : boxTop + height;
          look(asideOf(x, y, x, end, { left: boxLeft, top: boxTop, width, height }, turned, unit), away + thin);
          const besideLeft = way === 1 ? x + away : x - away - width;
          const box = { left: besideLeft, top: y - height / 2, width, height };
          look(asideOf(x, y, way === 1 ? besideLeft : besideLeft + width, y, box, turned, unit), away + thin);
        }
    }
  }
  return best;
}

function asideOf(
  x: number,
  y: number,
  toX: number,
  toY: number,
  { left, top, width, height }: { left: number; top: number; width: number; height: number },
  turned: boolean,
  unit: number,
): Aside {
  const half = 3 * unit;
  return {
    box: { left, top, right: left + width, bottom: top + height },
    turned,
    from: [x, y],
    to: [toX, toY],
    hair: {
      left: Math.min(x, toX) - half,
      top: Math.min(y, toY) - half,
      right: Math.max(x, toX) + half,
      bottom: Math.max(y, toY) + half,
    },
  };
}

function panelOf({ shapes, unit }: AsideAsk): readonly [left: number, right: number] {
  const left = Math.min(...shapes.map(({ xs }) => xs[0]!));
  const right = Math.max(...shapes.map(({ xs }) => xs[xs.length - 1]!));
  return [left + 4 * unit, right - 4 * unit];
}

/** Whether words and hair are free and in sight, the hair begins in the area, and the words hide none of it. */
function isGood({ box, hair, from, to }: Aside, ask: AsideAsk, [left, right]: readonly [number, number]): boolean {
  const { shape, seen, taken } = ask;
  if (box.left < left || box.right > right || box.top < seen.top || box.bottom > seen.bottom) return false;
  if (box.top < seen.hair + 3 && box.bottom > seen.hair - 3) return false;
  // The words must not stand on the point that they are about, nor turn the hair to nothing.
  const long = Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1]);
  if (long < 4 || Math.abs(from[1] - seen.hair) < 4) return false;
  const own = uprightOf(shape, from[0]);
  if (!own || from[1] < own[0] || from[1] > own[1]) return false;
  // A level hair may leave its area only past its edge, or it would seem to stand for where it ends.
  if (to[1] === from[1] && isIn(shape, to[0], to[1])) return false;
  return !taken.some((other) => crosses(box, other) || crosses(hair, other));
}

function isIn(shape: Shape, x: number, y: number): boolean {
  const upright = uprightOf(shape, x);
  return upright !== undefined && y > upright[0] && y < upright[1];
}

/** Whether a box lies in a single area. */
function isWithinOne({ left, top, right, bottom }: Box, { shapes }: AsideAsk): boolean {
  const middle = (left + right) / 2;
  return shapes.some((shape) =>
    [left, middle, right].every((x) => isIn(shape, x, top + 1) && isIn(shape, x, bottom - 1)),
  );
}
