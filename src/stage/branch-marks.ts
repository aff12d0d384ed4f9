import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { depthAtM } from './line.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import { placesNear } from './words-place.ts';
import { labelOf, put } from './words.ts';

/** How far above the line a square stands, in halves of its size. */
const STEM = 3;

/** Bookmarks on the line that is flown: numbered squares on a stem, where what a debrief speaks of is a ring; their names where they are free. */
export class BranchMarks {
  readonly root = new Container();
  readonly #style: Style;
  readonly #drawn: { readonly square: Graphics; readonly number: Text; readonly words: Text }[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  draw({ bookmarks = [], recording }: StageView, frame: Frame, taken: Taken): void {
    const half = this.#style.textPx * 0.75;
    let used = 0;
    for (const { atS, number, words } of bookmarks) {
      const x = secondsToX(frame, atS);
      if (x < -half || x > frame.waterPx) continue;
      const y = depthToY(frame, depthAtM(recording, atS));
      const slot = (this.#drawn[used] ??= this.#slot());
      used++;
      slot.square.visible = slot.number.visible = true;
      slot.square.position.set(x, y);
      slot.number.text = String(number);
      put(slot.number, x, y - STEM * half);
      taken.boxes.push({ left: x - half, top: y - (STEM + 1) * half, right: x + half, bottom: y });
      slot.words.text = words;
      slot.words.visible = words !== '';
      if (words) this.#name(slot.words, x, y - (STEM + 0.5) * half, taken);
    }
    for (const { square, number, words } of this.#drawn.slice(used))
      square.visible = number.visible = words.visible = false;
  }

  #name(words: Text, x: number, y: number, taken: Taken): void {
    const { textPx, unit } = this.#style;
    const height = textPx * 1.25;
    // No further than a line of words from its square, or it would be taken for something else's.
    const near = placesNear(x, y, words.width, height, taken.within, textPx * 0.9).filter(
      ({ top, bottom }) => top > y - 2.5 * height && bottom < y + 2.5 * height,
    );
    const box = taken.first(near);
    words.visible = box !== undefined;
    if (!box) return;
    put(words, box.left + unit, (box.top + box.bottom) / 2);
    taken.boxes.push(box);
  }

  #slot() {
    const { tokens, unit, textPx } = this.#style;
    const half = textPx * 0.75;
    const square = new Graphics()
      .moveTo(0, 0)
      .lineTo(0, -STEM * half)
      .stroke({ width: 2.2 * unit, color: tokens.ink })
      .rect(-half, -(STEM + 1) * half, 2 * half, 2 * half)
      .fill(tokens.paper)
      .stroke({ width: 2.2 * unit, color: tokens.ink, join: 'round' });
    const number = labelOf(this.#style, { bold: true, size: 0.96, anchorX: 0.5 });
    const words = labelOf(this.#style, { bold: true, halo: true });
    this.root.addChild(square, number, words);
    return { square, number, words };
  }
}
