import { Container, Graphics } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate, placesBeside } from './plate.ts';
import type { Taken } from './taken.ts';
import type { Said, StageView } from './view.ts';
import { placesNear } from './words-place.ts';

/** A dive that is frozen at the very moment stands on its last row: no moment is told more finely, seconds. */
const ROW_S = 0.1 + 1e-6;

/** Which of the dots that came is named, until all is said at the end. */
const NAMED_DOT = 3;
/** Words keep so far from the middle of a dot, at unit size. */
const DOT_ROOM = 5;

/** One locked prediction: hollow dots and a flag at their end; what came, inked as it comes; at last a bracket between the two. */
class SaidMark {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks = new Graphics();
  readonly #words: Plate;
  readonly #came: Plate;
  readonly #asked: Plate;
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    this.#words = new Plate(style, { bold: true });
    this.#came = new Plate(style, { bold: true });
    this.#asked = new Plate(style);
    this.root.addChild(this.#marks, this.#asked.root, this.#words.root, this.#came.root);
  }

  draw(said: Said, nowS: number, frame: Frame, taken: Taken): void {
    const { unit } = this.#style;
    const { fromS, overS, depthsM, words, came } = said;
    const [x, saidM] = [secondsToX(frame, fromS + overS), depthsM[depthsM.length - 1]!];
    const y = depthToY(frame, saidM);
    const cameDots = came
      ? came.depthsM.filter((_, i) => i > 0 && momentOf(said, i, came.depthsM) <= nowS + ROW_S)
      : [];
    const over = nowS >= fromS + overS - ROW_S;
    const key = `${frame.pxPerM} ${cameDots.length} ${over} ${saidM} ${depthsM.length} ${overS}`;
    if (key !== this.#key) this.#build(said, cameDots, over, frame);
    this.#key = key;
    this.#marks.position.set(x, y);
    // Once the moment has passed what came of it is said, what was said with it.
    const close = over && came !== null && depthsM.length === 1;
    this.#words.show(undefined);
    this.#came.show(undefined);
    taken.boxes.push({ left: x - 5 * unit, top: y - 25 * unit, right: x + 18 * unit, bottom: y + 5 * unit });
    this.#takeDots(said, depthsM.slice(1, -1), depthsM.length, frame, taken);
    if (came) this.#takeDots(said, cameDots, came.depthsM.length, frame, taken);
    if (!close) this.#say(this.#words, words, x, y, 22 * unit, taken);
    this.#asked.show(undefined);
    const named = cameDots[NAMED_DOT - 1];
    // Beside the diver's own line stands that of what was asked.
    if (!over && came && named !== undefined) {
      const namedX = secondsToX(frame, momentOf(said, NAMED_DOT, came.depthsM));
      this.#say(this.#asked, 'as asked', namedX, depthToY(frame, named), 10 * unit, taken);
    }
    if (!over || !came) return;
    const cameY = depthToY(frame, came.depthsM[came.depthsM.length - 1]!);
    taken.boxes.push({ left: x - 8 * unit, top: Math.min(y, cameY), right: x + 8 * unit, bottom: Math.max(y, cameY) });
    this.#say(this.#came, came.words, x, close ? (y + cameY) / 2 : cameY, 14 * unit, taken);
  }

  /** What is written keeps off the dots, the first of which is the second of so many. */
  #takeDots({ fromS, overS }: Said, depthsM: readonly number[], of: number, frame: Frame, taken: Taken): void {
    const r = DOT_ROOM * this.#style.unit;
    depthsM.forEach((depthM, i) => {
      const x = secondsToX(frame, fromS + (overS * (i + 1)) / (of - 1));
      const y = depthToY(frame, depthM);
      taken.boxes.push({ left: x - r, top: y - r, right: x + r, bottom: y + r });
    });
  }

  #say(plate: Plate, words: string, x: number, y: number, half: number, taken: Taken): void {
    const { narrow, unit } = this.#style;
    // On a narrow page a sentence goes on in the next line, or it would fit nowhere.
    const size = plate.say(narrow ? words.replace('; ', ';\n').replace(': ', ':\n') : words);
    const box = taken.first([
      ...placesBeside(x, y, half, size),
      ...placesNear(x, y, ...size, taken.within, Math.max(half, 26 * unit)),
    ]);
    plate.show(box);
    if (box) taken.boxes.push(box);
  }

  /** In pixels from the end of what was said, so that scrolling moves it and draws nothing anew. */
  #build(said: Said, cameDots: readonly number[], over: boolean, frame: Frame): void {
    const { tokens, unit } = this.#style;
    const { overS, depthsM, came } = said;
    const endM = depthsM[depthsM.length - 1]!;
    const at = (i: number, all: readonly number[], depthM: number) => ({
      x: (i / (all.length - 1) - 1) * overS * frame.pxPerS,
      y: (depthM - endM) * frame.pxPerM,
    });
    const g = this.#marks.clear();
    depthsM.forEach((depthM, i) => {
      if (i === 0 || i === depthsM.length - 1) return;
      const { x, y } = at(i, depthsM, depthM);
      g.circle(x, y, 3.6 * unit)
        .fill(tokens.paper)
        .stroke({ width: 1.8 * unit, color: tokens.ink });
    });
    if (came)
      cameDots.forEach((depthM, i) => {
        const { x, y } = at(i + 1, came.depthsM, depthM);
        g.circle(x, y, 3.4 * unit)
          .fill(tokens.ink)
          .stroke({ width: unit, color: tokens.paper });
      });
    if (over && came && depthsM.length === 1)
      this.#bracket(g, at(came.depthsM.length - 1, came.depthsM, came.depthsM.at(-1)!).y);
    g.moveTo(0, 0)
      .lineTo(0, -24 * unit)
      .stroke({ width: 2.2 * unit, color: tokens.ink })
      .poly([0, -24 * unit, 17 * unit, -18 * unit, 0, -12 * unit])
      .fill({ color: tokens.paper, alpha: 0.75 })
      .stroke({ width: 2 * unit, color: tokens.ink, join: 'round' })
      .circle(0, 0, 4 * unit)
      .fill(tokens.paper)
      .stroke({ width: 2 * unit, color: tokens.ink });
  }

  /** From what was said to what came: an upright with a level foot at each end. */
  #bracket(g: Graphics, cameY: number): void {
    const { tokens, unit } = this.#style;
    for (const [more, color] of [
      [2, tokens.paper],
      [0, tokens.ink],
    ] as const)
      g.moveTo(-7 * unit, 0)
        .lineTo(7 * unit, 0)
        .moveTo(0, 0)
        .lineTo(0, cameY)
        .moveTo(-7 * unit, cameY)
        .lineTo(7 * unit, cameY)
        .stroke({ width: (2.4 + more) * unit, color });
  }
}

function momentOf({ fromS, overS }: Said, i: number, all: readonly number[]): number {
  return fromS + (overS * i) / (all.length - 1);
}

/** All predictions that were locked on this dive, as long as they are in the picture. */
export class SaidFlags {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks: SaidMark[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  draw({ said = [], nowS }: StageView, frame: Frame, taken: Taken): void {
    let used = 0;
    for (const one of said) {
      const [fromX, endX] = [secondsToX(frame, one.fromS), secondsToX(frame, one.fromS + one.overS)];
      // Whoever looks back to before it was locked sees nothing of it.
      if (nowS < one.fromS - 1e-6 || endX < -40 || fromX > this.#style.freePx) continue;
      const mark = (this.#marks[used++] ??= this.#made());
      mark.root.visible = true;
      mark.draw(one, nowS, frame, taken);
    }
    for (const { root } of this.#marks.slice(used)) root.visible = false;
  }

  #made(): SaidMark {
    const mark = new SaidMark(this.#style);
    this.root.addChild(mark.root);
    return mark;
  }
}
