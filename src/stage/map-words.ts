import { Container } from 'pixi.js';
import type { Style } from './layout.ts';
import type { Area, AreaMeans } from './map-areas.ts';
import { roomFor, type Shape } from './map-shape.ts';
import { Plate } from './plate.ts';
import type { Box } from './words-place.ts';

/** An area on the page, and where its words stand across. */
interface Named {
  readonly area: Area;
  readonly shape: Shape;
  readonly plate: Plate;
  x: number;
}

/** Heights of the picture that words may use, and of the hair, which they keep off; all in the map's own pixels. */
export interface Seen {
  readonly top: number;
  readonly bottom: number;
  readonly hair: number;
}

/** Places across that are tried for the words of an area. */
const TRIES = 24;

/** The words in the areas: where there is room, sliding along as the picture moves. */
export class MapWords {
  readonly root = new Container();
  readonly #style: Style;
  readonly #plates = { plain: [] as Plate[], lost: [] as Plate[] };
  #named: Named[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  /** New areas; a plate keeps the words of the one before, since they are mostly the same. */
  name(areas: readonly Area[], shapes: readonly Shape[]): void {
    const used = { plain: 0, lost: 0 };
    const old = this.#named;
    this.#named = areas.map((area, i) => {
      const kind = area.means === 'lost' ? 'lost' : 'plain';
      const plate = (this.#plates[kind][used[kind]++] ??= this.#plate(kind));
      const same = old.find((named) => named.plate === plate && named.area.means === area.means);
      return { area, shape: shapes[i]!, plate, x: same?.x ?? NaN };
    });
    for (const kind of ['plain', 'lost'] as const)
      for (const plate of this.#plates[kind].slice(used[kind])) plate.show(undefined);
  }

  /** Puts the words where there is room: level, or else running upward in an area that is narrow and steep. */
  place(words: Readonly<Record<AreaMeans, string>>, seen: Seen): void {
    for (const named of this.#named) {
      const [width, height] = named.plate.say(words[named.area.means]);
      const level = words[named.area.means] === '' ? undefined : this.#place(named, [width, height], seen);
      const box = level ?? (words[named.area.means] === '' ? undefined : this.#place(named, [height, width], seen));
      named.plate.show(box, box !== level);
    }
  }

  #place(named: Named, [width, height]: readonly [number, number], seen: Seen): Box | undefined {
    const { xs } = named.shape;
    const air = 2 * this.#style.unit;
    const low = xs[0]! + width / 2 + air;
    const high = xs[xs.length - 1]! - width / 2 - air;
    const roomAt = (x: number) => freeOf(named.shape, x, width / 2 + air, height + 2 * air, seen);
    let room = named.x >= low && named.x <= high ? roomAt(named.x) : undefined;
    if (!room) {
      let most = 0;
      for (let i = 0; i <= TRIES && high >= low; i++) {
        const x = low + ((high - low) * i) / TRIES;
        const found = roomAt(x);
        // More than some lines of room is as good as any; then the place nearest the middle wins.
        const worth = found ? Math.min(found[1] - found[0], 5 * height) - Math.abs(i - TRIES / 2) * 0.1 : 0;
        if (!found || worth <= most) continue;
        most = worth;
        room = found;
        named.x = x;
      }
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

/** The larger stretch above or below the hair in which a box fits at x, within an area and in sight. */
function freeOf(
  shape: Shape,
  x: number,
  half: number,
  height: number,
  seen: Seen,
): readonly [number, number] | undefined {
  const [areaTop, areaBottom] = roomFor(shape, x - half, x + half);
  const [top, bottom] = [Math.max(areaTop, seen.top), Math.min(areaBottom, seen.bottom)];
  const parts: (readonly [number, number])[] =
    seen.hair > top && seen.hair < bottom
      ? [
          [top, seen.hair],
          [seen.hair, bottom],
        ]
      : [[top, bottom]];
  const [best] = parts.filter(([from, to]) => to - from >= height).sort((a, b) => b[1] - b[0] - (a[1] - a[0]));
  return best;
}
