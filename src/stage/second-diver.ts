import { Container, Graphics } from 'pixi.js';
import { figureBox } from './diver.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate } from './plate.ts';
import { SecondFigure } from './second-figure.ts';
import { SecondLine } from './second-line.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import { placesNear, type Box } from './words-place.ts';

/** Nearer than this, metres, two divers are level, and no bracket stands between them. */
const LEVEL_M = 0.1;
/** The bracket stands so far ahead of the chests, metres of the figures' own scale: past the heads. */
const AHEAD_M = 0.86;

/** The second of two divers: another line, another chest mark, an outline figure, and a bracket between the two saying the metres. */
export class SecondDiver {
  /** Under the first diver and his line. */
  readonly root = new Container();
  /** Over them. */
  readonly signs = new Container();
  readonly #style: Style;
  readonly #line: SecondLine;
  readonly #figure: SecondFigure;
  readonly #mark = new Graphics();
  readonly #bracket = new Graphics();
  readonly #metres: Plate;
  readonly #name: Plate;
  readonly #first: Plate;
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    const { tokens, unit } = style;
    this.#line = new SecondLine(style);
    this.#figure = new SecondFigure(style);
    this.root.addChild(this.#figure.root, this.#line.root);
    const colour = tokens.secondDiver;
    this.#metres = new Plate(style, { bold: true, colour, size: 1.15 });
    this.#name = new Plate(style, { bold: true, colour });
    this.#first = new Plate(style, { bold: true });
    const half = 11 * unit;
    const diamond = [0, -half, half, 0, 0, half, -half, 0];
    for (const [width, color] of [
      [6 * unit, tokens.paper],
      [3 * unit, colour],
    ] as const)
      this.#mark.poly(diamond).stroke({ width, color, join: 'miter' });
    this.signs.addChild(this.#bracket, this.#mark, this.#metres.root, this.#first.root, this.#name.root);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { second } = view;
    this.root.visible = this.signs.visible = second !== undefined;
    if (!second) return;
    this.#line.draw(view, second, frame);
    this.#figure.draw(view, second, frame);
    const y = depthToY(frame, second.depthM);
    const footPx = frame.heightPx - this.#style.footPx;
    const seen = y > 0 && y < footPx;
    this.#mark.visible = seen;
    this.#mark.position.set(frame.nowX, y);
    if (seen) taken.boxes.push(figureBox(second.state, second.depthM, frame));
    this.#drawBracket(view.depthM, second.depthM, frame, taken);
    const apartM = Math.abs(second.depthM - view.depthM);
    if (seen) this.#say(this.#name, this.#style.narrow ? '2' : `2 (${second.words})`, y, frame, taken);
    else this.#sayEdge(`2 is ${apartM.toFixed(1)} m ${y < 0 ? 'above' : 'below'}`, y < 0, frame, taken);
    this.#say(this.#first, '1', depthToY(frame, view.depthM), frame, taken);
  }

  /** Between the chests, ahead of the heads; where one of them is out of sight, as far as the picture goes. */
  #drawBracket(oneM: number, twoM: number, frame: Frame, taken: Taken): void {
    const { tokens, unit, freePx, footPx } = this.#style;
    const [top, bottom] = [Math.min(oneM, twoM), Math.max(oneM, twoM)].map((m) => depthToY(frame, m)) as [
      number,
      number,
    ];
    const shown = bottom - top > 6 * unit && Math.abs(twoM - oneM) >= LEVEL_M;
    this.#bracket.visible = shown;
    if (!shown) return this.#metres.show(undefined);
    const x = Math.min(frame.nowX + AHEAD_M * frame.pxPerM * frame.enlarged + 12 * unit, freePx - 12 * unit);
    const height = Math.round(bottom - top);
    const key = `${height}`;
    if (key !== this.#key) {
      this.#key = key;
      this.#bracket.clear();
      for (const [width, color] of [
        [6 * unit, tokens.paper],
        [3 * unit, tokens.secondDiver],
      ] as const)
        this.#bracket
          .moveTo(-9 * unit, 0)
          .lineTo(0, 0)
          .lineTo(0, height)
          .lineTo(-9 * unit, height)
          .stroke({ width, color, join: 'miter' });
    }
    this.#bracket.position.set(x, top);
    const [from, to] = [Math.max(top, 0), Math.min(bottom, frame.heightPx - footPx)];
    taken.boxes.push({ left: x - 9 * unit, right: x + 3 * unit, top: from, bottom: to });
    const [width, tall] = this.#metres.say(`${Math.abs(twoM - oneM).toFixed(1)} m`);
    const box = taken.first(placesNear(x, (from + to) / 2, width, tall, taken.within, 6 * unit));
    this.#metres.show(box);
    if (box) taken.boxes.push(box);
  }

  /** Whose figure it is: behind the fins, or where there is room near them. */
  #say(plate: Plate, words: string, y: number, frame: Frame, taken: Taken): void {
    const [width, height] = plate.say(words);
    const px = frame.pxPerM * frame.enlarged;
    const near = [1.2, 1.7, 2.4].flatMap((away) =>
      [0.5, 1.2, 1.9].flatMap((back) =>
        [1, -1].map((way): Box => {
          const right = frame.nowX - back * px;
          const middle = y + way * away * height;
          return { left: right - width, right, top: middle - height / 2, bottom: middle + height / 2 };
        }),
      ),
    );
    const gap = 10 * this.#style.unit;
    const box = taken.first([...near, ...placesNear(frame.nowX - 1.7 * px, y, width, height, taken.within, gap)]);
    plate.show(box);
    if (box) taken.boxes.push(box);
  }

  /** Out of sight: at the edge where he is. */
  #sayEdge(words: string, atTop: boolean, frame: Frame, taken: Taken): void {
    const [width, height] = this.#name.say(words);
    const { within } = taken;
    const top = atTop ? within.top : Math.min(within.bottom, frame.heightPx - this.#style.footPx) - height;
    const places = [0, -1, -2, 0.4].flatMap((aside) =>
      [0, 1, 2].map((in_): Box => {
        const left = Math.min(Math.max(frame.nowX - width / 2 + aside * width, within.left), within.right - width);
        const y = top + (atTop ? 1 : -1) * in_ * height;
        return { left, top: y, right: left + width, bottom: y + height };
      }),
    );
    const box = taken.first(places) ?? places[0]!;
    this.#name.show(box);
    taken.boxes.push(box);
  }
}
