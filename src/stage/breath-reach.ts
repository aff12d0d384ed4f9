import { Container, Graphics } from 'pixi.js';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate, placesLeftOf } from './plate.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import type { Box } from './words-place.ts';

/**
 * How far lungs alone would balance the diver: an amber bracket on the scale, its two depths in words on the water beside it. An
 * end out of the picture has no serif: the bracket goes on.
 */
export class BreathReach {
  readonly root = new Container();
  readonly #style: Style;
  readonly #bracket = new Graphics();
  readonly #ends: readonly [Plate, Plate];
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    const plate = () => new Plate(style, { bold: true, colour: style.tokens.gasWords });
    this.#ends = [plate(), plate()];
    this.root.addChild(this.#bracket, ...this.#ends.map(({ root }) => root));
  }

  draw({ breathReachM }: StageView, frame: Frame, taken: Taken): void {
    this.root.visible = breathReachM !== null && breathReachM !== undefined;
    if (!breathReachM) return;
    const { heightPx } = this.#style;
    const [top, bottom] = [depthToY(frame, breathReachM[0]), depthToY(frame, breathReachM[1])];
    const seen = bottom > 0 && top < heightPx;
    this.#bracket.visible = seen;
    const key = `${Math.round(top * 4)} ${Math.round(bottom * 4)}`;
    if (seen && key !== this.#key) this.#build(top, bottom);
    this.#key = key;
    this.#say(breathReachM, top, bottom, taken);
  }

  #say([fromM, toM]: readonly [number, number], top: number, bottom: number, taken: Taken): void {
    const { waterPx, unit, textPx, narrow, mapped } = this.#style;
    const [first, second] = this.#ends;
    first.show(undefined);
    second.show(undefined);
    // A map stands there and needs the room; the bracket alone must do.
    if (mapped) return;
    const x = waterPx - 5 * unit;
    const show = (plate: Plate, words: string, y: number, way: 1 | -1) => {
      const size = plate.say(words);
      const box = taken.first(placesLeftOf(x, pinned(y, size[1], taken.within), size, way));
      plate.show(box);
      if (box) taken.boxes.push(box);
    };
    const { within } = taken;
    const out = bottom < within.top || top > within.bottom;
    if (out || bottom - top < 2.4 * textPx) {
      const words = narrow ? 'breath' : 'breath from';
      show(first, `${words} ${metres(fromM)} to ${metres(toM)} m`, (top + bottom) / 2, top > within.bottom ? -1 : 1);
      return;
    }
    show(first, `${narrow ? 'breath' : 'breath from'} ${metres(fromM)} m`, top, -1);
    show(second, `to ${metres(toM)} m`, bottom, 1);
  }

  #build(top: number, bottom: number): void {
    const { tokens, widthPx, unit, heightPx } = this.#style;
    const g = this.#bracket.clear();
    const x = widthPx - 5 * unit;
    const serif = x - 6 * unit;
    const points: number[] = top < 0 ? [x, -20] : [serif, top, x, top];
    points.push(...(bottom > heightPx ? [x, heightPx + 20] : [x, bottom, serif, bottom]));
    for (const [width, color] of [
      [6 * unit, tokens.ink],
      [3.2 * unit, tokens.gas],
    ] as const)
      g.poly(points, false).stroke({ width, color, cap: 'square', join: 'miter' });
  }
}

/** The nearest height at which a plate lies within the picture. */
function pinned(y: number, height: number, within: Box): number {
  return Math.min(Math.max(y, within.top + height / 2), within.bottom - height / 2);
}

/** A depth below the surface in words: lungs may balance a diver with his head out, which is no depth. */
function metres(depthM: number): string {
  return Math.max(0, depthM).toFixed(1);
}
