import { Container, Graphics } from 'pixi.js';
import type { Style } from './layout.ts';
import { kindOf, type Area, type AreaMeans } from './map-areas.ts';
import { asidePlace, type Aside } from './map-aside-place.ts';
import type { Seen, Shape } from './map-shape.ts';
import { Plate } from './plate.ts';
import type { Box } from './words-place.ts';

/** So many orders of areas are tried for a new set of them. */
const ORDERS = 6;

interface Slot {
  readonly hair: Graphics;
  readonly plate: Plate;
  aside: Aside | undefined;
  key: string;
}

interface Placed {
  readonly area: Area;
  readonly shape: Shape;
}

/** Words that have no room in their area: beside it on a plate, joined to it by a hair that ends in it. */
export class MapAsides {
  readonly root = new Container();
  readonly #style: Style;
  /** Kinds that have found no place, the later the greater; and for which kinds an order has been looked for. */
  readonly #first = new Map<string, number>();
  #tried = '';
  /** By kind, so that a plate keeps its words from frame to frame. */
  readonly #slots = new Map<string, Slot>();

  constructor(style: Style) {
    this.#style = style;
  }

  /**
   * @param alone areas without words
   * @param all every area of the map
   * @param taken what words and dots stand on; what is placed here is added
   */
  place(
    alone: readonly Placed[],
    words: Readonly<Record<AreaMeans, string>>,
    all: readonly Placed[],
    seen: Seen,
    taken: Box[],
  ): void {
    const shapes = all.map(({ shape }) => shape);
    const [free, said] = [taken.length, new Set<string>()];
    const kinds = [...new Set(alone.map(({ area }) => this.#kindOf(area)))].sort().join();
    // Where one finds no place because of another, it chooses before that one: an order is looked for once for the same kinds.
    for (let left = kinds === this.#tried ? 1 : ORDERS; left > 0; left--) {
      said.clear();
      taken.length = free;
      let failed = '';
      for (const { area, shape } of [...alone].sort((a, b) => this.#rankOf(b) - this.#rankOf(a))) {
        const kind = this.#kindOf(area);
        if (said.has(kind)) continue;
        const slot = this.#slot(kind);
        const size = slot.plate.say(words[area.means]);
        slot.aside = asidePlace({ shape, shapes, size, seen, taken, unit: this.#style.unit, before: slot.aside });
        if (!slot.aside) {
          failed = kind;
          continue;
        }
        said.add(kind);
        taken.push(slot.aside.box, slot.aside.hair);
      }
      if (failed === '' || left === 1) break;
      this.#first.set(failed, this.#first.size + ORDERS - left + 1);
      for (const slot of this.#slots.values()) slot.aside = undefined;
    }
    this.#tried = kinds;
    for (const [kind, slot] of this.#slots) {
      if (!said.has(kind)) slot.aside = undefined;
      slot.plate.show(slot.aside?.box, slot.aside?.turned);
      slot.hair.visible = slot.aside !== undefined;
      if (slot.aside) this.#draw(slot, slot.aside);
    }
  }

  #kindOf(area: Area): string {
    return kindOf(area, this.#style.narrow);
  }

  /** The largest of a kind speaks for the others of its kind. */
  #rankOf({ area, shape }: Placed): number {
    return extentOf(shape) + (this.#first.get(this.#kindOf(area)) ?? 0) * 1e9;
  }

  #slot(kind: string): Slot {
    let slot = this.#slots.get(kind);
    if (!slot) {
      slot = { hair: new Graphics(), plate: new Plate(this.#style, { bold: true }), aside: undefined, key: '' };
      this.#slots.set(kind, slot);
      this.root.addChild(slot.hair, slot.plate.root);
    }
    return slot;
  }

  #draw(slot: Slot, { from, to }: Aside): void {
    const { tokens, unit } = this.#style;
    const key = [...from, ...to].map((px) => Math.round(px)).join(' ');
    if (key === slot.key) return;
    slot.key = key;
    const g = slot.hair.clear();
    for (const [width, color] of [
      [4.5 * unit, tokens.paper],
      [1.5 * unit, tokens.ink],
    ] as const)
      g.moveTo(...from)
        .lineTo(...to)
        .stroke({ width, color });
    g.circle(...from, 4 * unit)
      .fill(tokens.paper)
      .circle(...from, 2.6 * unit)
      .fill(tokens.ink);
  }
}

/** How much there is of a shape, square pixels, roughly. */
function extentOf({ xs, tops, bottoms }: Shape): number {
  let sum = 0;
  for (let i = 1; i < xs.length; i++) sum += (bottoms[i]! - tops[i]!) * (xs[i]! - xs[i - 1]!);
  return sum;
}
