import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { crossesLine } from './line-crossed.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import { awayFrom, placesAround, type Box } from './words-place.ts';

/** Words further than this from their ring have a hair to it, in units. */
const HAIR_FROM = 16;

/** Where the words of a forecast stand, and the ends of the hair to their ring where they have one. */
export interface PlacedForecast {
  readonly box: Box;
  readonly hair: readonly [fromX: number, fromY: number, toX: number, toY: number] | null;
}

interface Ring {
  readonly x: number;
  readonly y: number;
  /** Whether the ring itself is in the picture. */
  readonly seen: boolean;
}

/** Looks for the place of a forecast's words. */
export class ForecastPlace {
  readonly #style: Style;
  /** Places about the ring, as they are from it, for words of one size. */
  #places: readonly Box[] = [];
  #size: readonly [width: number, height: number] = [0, 0];
  #place = -1;
  #soughtAt = NaN;

  constructor(style: Style) {
    this.#style = style;
  }

  /**
   * The place of before while it is free, so that words do not hop to and fro; once a second, and of a dive that stands still, the
   * nearest that is free: rather off the line and with a free hair, else off the line, else anywhere. Undefined where none is.
   */
  seek(width: number, height: number, view: StageView, frame: Frame, taken: Taken): PlacedForecast | undefined {
    if (width !== this.#size[0] || height !== this.#size[1]) {
      this.#size = [width, height];
      this.#places = placesAround(width, height, 9 * this.#style.unit);
      this.#soughtAt = NaN;
    }
    const ring = this.#ringAt(view, frame, taken.within);
    const boxOf = (i: number) => movedBy(this.#places[i]!, ring.x, ring.y);
    const second = view.frozen ? NaN : Math.floor(view.nowS);
    const isFree = this.#place >= 0 && taken.isFree(boxOf(this.#place));
    // Where none was free none is looked for until that second is over: to find out takes a while.
    if (second !== this.#soughtAt || (this.#place >= 0 && !isFree))
      this.#place = this.#nearest(boxOf, ring, view, frame, taken);
    this.#soughtAt = second;
    if (this.#place < 0) return undefined;
    const box = boxOf(this.#place);
    const isFar = awayFrom(box, ring.x, ring.y) > HAIR_FROM * this.#style.unit;
    const hair = ring.seen && isFar && this.#isClear(ring, box, taken);
    return { box, hair: hair ? [ring.x, ring.y, ...nearestPoint(box, ring)] : null };
  }

  #nearest(boxOf: (i: number) => Box, ring: Ring, view: StageView, frame: Frame, taken: Taken): number {
    let [free, offLine] = [-1, -1];
    const best = this.#places.findIndex((_, i) => {
      const box = boxOf(i);
      if (!taken.isFree(box)) return false;
      if (free < 0) free = i;
      if (crossesLine(box, view, frame)) return false;
      if (offLine < 0) offLine = i;
      return this.#isClear(ring, box, taken);
    });
    return best >= 0 ? best : offLine >= 0 ? offLine : free;
  }

  /** Where the ring is; where it is out of the picture, where the dots leave it. */
  #ringAt({ forecastM, nowS }: StageView, frame: Frame, within: Box): Ring {
    const at = (i: number) => ({ x: secondsToX(frame, nowS + i), y: depthToY(frame, forecastM![i]!) });
    const isIn = ({ x, y }: { x: number; y: number }) =>
      x < this.#style.freePx && y > within.top - 20 * this.#style.unit && y < within.bottom;
    const end = at(10);
    if (isIn(end)) return { ...end, seen: true };
    let last = 9;
    while (last > 0 && !isIn(at(last))) last--;
    const { x, y } = at(last);
    return { x, y: Math.min(Math.max(y, within.top), within.bottom), seen: false };
  }

  /** Whether the hair from the ring to words passes no words, no figure and no arrow. */
  #isClear(ring: Ring, box: Box, taken: Taken): boolean {
    if (!ring.seen) return true;
    const { unit } = this.#style;
    const [x, y] = nearestPoint(box, ring);
    const wide = taken.boxes.filter(({ left, right }) => right - left > 16 * unit);
    const steps = Math.ceil(Math.hypot(x - ring.x, y - ring.y) / (5 * unit));
    for (let i = 2; i < steps; i++) {
      const [atX, atY] = [ring.x + ((x - ring.x) * i) / steps, ring.y + ((y - ring.y) * i) / steps];
      if (wide.some(({ left, top, right, bottom }) => atX > left && atX < right && atY > top && atY < bottom))
        return false;
    }
    return true;
  }
}

function movedBy({ left, top, right, bottom }: Box, x: number, y: number): Box {
  return { left: left + x, top: top + y, right: right + x, bottom: bottom + y };
}

/** The point of a box that is nearest to another point. */
function nearestPoint({ left, top, right, bottom }: Box, { x, y }: Ring): readonly [x: number, y: number] {
  return [Math.min(Math.max(x, left), right), Math.min(Math.max(y, top), bottom)];
}
