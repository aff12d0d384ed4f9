import { Container, Graphics } from 'pixi.js';
import type { Style } from './layout.ts';
import { Plate } from './plate.ts';
import { mixed } from './tokens.ts';
import type { Box } from './words-place.ts';

/** So much of the water at least must be left out before it is said, metres. */
const SAID_M = 2;
/** How much of the ink of lesser words is in the ground of what is not reckoned: unlike paper, where nothing is needed. */
const TINT = 0.2;

/** A stretch of depth that a map has nothing about, and what is said there. */
export interface Beyond {
  readonly fromM: number;
  readonly toM: number;
  /** On which side of it the map begins. */
  readonly edgeM: number;
  readonly words: string;
}

/** The parts of the water that a map leaves out: above its top and below its foot. */
export function beyondOf(map: { readonly topM: number; readonly bottomM: number }, groundM: number): Beyond[] {
  const out: Beyond[] = [];
  const { topM, bottomM } = map;
  if (topM > SAID_M) out.push({ fromM: 0, toM: topM, edgeM: topM, words: `reckoned from ${round(topM)} m down` });
  if (groundM - bottomM > SAID_M)
    out.push({ fromM: bottomM, toM: groundM, edgeM: bottomM, words: `reckoned down to ${round(bottomM)} m` });
  return out;
}

/** The paper of what is not reckoned, a line at its edge, and the words for it. */
export class MapBeyond {
  readonly root = new Container();
  readonly words = new Container();
  readonly #style: Style;
  readonly #ground = new Graphics();
  readonly #plates: readonly [Plate, Plate];
  /** Sizes of words once said, so that a frame sets only those that it shows. */
  readonly #sizes = new Map<string, readonly [number, number]>();
  #parts: readonly Beyond[] = [];
  #pxPerM = 1;

  constructor(style: Style) {
    this.#style = style;
    this.#plates = [new Plate(style), new Plate(style)];
    this.root.addChild(this.#ground);
    for (const { root } of this.#plates) this.words.addChild(root);
  }

  /** Draws the grounds anew, with 0 at the surface. */
  build(parts: readonly Beyond[], pxPerM: number): void {
    this.#parts = parts;
    this.#pxPerM = pxPerM;
    const { tokens, freePx, waterPx, edgePx } = this.#style;
    const width = waterPx - freePx;
    const g = this.#ground.clear();
    g.x = freePx;
    for (const { fromM, toM } of parts)
      g.rect(0, fromM * pxPerM, width, (toM - fromM) * pxPerM).fill(mixed(tokens.paper, tokens.secondary, TINT));
    for (const { edgeM } of parts) g.moveTo(0, edgeM * pxPerM).lineTo(width, edgeM * pxPerM);
    g.stroke({ width: 1.5 * edgePx, color: tokens.ink });
  }

  /** Puts the words where there is most room: level in one line or two, or else running upward. Returns what they take. */
  place(seen: { readonly top: number; readonly bottom: number; readonly hair: number; readonly dots: readonly Box[] }) {
    const { freePx, waterPx, unit } = this.#style;
    const [middle, room] = [(waterPx - freePx) / 2, waterPx - freePx - 8 * unit];
    const boxes: Box[] = [];
    this.#plates.forEach((plate, i) => {
      const part = this.#parts[i];
      let shown: { box: Box; turned: boolean } | undefined;
      if (part) {
        const top = Math.max(part.fromM * this.#pxPerM, seen.top) + 4 * unit;
        const bottom = Math.min(part.toM * this.#pxPerM, seen.bottom) - 4 * unit;
        const off = Math.max(...seen.dots.map((dot) => (dot.bottom - dot.top) / 2), 4 * unit);
        const stretches = [
          [top, Math.min(bottom, seen.hair - off)],
          [Math.max(top, seen.hair + off), bottom],
        ] as const;
        const [from, to] =
          stretches[0][1] - stretches[0][0] >= stretches[1][1] - stretches[1][0] ? stretches[0] : stretches[1];
        for (const [words, turned] of waysOf(part.words)) {
          if (shown) break;
          const [long, high] = this.#sizes.get(words) ?? plate.say(words);
          this.#sizes.set(words, [long, high]);
          const [width, height] = turned ? [high, long] : [long, high];
          if (width > room || height > to - from) continue;
          const y = (from + to) / 2;
          const box = {
            left: middle - width / 2,
            top: y - height / 2,
            right: middle + width / 2,
            bottom: y + height / 2,
          };
          plate.say(words);
          shown = { box, turned };
        }
      }
      plate.show(shown?.box, shown?.turned);
      if (shown) boxes.push(shown.box);
    });
    return boxes;
  }
}

/** The words in one line, in two, and running upward. */
function waysOf(words: string): readonly (readonly [string, boolean])[] {
  return [
    [words, false],
    [words.replace(' ', '\n'), false],
    [words, true],
  ];
}

function round(metres: number): string {
  return String(Math.round(metres * 10) / 10);
}
