import { Container, Graphics, type Text } from 'pixi.js';
import type { Style } from './layout.ts';
import type { Box } from './words-place.ts';
import { labelOf, put } from './words.ts';

/** A letter in a box of its own, for an answer: on paper, or on ink where it is the chosen one. */
export class Badge {
  readonly root = new Container();
  /** Half its width and height. */
  readonly halfPx: number;
  readonly #style: Style;
  readonly #ground = new Graphics();
  readonly #letter: Text;
  readonly #chosen: Text;
  #box: Box = { left: 0, top: 0, right: 0, bottom: 0 };

  constructor(style: Style) {
    this.#style = style;
    this.halfPx = Math.round(style.textPx * 0.82);
    this.#letter = labelOf(style, { bold: true, anchorX: 0.5 });
    this.#chosen = labelOf(style, { bold: true, anchorX: 0.5, colour: style.tokens.paper });
    this.root.addChild(this.#ground, this.#letter, this.#chosen);
  }

  get box(): Box {
    return this.#box;
  }

  draw(letter: string, x: number, y: number, chosen: boolean): void {
    const { tokens, unit, edgePx } = this.#style;
    const half = this.halfPx;
    this.root.visible = true;
    this.#letter.text = this.#chosen.text = letter;
    this.#letter.visible = !chosen;
    this.#chosen.visible = chosen;
    put(this.#letter, x, y);
    put(this.#chosen, x, y);
    this.#ground
      .clear()
      .roundRect(x - half, y - half, 2 * half, 2 * half, 5 * unit)
      .fill(chosen ? tokens.ink : tokens.paper)
      .stroke({ width: edgePx, color: tokens.ink });
    this.#box = { left: x - half, top: y - half, right: x + half, bottom: y + half };
  }
}
