import { Container, Graphics, type Text } from 'pixi.js';
import { bottomOf, depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';
import { labelOf, put } from './words.ts';

/** The depth scale right of the water: a tick each metre, numerals, bold fives, and the hair from the diver to it. */
export class Scale {
  readonly root = new Container();
  readonly hair = new Graphics();
  readonly #style: Style;
  readonly #ticks = new Graphics();
  readonly #numerals: { plain: Text; bold: Text }[] = [];
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    const { tokens, waterPx, widthPx, heightPx, edgePx } = style;
    const paper = new Graphics()
      .rect(waterPx, 0, widthPx - waterPx, heightPx)
      .fill(tokens.paper)
      .moveTo(waterPx, 0)
      .lineTo(waterPx, heightPx)
      .stroke({ width: edgePx, color: tokens.ink });
    this.hair
      .moveTo(0, 0)
      .lineTo(1, 0)
      .stroke({ width: Math.max(1, style.unit), color: tokens.ink, alpha: 0.5 });
    this.root.addChild(paper, this.#ticks);
  }

  draw(view: StageView, frame: Frame): void {
    const { pxPerM } = frame;
    const { narrow, textPx, waterPx } = this.#style;
    const everyM = narrow ? 5 : ([1, 2, 5, 10].find((m) => m * pxPerM >= textPx * 1.7) ?? 20);
    const bottomM = view.rig.bottomM;
    const key = `${pxPerM} ${bottomM}`;
    if (key !== this.#key) this.#build(pxPerM, bottomM);
    this.#key = key;
    this.#ticks.y = depthToY(frame, 0);
    const first = Math.max(0, Math.ceil((frame.topM - 0.5) / everyM) * everyM);
    let used = 0;
    for (let m = first; m <= Math.min(bottomOf(frame) + 0.5, bottomM); m += everyM) this.#numeral(used++, m, frame);
    for (let i = used; i < this.#numerals.length; i++)
      this.#numerals[i]!.plain.visible = this.#numerals[i]!.bold.visible = false;
    const y = depthToY(frame, view.depthM);
    this.hair.position.set(frame.nowX, Math.round(y));
    this.hair.scale.x = waterPx - frame.nowX;
  }

  #numeral(i: number, metres: number, frame: Frame): void {
    const { tokens, waterPx, unit, textPx, heightPx } = this.#style;
    let pair = this.#numerals[i];
    if (!pair) {
      pair = {
        plain: labelOf(this.#style, { colour: tokens.secondary, anchorX: 0 }),
        bold: labelOf(this.#style, { bold: true, anchorX: 0 }),
      };
      this.#numerals.push(pair);
      this.root.addChild(pair.plain, pair.bold);
    }
    const isBold = metres % 5 === 0;
    pair.plain.visible = !isBold;
    pair.bold.visible = isBold;
    const text = isBold ? pair.bold : pair.plain;
    text.text = String(metres);
    const y = depthToY(frame, metres);
    text.visible = y > textPx * 0.45 && y < heightPx - textPx * 0.45;
    put(text, waterPx + 15 * unit, y);
  }

  #build(pxPerM: number, bottomM: number): void {
    const { tokens, waterPx, unit, edgePx } = this.#style;
    const g = this.#ticks.clear();
    for (let m = 0; m <= bottomM; m++) {
      const long = m % 5 === 0;
      g.moveTo(waterPx, m * pxPerM)
        .lineTo(waterPx + (long ? 11 : 7) * unit, m * pxPerM)
        .stroke({ width: long ? edgePx * 1.4 : edgePx * 0.8, color: tokens.ink });
    }
  }
}
