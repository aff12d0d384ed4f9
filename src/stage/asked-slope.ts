import { Container, Graphics } from 'pixi.js';
import { depthToY, slopeOf, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate, placesBeside } from './plate.ts';
import type { Taken } from './taken.ts';
import type { Asked } from './view.ts';

/** The rate to see it beside is drawn so far, pixels at unit size. */
const BESIDE_PX = 150;

/** The rate to be said as the slope of a line, a dot each second, and beside it, dashed, the slope of a rate that is known. */
export class AskedSlope {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks = new Graphics();
  readonly #words: Plate;
  readonly #beside: Plate;

  constructor(style: Style) {
    this.#style = style;
    this.#words = new Plate(style, { bold: true });
    this.#beside = new Plate(style);
    this.root.addChild(this.#marks, this.#beside.root, this.#words.root);
  }

  draw({ slope, fromM }: Asked, frame: Frame, taken: Taken): void {
    this.root.visible = slope !== undefined;
    if (!slope) return;
    const { tokens, unit } = this.#style;
    const [x, y] = [frame.nowX, depthToY(frame, fromM)];
    this.#marks.clear();
    this.#drawDashes(x, y, slope.besideMps, frame);
    const dots = dotsOf(x, y, slope.mps, frame, taken);
    for (const dot of dots) {
      const r = 4.2 * unit;
      this.#marks.circle(dot.x, dot.y, r).fill(tokens.ink).stroke({ width: unit, color: tokens.paper });
      taken.boxes.push({ left: dot.x - r, top: dot.y - r, right: dot.x + r, bottom: dot.y + r });
    }
    const end = dots[dots.length - 1] ?? { x, y };
    this.#say(this.#words, slope.words, end, taken);
    const { x: acrossX, y: downY } = slopeOf(frame, slope.besideMps);
    this.#say(
      this.#beside,
      slope.besideWords,
      { x: x + acrossX * BESIDE_PX * unit, y: y + downY * BESIDE_PX * unit },
      taken,
    );
  }

  #say(plate: Plate, words: string, { x, y }: { readonly x: number; readonly y: number }, taken: Taken): void {
    const box = taken.first(placesBeside(x, y, 11 * this.#style.unit, plate.say(words)));
    plate.show(box);
    if (box) taken.boxes.push(box);
  }

  #drawDashes(x: number, y: number, mps: number, frame: Frame): void {
    const { tokens, unit } = this.#style;
    const way = slopeOf(frame, mps);
    for (let at = 14 * unit; at < BESIDE_PX * unit; at += 12 * unit)
      this.#marks
        .moveTo(x + way.x * at, y + way.y * at)
        .lineTo(x + way.x * (at + 7 * unit), y + way.y * (at + 7 * unit));
    this.#marks.stroke({ width: 1.7 * unit, color: tokens.ink });
  }
}

/** Where a diver with that rate is after each second, as long as that is in the picture and under water. */
function dotsOf(x: number, y: number, mps: number, frame: Frame, { within }: Taken): { x: number; y: number }[] {
  const [top, right] = [Math.max(within.top, depthToY(frame, 0)), within.right];
  const dots: { x: number; y: number }[] = [];
  for (let s = 1; ; s++) {
    const dot = { x: x + s * frame.pxPerS, y: y + s * mps * frame.pxPerM };
    if (dot.x > right || dot.y < top || dot.y > within.bottom) return dots;
    dots.push(dot);
  }
}
