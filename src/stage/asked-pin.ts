import { Container, Graphics } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate, placesBeside, placesLeftOf } from './plate.ts';
import type { Taken } from './taken.ts';
import type { Asked } from './view.ts';
import { placesNear } from './words-place.ts';

/** Half of what a hand takes hold of, with the ring of a keyboard's focus: words stand beside it, pixels. */
const HELD_PX = 34;

/** The depth to be said: a ring on the upright of its moment, or on the depth scale where no moment is known. It can be moved up and down. */
export class AskedPin {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks = new Graphics();
  readonly #words: Plate;
  readonly #when: Plate;

  constructor(style: Style) {
    this.#style = style;
    this.#words = new Plate(style, { bold: true });
    this.#when = new Plate(style, { size: 0.93 });
    this.root.addChild(this.#marks, this.#when.root, this.#words.root);
  }

  draw({ pin, overS }: Asked, nowS: number, frame: Frame, taken: Taken): void {
    this.root.visible = pin !== null;
    if (!pin) return;
    const { unit, waterPx } = this.#style;
    const y = depthToY(frame, pin.atM);
    const x = overS === null ? waterPx : secondsToX(frame, nowS + overS);
    const r = 11 * unit;
    this.#marks.clear();
    this.#when.show(undefined);
    if (overS === null) this.#drawLevel(frame.nowX, x - r, y);
    else this.#drawUpright(x, y, r, `+${overS} s`, taken);
    this.#drawRing(x, y, r);
    const held = Math.max(r + 6 * unit, HELD_PX);
    taken.boxes.push({ left: x - held, top: y - held, right: x + held, bottom: y + held });
    const size = this.#words.say(pin.words);
    const places = [
      ...(overS === null ? placesLeftOf(x - held, y, size, -1) : placesBeside(x, y, held, size)),
      ...placesNear(x, y, ...size, taken.within, held),
    ];
    // Left of `now` what is asked may lie over the water.
    const box = taken.first(places.filter(({ left }) => left > frame.nowX)) ?? taken.first(places);
    this.#words.show(box);
    if (box) taken.boxes.push(box);
  }

  /** Dashes at the pin's moment, from the head of the picture to its foot, and how far ahead that is. */
  #drawUpright(x: number, y: number, r: number, when: string, taken: Taken): void {
    const { unit } = this.#style;
    const { bottom } = taken.within;
    for (let at = 0; at < bottom; at += 9 * unit) {
      if (at < y - r || at > y + r) this.#marks.moveTo(x, at).lineTo(x, Math.min(at + 5 * unit, bottom));
    }
    this.#stroke();
    const [wide, high] = this.#when.say(when);
    const head = { left: x - wide / 2, top: 9 * unit, right: x + wide / 2, bottom: 9 * unit + high };
    this.#when.show(taken.isHit(head) ? undefined : head);
    taken.boxes.push(head);
  }

  /** Dashes at the pin's depth, from the diver's moment to the scale. */
  #drawLevel(from: number, to: number, y: number): void {
    const { unit } = this.#style;
    for (let at = from; at < to; at += 9 * unit) this.#marks.moveTo(at, y).lineTo(Math.min(at + 5 * unit, to), y);
    this.#stroke();
  }

  #stroke(): void {
    this.#marks.stroke({ width: this.#style.edgePx, color: this.#style.tokens.ink });
  }

  #drawRing(x: number, y: number, r: number): void {
    const { tokens, unit } = this.#style;
    this.#marks
      .circle(x, y, r)
      .fill(tokens.paper)
      .stroke({ width: 3 * unit, color: tokens.ink });
    for (const way of [-1, 1])
      this.#marks
        .poly([x - 5 * unit, y + way * 2.5 * unit, x + 5 * unit, y + way * 2.5 * unit, x, y + way * 7.5 * unit])
        .fill(tokens.ink);
  }
}
