import type { Placed, Point, TankView } from '../bench/index.ts';
import { widthPx, type Box } from './bench-labels.ts';

/** Where the picture of a tank puts things: its size and scale in CSS pixels, so that letters are as large on a phone as on a wall. */
export interface TankFrame {
  readonly widePx: number;
  readonly highPx: number;
  readonly pxPerM: number;
  readonly originXPx: number;
  readonly lipYPx: number;
  /** Letters of the picture. */
  readonly emPx: number;
  /** Thickness of an arrow. */
  readonly boldPx: number;
}

/** Letters are never smaller; else they grow with the picture. */
const LEAST_PX = 16;
const MOST_PX = 34;
/** Room under the tank, and above its lip for hand and balance, or where everything waits in the water, metres. */
const UNDER_M = 0.06;
const ABOVE_M = 0.215;
const LITTLE_ABOVE_M = 0.03;
/** A hand holds a thing so far above the lip, with so much over it, metres. */
const HELD_M = 0.06;
const OVER_M = 0.05;
/** The glass with its spout, metres to the left of the tank. */
export const GLASS_M = { from: 0.06, wide: 0.09, high: 0.16 } as const;

/** Letters of a picture so wide, pixels. */
export const emOf = (widePx: number): number => Math.min(Math.max(LEAST_PX, 0.02 * widePx), MOST_PX);

/** The frame for a tank in a picture of some size; it depends on what stands there, not on where it moves. */
export function frameOf(tank: TankView, widePx: number, highPx: number): TankFrame {
  const emPx = emOf(widePx);
  const tallM = Math.max(...tank.things.map(({ thing }) => extentM(thing.hull, 'yM')));
  const dips = tank.set === 'stones' && tank.hookYM === null && tank.things.every(({ at }) => at.yM > 0);
  const aboveM = dips ? LITTLE_ABOVE_M : Math.max(ABOVE_M, HELD_M + tallM + OVER_M);
  const rightPx = widthPx('30 cm', emPx) + 32;
  const open = tank.spoutYM !== null;
  const glassPx = widthPx('99.9 mN', emPx) + 28;
  const roomM = open ? GLASS_M.from + GLASS_M.wide + 0.02 : 0;
  const leftPx = open ? 0 : widePx > 600 ? rightPx : 8;
  const fits = Math.min(
    (widePx - leftPx - rightPx) / (tank.widthM + roomM),
    (widePx - (open ? glassPx : leftPx) - rightPx) / tank.widthM,
    highPx / (tank.heightM + aboveM + UNDER_M),
  );
  // While a page is laid out its letters may leave the tank no room at all: nothing is drawn with less than none.
  const pxPerM = Math.max(1, fits);
  const takesPx = Math.max(leftPx, roomM * pxPerM, open ? glassPx : 0);
  const sparePx = widePx - takesPx - tank.widthM * pxPerM - rightPx;
  return {
    widePx,
    highPx,
    pxPerM,
    originXPx: takesPx + sparePx / 2,
    lipYPx: highPx - (tank.heightM + UNDER_M) * pxPerM,
    emPx,
    boldPx: Math.max(3, 0.006 * pxPerM),
  };
}

function extentM(outline: readonly Point[], key: keyof Point): number {
  const all = outline.map((point) => point[key]);
  return Math.max(...all) - Math.min(...all);
}

export const xPx = ({ originXPx, pxPerM }: TankFrame, xM: number): number => originXPx + xM * pxPerM;
export const yPx = ({ lipYPx, pxPerM }: TankFrame, yM: number): number => lipYPx + yM * pxPerM;

/** The box around a thing. */
export function boxAround(frame: TankFrame, { solid }: Pick<Placed, 'solid'>): Box {
  const [xs, ys] = [solid.map(({ xM }) => xM), solid.map(({ yM }) => yM)];
  return {
    left: xPx(frame, Math.min(...xs)),
    top: yPx(frame, Math.min(...ys)),
    right: xPx(frame, Math.max(...xs)),
    bottom: yPx(frame, Math.max(...ys)),
  };
}
