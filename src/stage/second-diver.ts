import { Container, Graphics } from 'pixi.js';
import { TICKS_PER_S } from '../dive/index.ts';
import { figureBox } from './diver.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { depthAtM } from './line.ts';
import { Plate } from './plate.ts';
import { SecondFigure } from './second-figure.ts';
import { SecondLine } from './second-line.ts';
import type { Taken } from './taken.ts';
import type { SecondView, StageView } from './view.ts';
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
  #between = { x: 0, from: 0, to: 0 };

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

  /** Line, figure, mark and bracket, which stand where they must. */
  stand(view: StageView, frame: Frame, taken: Taken): void {
    const { second } = view;
    this.root.visible = this.signs.visible = second !== undefined;
    if (!second) return;
    this.#line.draw(view, second, frame);
    this.#figure.draw(view, second, frame);
    const y = depthToY(frame, second.depthM);
    const seen = this.#isSeen(y, frame);
    this.#mark.visible = seen;
    this.#mark.position.set(frame.nowX, y);
    if (seen) taken.boxes.push(figureBox(second.state, second.depthM, frame));
    this.#drawBracket(view.depthM, second.depthM, frame, taken);
  }

  /** Words: the metres between them, and who is who. */
  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { second } = view;
    if (!second) return;
    pushLine(second.recording, view.nowS, frame, taken);
    const y = depthToY(frame, second.depthM);
    const seen = this.#isSeen(y, frame);
    this.#sayMetres(view.depthM, second.depthM, taken);
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
    if (!shown) return;
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
    this.#between = { x, from, to };
    taken.boxes.push({ left: x - 9 * unit, right: x + 3 * unit, top: from, bottom: to });
  }

  /** Beside the bracket, at its middle or as near to that as is free. */
  #sayMetres(oneM: number, twoM: number, taken: Taken): void {
    if (!this.#bracket.visible) return this.#metres.show(undefined);
    const { unit } = this.#style;
    const { x, from, to } = this.#between;
    const [width, tall] = this.#metres.say(`${Math.abs(twoM - oneM).toFixed(1)} m`);
    const places = [0.5, 0.35, 0.65, 0.2, 0.8].flatMap((share) => {
      const top = from + share * (to - from) - tall / 2;
      return [x + 9 * unit, x - 15 * unit - width].map((left): Box => {
        return { left, top, right: left + width, bottom: top + tall };
      });
    });
    const middle = (from + to) / 2;
    const box = taken.first([...places, ...placesNear(x, middle, width, tall, taken.within, 6 * unit)]);
    this.#metres.show(box);
    if (box) taken.boxes.push(box);
  }

  #isSeen(y: number, frame: Frame): boolean {
    return y > 0 && y < frame.heightPx - this.#style.footPx;
  }

  /** Whose figure it is: behind the fins, or where there is room near them. */
  #say(plate: Plate, words: string, y: number, frame: Frame, taken: Taken): void {
    const [width, height] = plate.say(words);
    const px = frame.pxPerM * frame.enlarged;
    const near = [1.2, 1.7, 2.4].flatMap((away) =>
      [0.5, 1.2, 1.9, -0.8].flatMap((back) =>
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

/** Words keep off the line of the second diver too: it is taken in steps along time, pixels. */
const STEP_PX = 24;

function pushLine(recording: SecondView['recording'], nowS: number, frame: Frame, taken: Taken): void {
  const yAt = (x: number) => depthToY(frame, depthAtM(recording, nowS + (x - frame.nowX) / frame.pxPerS));
  const startX = secondsToX(frame, recording.startTick / TICKS_PER_S);
  let below = yAt(frame.nowX);
  for (let x = frame.nowX; x > Math.max(startX, 0); x -= STEP_PX) {
    const before = yAt(x - STEP_PX);
    const [top, bottom] = [Math.min(before, below) - 3, Math.max(before, below) + 3];
    if (bottom > 0 && top < frame.heightPx) taken.boxes.push({ left: x - STEP_PX, top, right: x, bottom });
    below = before;
  }
}
