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
    this.#words = labelOf(style, { ...options, anchorY: 0 });
    this.root.addChild(this.#plate, this.#words);
    this.root.visible = false;
  }

  /** Takes its words and says how wide and high it is with them; a width in steps, so that a digit does not redraw it. */
  say(words: string): readonly [width: number, height: number] {
    this.#words.text = words;
    put(this.#words, PAD * this.#style.unit, -this.#words.height / 2);
    const pad = PAD * this.#style.unit;
    return [Math.ceil(this.#words.width / 4) * 4 + 2 * pad, this.#words.height + pad * 0.5];
  }

  /** Shows it in a box of the size that it said, or not at all; turned: the words run upward in a box as high as they are wide. */
  show(box: Box | undefined, turned = false): void {
    this.root.visible = box !== undefined;
    if (!box) return;
    const [across, down] = [box.right - box.left, box.bottom - box.top];
    const [width, height] = turned ? [down, across] : [across, down];
    const key = `${Math.round(width)} ${Math.round(height)}`;
    if (key !== this.#key)
      this.#plate
        .clear()
        .roundRect(0, -height / 2, width, height, 4 * this.#style.unit)
        .fill({ color: this.#ground, alpha: 0.94 });
    this.#key = key;
    this.root.rotation = turned ? -Math.PI / 2 : 0;
    if (turned) this.root.position.set(Math.round((box.left + box.right) / 2), Math.round(box.bottom));
    else this.root.position.set(Math.round(box.left), Math.round((box.top + box.bottom) / 2));
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

/** Steps up and down, and aside, in which words look for a free place, the nearest first. */
const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4]
  .flatMap((down) => [0, 1, 2, 3, 4, 5, 6].flatMap((aside) => [1, -1].map((way) => ({ down, aside, way }))))
  .sort((a, b) => costOf(a) - costOf(b));

/** Places beside a mark that reaches `half` to both sides of x, the nearest first, the right before the left. */
export function placesBeside(x: number, y: number, half: number, [width, height]: readonly [number, number]): Box[] {
  return STEPS.map(({ down, aside, way }) => {
    const off = half + aside * height * 0.7;
    const left = way === 1 ? x + off : x - off - width;
    const top = y - height / 2 + down * height * 0.55;
    return { left, top, right: left + width, bottom: top + height };
  });
}

function costOf({ down, aside, way }: { down: number; aside: number; way: number }): number {
  return Math.abs(down) * 1.1 + aside + (way === 1 ? 0 : 1.5);
}
