import { Container, Graphics, type Text } from 'pixi.js';
import type { Style } from './layout.ts';
import type { Box } from './words-place.ts';
import { labelOf, put, type LabelOptions } from './words.ts';

/** A little space around the words of a plate, in units. */
const PAD = 4;

/** Words on a plate of their own, so that they read on water, textures and lines alike. */
export class Plate {
  readonly root = new Container();
  readonly #style: Style;
  readonly #ground: number;
  readonly #plate = new Graphics();
  readonly #words: Text;
  #key = '';

  /** @param ground colour of the plate; the paper's unless what is lost is said, on ink */
  constructor(style: Style, options: LabelOptions = {}, ground = style.tokens.paper) {
    this.#style = style;
    this.#ground = ground;
    this.#words = labelOf(style, options);
    this.root.addChild(this.#plate, this.#words);
    this.root.visible = false;
  }

  /** Takes its words and says how wide and high it is with them; a width in steps, so that a digit does not redraw it. */
  say(words: string): readonly [width: number, height: number] {
    this.#words.text = words;
    const pad = PAD * this.#style.unit;
    return [Math.ceil(this.#words.width / 4) * 4 + 2 * pad, this.#words.height + pad * 0.5];
  }

  /** Shows it in a box of the size that it said, or not at all. */
  show(box: Box | undefined): void {
    this.root.visible = box !== undefined;
    if (!box) return;
    const [width, height] = [box.right - box.left, box.bottom - box.top];
    const key = `${Math.round(width)} ${Math.round(height)}`;
    if (key !== this.#key)
      this.#plate
        .clear()
        .roundRect(0, 0, width, height, 4 * this.#style.unit)
        .fill({ color: this.#ground, alpha: 0.94 });
    this.#key = key;
    this.#plate.position.set(box.left, box.top);
    put(this.#words, box.left + PAD * this.#style.unit, (box.top + box.bottom) / 2);
  }
}

/** A box that ends at x on the right, its middle at y. */
export function leftOf(x: number, y: number, [width, height]: readonly [number, number]): Box {
  return { left: x - width, top: y - height / 2, right: x, bottom: y + height / 2 };
}

/** Places that end at x on the right, beside y first, then in growing distance above and below; `way` 1 tries below first. */
export function placesLeftOf(x: number, y: number, size: readonly [number, number], way: 1 | -1): Box[] {
  return [0, 1, -1, 2, -2, 3, -3].map((step) => leftOf(x, y + way * step * size[1] * 0.55, size));
}
