import { Container, Graphics } from 'pixi.js';
import type { Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { ledgePlace, ledgeWords, type LedgePlace } from './ledge-places.ts';
import { Plate } from './plate.ts';
import type { Taken } from './taken.ts';
import type { Ledge, StageView } from './view.ts';
import { crosses, placesNear, type Box } from './words-place.ts';

/** Half the length of a ledge, in units. */
const HALF = 20;

interface Slot {
  /** A ledge that catches what sinks, and one that catches what rises. */
  readonly below: Graphics;
  readonly above: Graphics;
  readonly lead: Graphics;
  readonly words: Plate;
  place: number;
}

/** What still stops the diver: a ledge for each means at the time and depth where it would; what is lost stands below, on ink. */
export class Ledges {
  readonly root = new Container();
  readonly #style: Style;
  readonly #slots: Slot[] = [];
  readonly #lost: Plate;

  constructor(style: Style) {
    this.#style = style;
    this.#lost = new Plate(style, { bold: true, colour: style.tokens.paper }, style.tokens.ink);
    this.root.addChild(this.#lost.root);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { overlay } = view;
    this.root.visible = overlay?.kind === 'ledges';
    if (overlay?.kind !== 'ledges') return;
    this.#drawLost(overlay.lost, taken);
    const places = overlay.ledges.map((ledge) => ledgePlace(ledge, frame, taken.within));
    // All ledges first: they stand where they must, their words where that leaves room.
    overlay.ledges.forEach((ledge, i) => this.#drawLedge(this.#slot(i), places[i]!, ledge, view, taken));
    overlay.ledges.forEach((ledge, i) => this.#drawWords(this.#slot(i), places[i]!, ledge, view, taken));
    for (const { below, above, lead, words } of this.#slots.slice(overlay.ledges.length)) {
      below.visible = above.visible = lead.visible = false;
      words.show(undefined);
    }
  }

  #drawLedge({ below, above }: Slot, { x, y, off }: LedgePlace, ledge: Ledge, view: StageView, taken: Taken): void {
    const { unit } = this.#style;
    const deeper = ledge.depthM >= view.depthM;
    below.visible = off === null && deeper;
    above.visible = off === null && !deeper;
    if (off !== null) return;
    (deeper ? below : above).position.set(x, y);
    const half = (HALF + 2) * unit;
    taken.boxes.push({ left: x - half, top: y - 8 * unit, right: x + half, bottom: y + 9 * unit });
  }

  #drawWords(slot: Slot, at: LedgePlace, ledge: Ledge, view: StageView, taken: Taken): void {
    const { unit } = this.#style;
    const size = slot.words.say(ledgeWords(ledge, at, view.nowS));
    const places = placesNear(at.x, at.y, ...size, taken.within, (HALF * 0.75 + 2) * unit);
    // The last place is kept while it is free, so that words do not hop to and fro.
    if (!places[slot.place] || !taken.isFree(places[slot.place]!))
      slot.place = places.findIndex((box) => taken.isFree(box));
    const box = places[slot.place];
    slot.words.show(box);
    slot.lead.visible = box !== undefined;
    if (!box) return;
    taken.boxes.push(box);
    this.#drawLead(slot.lead, box, at);
  }

  /** A hair from words that had to stand aside; dashes to the edge from words whose ledge lies behind it. */
  #drawLead(g: Graphics, box: Box, { x, y, off }: LedgePlace): void {
    const { tokens, unit, widthPx, heightPx, waterPx } = this.#style;
    g.clear();
    const near = 4 * unit;
    const stroke = { width: 1.6 * unit, color: tokens.ink } as const;
    if (off === null) {
      const half = HALF * unit;
      const ledge: Box = { left: x - half - near, top: y - 2 * near, right: x + half + near, bottom: y + 2 * near };
      if (crosses(box, ledge)) return;
      const fromX = Math.min(Math.max(x, box.left + near), box.right - near);
      const fromY = y < box.top ? box.top : y > box.bottom ? box.bottom : (box.top + box.bottom) / 2;
      const toX = Math.min(Math.max(fromX, x - half), x + half);
      if (y > box.top && y < box.bottom) g.moveTo(x < box.left ? box.left : box.right, y).lineTo(toX, y);
      else g.moveTo(fromX, fromY).lineTo(toX, y);
      g.stroke(stroke);
      return;
    }
    const [fromX, fromY] =
      off === 'later' ? [box.right, (box.top + box.bottom) / 2] : [x, off === 'deeper' ? box.bottom : box.top];
    const [endX, endY] = off === 'later' ? [Math.min(waterPx, widthPx), fromY] : [x, off === 'deeper' ? heightPx : 0];
    const long = Math.hypot(endX - fromX, endY - fromY);
    for (let s = 1.5 * unit; s < long; s += 6 * unit) {
      const part = (along: number) => Math.min(1, along / long);
      g.moveTo(fromX + (endX - fromX) * part(s), fromY + (endY - fromY) * part(s));
      g.lineTo(fromX + (endX - fromX) * part(s + 3 * unit), fromY + (endY - fromY) * part(s + 3 * unit));
    }
    g.stroke({ ...stroke, width: 2.2 * unit });
  }

  #drawLost(lost: readonly string[], taken: Taken): void {
    if (lost.length === 0) return this.#lost.show(undefined);
    const { nowX } = this.#style;
    const [width, height] = this.#lost.say(lost.join('\n'));
    const { right, bottom, top, left } = taken.within;
    const at = (x: number, y: number): Box => ({ left: x, top: y, right: x + width, bottom: y + height });
    const box = taken.first([
      at(right - width, bottom - height),
      at(Math.min(nowX, right - width), bottom - height),
      at(left, bottom - height),
      at(right - width, top),
    ]);
    this.#lost.show(box);
    if (box) taken.boxes.push(box);
  }

  #slot(i: number): Slot {
    let slot = this.#slots[i];
    if (!slot) {
      slot = {
        below: this.#shelf(1),
        above: this.#shelf(-1),
        lead: new Graphics(),
        words: new Plate(this.#style),
        place: 0,
      };
      this.#slots.push(slot);
      this.root.addChild(slot.lead, slot.below, slot.above, slot.words.root);
    }
    return slot;
  }

  /** A shelf with a raised rim on the side from which the diver comes, and supports on the other. */
  #shelf(way: 1 | -1): Graphics {
    const { tokens, unit } = this.#style;
    const g = new Graphics();
    for (const [more, color] of [
      [2.8, tokens.paper],
      [0, tokens.ink],
    ] as const) {
      g.moveTo(-HALF, -6)
        .lineTo(-HALF, 0)
        .lineTo(HALF, 0)
        .lineTo(HALF, -6)
        .stroke({ width: 3.4 + more, color, cap: 'round', join: 'round' });
      for (const x of [-12, 0, 12]) g.moveTo(x, 0).lineTo(x, 7);
      g.stroke({ width: 2.2 + more, color, cap: 'round' });
    }
    g.scale.set(unit, way * unit);
    return g;
  }
}
