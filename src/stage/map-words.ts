import { Container } from 'pixi.js';
import type { Style } from './layout.ts';
import { kindOf, type Area, type AreaMeans } from './map-areas.ts';
import { MapAsides } from './map-asides.ts';
import { roomFor, type Seen, type Shape } from './map-shape.ts';
import { Plate } from './plate.ts';
import type { Box } from './words-place.ts';

/** An area on the page, and where its words stand across. */
interface Named {
  readonly area: Area;
  readonly shape: Shape;
  readonly plate: Plate;
  x: number;
  turned: boolean;
}

/** Places across that are tried for the words of an area. */
const TRIES = 24;

/** The words in the areas: where there is room, sliding along as the picture moves; beside an area that has none. */
export class MapWords {
  readonly root = new Container();
  readonly #style: Style;
  readonly #asides: MapAsides;
  readonly #plates = { plain: [] as Plate[], lost: [] as Plate[] };
  #named: Named[] = [];

  constructor(style: Style) {
    this.#style = style;
    this.#asides = new MapAsides(style);
    this.root.addChild(this.#asides.root);
  }

  /** New areas; a plate keeps the words of the one before, since they are mostly the same. */
  name(areas: readonly Area[], shapes: readonly Shape[]): void {
    const used = { plain: 0, lost: 0 };
    const old = this.#named;
    this.#named = areas.map((area, i) => {
      const kind = area.means === 'lost' ? 'lost' : 'plain';
      const plate = (this.#plates[kind][used[kind]++] ??= this.#plate(kind));
      const same = old.find((named) => named.plate === plate && named.area.means === area.means);
      return { area, shape: shapes[i]!, plate, x: same?.x ?? NaN, turned: same?.turned ?? false };
    });
    for (const kind of ['plain', 'lost'] as const)
      for (const plate of this.#plates[kind].slice(used[kind])) plate.show(undefined);
  }

  /**
   * Puts the words where there is room: level, or else running upward in an area that is narrow and steep, or else beside it.
   * @param taken what other words of the map stand on
   */
  place(words: Readonly<Record<AreaMeans, string>>, seen: Seen, taken: readonly Box[] = []): void {
    const boxes = [...taken, ...seen.dots];
    const without: Named[] = [];
    const said = new Set<string>();
    const { narrow } = this.#style;
    for (const named of this.#named) {
      const kind = kindOf(named.area, narrow);
      const says = narrow && said.has(kind) ? '' : words[named.area.means];
      const [width, height] = named.plate.say(says);
      const fit = (turned: boolean, keep: boolean) =>
        this.#place(named, turned ? [height, width] : [width, height], seen, keep);
      let box: Box | undefined;
      if (says !== '') {
        // Where they stand already they stay while they can.
        box = fit(named.turned, true);
        for (const turned of [false, true])
          if (!box) {
            box = fit(turned, false);
            named.turned = turned;
          }
      }
      named.plate.show(box, named.turned);
      if (box) {
        boxes.push(box);
        said.add(kind);
      } else if (says !== '') without.push(named);
    }
    // A second sliver of the same kind needs no words of its own.
    const alone = without.filter(({ area }) => !said.has(kindOf(area, narrow)));
    this.#asides.place(alone, words, this.#named, seen, boxes);
  }

  /** A box for words in an area: where they are (`keep`), or the roomiest place across. */
  #place(named: Named, [width, height]: readonly [number, number], seen: Seen, keep: boolean): Box | undefined {
    const { xs } = named.shape;
    const air = 2 * this.#style.unit;
    const low = xs[0]! + width / 2 + air;
    const high = xs[xs.length - 1]! - width / 2 - air;
    let room: readonly [number, number] | undefined;
    let most = 0;
    for (let i = 0; i <= (keep ? 0 : TRIES) && high >= low; i++) {
      const x = keep ? named.x : low + ((high - low) * i) / TRIES;
      if (!(x >= low && x <= high)) continue;
      const found = freeOf(named.shape, x, width / 2 + air, height + 2 * air, seen);
      // More than some lines of room is as good as any; then the place nearest the middle wins.
      const worth = found ? Math.min(found[1] - found[0], 5 * height) - Math.abs(i - TRIES / 2) * 0.1 : 0;
      if (!found || worth <= most) continue;
      most = worth;
      room = found;
      named.x = x;
    }
    if (!room) return undefined;
    const y = (room[0] + room[1]) / 2;
    return { left: named.x - width / 2, top: y - height / 2, right: named.x + width / 2, bottom: y + height / 2 };
  }

  #plate(kind: 'plain' | 'lost'): Plate {
    const { tokens } = this.#style;
    const lost = kind === 'lost';
    const plate = new Plate(
      this.#style,
      { bold: true, colour: lost ? tokens.paper : tokens.ink },
      lost ? tokens.ink : tokens.paper,
    );
    this.root.addChild(plate.root);
    return plate;
  }
}

/** The largest stretch off the hair and the dots in which a box fits at x, within an area and in sight. */
function freeOf(
  shape: Shape,
  x: number,
  half: number,
  height: number,
  seen: Seen,
): readonly [number, number] | undefined {
  const room = roomFor(shape, x - half, x + half, height);
  if (!room) return undefined;
  const [top, bottom] = [Math.max(room[0], seen.top), Math.min(room[1], seen.bottom)];
  const kept = [
    [seen.hair, seen.hair] as const,
    ...seen.dots
      .filter((dot) => dot.left < x + half && dot.right > x - half)
      .map((dot) => [dot.top, dot.bottom] as const),
  ].sort((a, b) => a[0] - b[0]);
  let best: readonly [number, number] | undefined;
  let from = top;
  for (const [keptTop, keptBottom] of [...kept, [bottom, bottom] as const]) {
    const to = Math.min(keptTop, bottom);
    if (to - from >= Math.max(height, best ? best[1] - best[0] : 0)) best = [from, to];
    from = Math.max(from, keptBottom);
  }
  return best;
}
