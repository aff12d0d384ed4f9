import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { crossesLine } from './line-crossed.ts';
import type { StageView } from './view.ts';
import type { Taken } from './taken.ts';
import { awayFrom, placesAround, type Box } from './words-place.ts';
import { labelOf, put } from './words.ts';

/** Words further than this from their ring have a hair to it, in units. */
const HAIR_FROM = 16;

/** "8.9 m in 10 s if you do nothing", on a plate of paper near its ring, where it crosses nothing that must be read. */
export class ForecastWords {
  readonly root = new Container();
  readonly #style: Style;
  readonly #plate = new Graphics();
  readonly #hair = new Graphics();
  readonly #words: Text;
  #plateKey = '';
  #hairKey = '';
  /** Places about the ring, as they are from it, for words of one size. */
  #places: readonly Box[] = [];
  #size: readonly [width: number, height: number] = [0, 0];
  #place = 0;
  #soughtAt = NaN;

  constructor(style: Style) {
    this.#style = style;
    this.#words = labelOf(style, { size: style.projector ? 1 : 0.96 });
    this.root.addChild(this.#hair, this.#plate, this.#words);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { forecastM, forecastWords = 'if you do nothing' } = view;
    const { unit, narrow } = this.#style;
    const endM = forecastM?.[10];
    this.root.visible = endM !== undefined && forecastWords !== '';
    if (endM === undefined || !this.root.visible) return;
    // A dot cannot lie above the water: words speak of metres below the surface.
    const metres = Math.max(0, endM).toFixed(1);
    this.#words.text = `${metres} m in 10 s${narrow ? '\n' : ' '}${forecastWords}`;
    const pad = 4 * unit;
    const width = Math.ceil(this.#words.width / 4) * 4 + 2 * pad;
    const height = this.#words.height + pad;
    if (width !== this.#size[0] || height !== this.#size[1]) {
      this.#size = [width, height];
      this.#places = placesAround(width, height, 9 * unit);
      this.#place = 0;
      this.#soughtAt = NaN;
    }
    const ring = this.#ringAt(view, frame, taken.within);
    const box = this.#seek(ring, view, frame, taken);
    this.root.visible = box !== undefined;
    if (!box) return;
    this.#drawHair(ring, box, taken);
    taken.boxes.push(box);
    this.#drawPlate(width, height);
    this.#plate.position.set(box.left, box.top);
    put(this.#words, box.left + pad, (box.top + box.bottom) / 2);
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

  /**
   * The place of before while it is free, so that words do not hop to and fro; once a second, and of a dive that stands still, the
   * nearest that is free: rather off the line and with a free hair, else off the line, else anywhere.
   */
  #seek(ring: Ring, view: StageView, frame: Frame, taken: Taken): Box | undefined {
    const boxOf = (i: number) => movedBy(this.#places[i]!, ring.x, ring.y);
    const second = view.frozen ? -1 : Math.floor(view.nowS);
    const soon = second === this.#soughtAt && second >= 0;
    if (soon && this.#place >= 0 && taken.isFree(boxOf(this.#place))) return boxOf(this.#place);
    this.#soughtAt = second;
    let [free, offLine] = [-1, -1];
    this.#place = this.#places.findIndex((_, i) => {
      const box = boxOf(i);
      if (!taken.isFree(box)) return false;
      if (free < 0) free = i;
      if (crossesLine(box, view, frame)) return false;
      if (offLine < 0) offLine = i;
      return this.#isClear(ring, box, taken);
    });
    if (this.#place < 0) this.#place = offLine >= 0 ? offLine : free;
    return this.#place < 0 ? undefined : boxOf(this.#place);
  }

  /** Whether the hair from the ring to words passes no words, no figure and no arrow. */
  #isClear(ring: Ring, box: Box, taken: Taken): boolean {
    if (!ring.seen) return true;
    const { unit } = this.#style;
    const [x, y] = nearest(box, ring);
    const steps = Math.ceil(Math.hypot(x - ring.x, y - ring.y) / (5 * unit));
    for (let i = 2; i < steps; i++) {
      const [atX, atY] = [ring.x + ((x - ring.x) * i) / steps, ring.y + ((y - ring.y) * i) / steps];
      const isIn = ({ left, top, right, bottom }: Box) =>
        right - left > 16 * unit && atX > left && atX < right && atY > top && atY < bottom;
      if (taken.boxes.some(isIn)) return false;
    }
    return true;
  }

  #drawHair(ring: Ring, box: Box, taken: Taken): void {
    const { tokens, unit } = this.#style;
    const isFar = awayFrom(box, ring.x, ring.y) > HAIR_FROM * unit;
    this.#hair.visible = ring.seen && isFar && this.#isClear(ring, box, taken);
    if (!this.#hair.visible) return;
    const [x, y] = nearest(box, ring);
    this.#hair.position.set(ring.x, ring.y);
    const key = `${Math.round(x - ring.x)} ${Math.round(y - ring.y)}`;
    if (key === this.#hairKey) return;
    this.#hairKey = key;
    this.#hair
      .clear()
      .moveTo(0, 0)
      .lineTo(x - ring.x, y - ring.y)
      .stroke({ width: 1.4 * unit, color: tokens.ink });
  }

  #drawPlate(width: number, height: number): void {
    const key = `${width} ${height}`;
    if (key === this.#plateKey) return;
    this.#plateKey = key;
    this.#plate
      .clear()
      .roundRect(0, 0, width, height, 4 * this.#style.unit)
      .fill({ color: this.#style.tokens.paper, alpha: 0.94 });
  }
}

interface Ring {
  readonly x: number;
  readonly y: number;
  /** Whether the ring itself is in the picture. */
  readonly seen: boolean;
}

function movedBy({ left, top, right, bottom }: Box, x: number, y: number): Box {
  return { left: left + x, top: top + y, right: right + x, bottom: bottom + y };
}

/** The point of a box that is nearest to another point. */
function nearest({ left, top, right, bottom }: Box, { x, y }: Ring): readonly [x: number, y: number] {
  return [Math.min(Math.max(x, left), right), Math.min(Math.max(y, top), bottom)];
}
