import { Container, Graphics } from 'pixi.js';
import type { Style } from './layout.ts';
import type { Crowd, LedgePlace } from './ledge-places.ts';
import { Plate, placesBeside } from './plate.ts';
import type { Taken } from './taken.ts';
import { placesNear, type Box } from './words-place.ts';

/** Half the length of a ledge: so many seconds of time, within units that are seen and that hide little. */
const HALF_S = 2;
const HALF_LEAST = 9;
const HALF_MOST = 20;

/** One ledge with its words, and a hair between the two where the words had to stand aside. */
export class LedgeMark {
  readonly root = new Container();
  readonly #style: Style;
  readonly #shelf = new Graphics();
  readonly #lead = new Graphics();
  readonly #words: Plate;
  #half = 0;
  #key = '';
  #place = 0;

  constructor(style: Style) {
    this.#style = style;
    this.#words = new Plate(style);
    this.root.addChild(this.#lead, this.#shelf, this.#words.root);
  }

  /** The shelf alone, which stands where it must; none where it lies out of the picture. */
  draw({ x, y, off }: LedgePlace, catchesSinking: boolean, pxPerS: number, crowd: Crowd, taken: Taken): void {
    const { unit } = this.#style;
    this.root.visible = true;
    this.#shelf.visible = off === null;
    this.#lead.visible = false;
    this.#words.show(undefined);
    if (off !== null) return;
    const wanted = Math.round(Math.min(Math.max(HALF_S * pxPerS, HALF_LEAST * unit), HALF_MOST * unit));
    const key = `${wanted} ${crowd.before} ${crowd.beyond}`;
    if (key !== this.#key) this.#drawShelf(wanted, crowd);
    this.#key = key;
    this.#half = wanted;
    this.#shelf.position.set(x, y);
    this.#shelf.scale.y = catchesSinking ? 1 : -1;
    const half = this.#half + 2 * unit;
    taken.boxes.push({ left: x - half, top: y - 8 * unit, right: x + half, bottom: y + 9 * unit });
  }

  /** Its words and those of the ledges close to it, which spread so far to both sides, where that leaves room. */
  say(words: string, at: LedgePlace, spread: number, taken: Taken): void {
    const { unit } = this.#style;
    const size = this.#words.say(words);
    const places =
      at.off === null
        ? placesBeside(at.x, at.y, spread + this.#half + 7 * unit, size)
        : placesNear(at.x, at.y, ...size, taken.within, 4 * unit);
    // The last place is kept while it is free, so that words do not hop to and fro.
    if (!places[this.#place] || !taken.isFree(places[this.#place]!))
      this.#place = places.findIndex((box) => taken.isFree(box));
    const box = places[this.#place];
    this.#words.show(box);
    if (!box) return;
    taken.boxes.push(box);
    this.#lead.visible = true;
    this.#lead.clear();
    if (at.off === null) this.#joinTo(box, at, spread);
    else this.#dashTo(box, at);
  }

  /** A hair to words that stand aside: level, then upright, since a slanting one would read as a speed. */
  #joinTo(box: Box, { x, y }: LedgePlace, spread: number): void {
    const { tokens, unit } = this.#style;
    const onRight = box.left > x;
    const from = x + (onRight ? 1 : -1) * (spread + this.#half);
    const side = onRight ? box.left : box.right;
    const level = y >= box.top && y <= box.bottom;
    if (level && Math.abs(side - from) < 9 * unit) return;
    this.#lead.moveTo(from, y);
    if (level) this.#lead.lineTo(side, y);
    else {
      const turn = side + (onRight ? 8 : -8) * unit;
      this.#lead.lineTo(turn, y).lineTo(turn, y < box.top ? box.top : box.bottom);
    }
    this.#lead.stroke({ width: 1.6 * unit, color: tokens.ink });
  }

  /** Dashes from words to the edge behind which their ledge lies. */
  #dashTo(box: Box, { x, off }: LedgePlace): void {
    const { tokens, unit, heightPx, waterPx } = this.#style;
    const [from, to] =
      off === 'later' ? [box.right, waterPx] : off === 'deeper' ? [box.bottom, heightPx] : [box.top, 0];
    const across = Math.min(Math.max(x, box.left + 6 * unit), box.right - 6 * unit);
    const way = Math.sign(to - from);
    for (let s = 1.5 * unit; s < Math.abs(to - from); s += 6 * unit)
      for (const end of [s, s + 3 * unit]) {
        const at = from + way * end;
        const [px, py] = off === 'later' ? [at, (box.top + box.bottom) / 2] : [across, at];
        if (end === s) this.#lead.moveTo(px, py);
        else this.#lead.lineTo(px, py);
      }
    this.#lead.stroke({ width: 2.2 * unit, color: tokens.ink });
  }

  /** A shelf with a raised rim on the side from which the diver comes, and supports on the other; of a pile, the rim on the first and the supports below the last. */
  #drawShelf(half: number, { before, beyond }: Crowd): void {
    const { tokens, unit } = this.#style;
    const g = this.#shelf.clear();
    for (const [more, color] of [
      [2.8, tokens.paper],
      [0, tokens.ink],
    ] as const) {
      const rim = before ? 0 : -6 * unit;
      // In a pile each is a thinner plate: paper between two is what tells them apart.
      const thick = before || beyond ? 2.4 : 3.4;
      g.moveTo(-half, rim)
        .lineTo(-half, 0)
        .lineTo(half, 0)
        .lineTo(half, rim)
        .stroke({ width: (thick + more) * unit, color, cap: 'round', join: 'round' });
      if (beyond) continue;
      for (const x of [-0.6, 0, 0.6]) g.moveTo(x * half, 0).lineTo(x * half, 7 * unit);
      g.stroke({ width: (2.2 + more) * unit, color, cap: 'round' });
    }
  }
}
