import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, teethS, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { PLACE_ALPHA } from './tokens.ts';
import type { Band, StageView } from './view.ts';
import { labelOf, put } from './words.ts';

/** An open band is drawn so far past now and grown in steps of as much, seconds, so that it is not redrawn each frame. */
const AHEAD_S = 60;

/** Where to be: a light fill, firm edges, and teeth that point inward and count five seconds each. */
export class Bands {
  readonly root = new Container();
  /** Heights of edges that are in sight, pixels, for words that must not cross them. */
  readonly edgesY: number[] = [];
  readonly #style: Style;
  readonly #pool: { picture: Graphics; words: Text; key: string }[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  draw(view: StageView, frame: Frame): void {
    this.edgesY.length = 0;
    view.bands.forEach((band, i) => this.#draw(i, band, view, frame));
    for (let i = view.bands.length; i < this.#pool.length; i++)
      this.#pool[i]!.picture.visible = this.#pool[i]!.words.visible = false;
  }

  #draw(i: number, band: Band, view: StageView, frame: Frame): void {
    const { waterPx, textPx, unit, heightPx, tokens } = this.#style;
    let slot = this.#pool[i];
    if (!slot) {
      slot = { picture: new Graphics(), words: labelOf(this.#style, { bold: true, colour: tokens.placeWords }), key: '' };
      this.#pool.push(slot);
      this.root.addChild(slot.picture, slot.words);
    }
    const { picture, words } = slot;
    const toS = band.toS ?? Math.ceil((view.nowS + AHEAD_S) / AHEAD_S) * AHEAD_S;
    const x = secondsToX(frame, band.fromS);
    const endX = secondsToX(frame, toS);
    const top = depthToY(frame, band.topM);
    const bottom = depthToY(frame, band.bottomM);
    const seen = endX > 0 && x < waterPx && bottom > 0 && top < heightPx;
    picture.visible = words.visible = seen;
    if (!seen) return;
    const key = `${band.fromS} ${toS} ${band.topM} ${band.bottomM} ${frame.pxPerM}`;
    if (key !== slot.key) this.#build(picture, band, toS, frame);
    slot.key = key;
    picture.position.set(x, top);
    this.edgesY.push(top, bottom);
    words.text = band.words;
    const left = Math.max(x + 10 * unit, 10 * unit);
    // Above the top edge where there is water for it, else just inside.
    const above = top > textPx * 3.2;
    put(words, Math.min(left, endX - words.width - 8 * unit), above ? top - textPx * 0.85 : top + 10 * unit + textPx * 0.8);
  }

  #build(g: Graphics, band: Band, toS: number, frame: Frame): void {
    const { tokens, unit, edgePx } = this.#style;
    const width = (toS - band.fromS) * frame.pxPerS;
    const height = (band.bottomM - band.topM) * frame.pxPerM;
    const edge = { width: Math.max(2.4 * unit, edgePx), color: tokens.place };
    g.clear().rect(0, 0, width, height).fill({ color: tokens.place, alpha: PLACE_ALPHA });
    g.moveTo(0, 0).lineTo(width, 0).moveTo(0, height).lineTo(width, height).stroke(edge);
    const tooth = Math.min(8 * unit, height / 3);
    for (const s of teethS(band.fromS, toS)) {
      const x = (s - band.fromS) * frame.pxPerS;
      g.moveTo(x, 0).lineTo(x, tooth).moveTo(x, height).lineTo(x, height - tooth);
    }
    g.stroke({ ...edge, width: edge.width * 0.8 });
  }
}
