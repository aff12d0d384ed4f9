import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, teethS, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { PLACE_ALPHA } from './tokens.ts';
import type { Taken } from './taken.ts';
import type { Band, StageView } from './view.ts';
import type { Box } from './words-place.ts';
import { labelOf, put } from './words.ts';

/** An open band is drawn so far past now and grown in steps of as much, seconds, so that it is not redrawn each frame. */
const AHEAD_S = 60;

/** Where to be: a light fill, firm edges, and teeth that point inward and count five seconds each. */
export class Bands {
  readonly root = new Container();
  readonly #style: Style;
  readonly #pool: { picture: Graphics; words: Text; key: string }[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    // One place that is asked for twice in a row is named once, where it is now.
    const said = new Set<string>();
    for (let i = view.bands.length - 1; i >= 0; i--) this.#draw(i, view.bands[i]!, said, view, frame, taken);
    for (let i = view.bands.length; i < this.#pool.length; i++)
      this.#pool[i]!.picture.visible = this.#pool[i]!.words.visible = false;
  }

  #draw(i: number, band: Band, said: Set<string>, view: StageView, frame: Frame, taken: Taken): void {
    const { waterPx, freePx, textPx, unit, heightPx, tokens } = this.#style;
    let slot = this.#pool[i];
    if (!slot) {
      slot = {
        picture: new Graphics(),
        words: labelOf(this.#style, { bold: true, halo: true, colour: tokens.placeWords }),
        key: '',
      };
      this.#pool[i] = slot;
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
    taken.lines.push({ y: top, fromX: x }, { y: bottom, fromX: x });
    if (said.has(band.words)) {
      words.visible = false;
      return;
    }
    words.text = band.words;
    // Beside the edges, outside first; where the diver or the dots are, further on.
    const start = Math.max(x + 10 * unit, 10 * unit);
    const width = words.width;
    const height = textPx * 1.25;
    const places: Box[] = [];
    // Open downward, its words stand in it: above its edge is the way that leads there.
    const open = band.bottomM > view.rig.bottomM;
    // Where it begins, or, where they would be cut there, as far right as they fit.
    const most = freePx - width - 10 * unit;
    const { within } = taken;
    const lefts = [Math.min(start, Math.max(most, 10 * unit)), Math.max(start, most)];
    const at = (left: number, above: number) =>
      places.push({ left, top: above, right: left + width, bottom: above + height });
    for (const left of lefts)
      for (const above of open
        ? [top + 10 * unit, top - height - 3 * unit]
        : [top - height - 3 * unit, bottom + 3 * unit, top + 10 * unit, bottom - height - 10 * unit])
        at(left, above);
    // An edge under the times at the head, or below the picture, has them inside, as near to it as they can be read.
    for (const left of lefts) {
      at(left, Math.max(top + 10 * unit, within.top));
      at(left, Math.min(bottom - 10 * unit, within.bottom) - height);
    }
    // Among much that is drawn there: further off.
    for (const left of lefts)
      for (const lines of [1, 2, 3]) {
        at(left, top - height * (lines + 1) - 3 * unit);
        at(left, bottom + height * lines + 3 * unit);
      }
    // Over other words both would be lost. The task's own words say it too.
    const box = taken.first(places);
    words.visible = box !== undefined;
    if (!box) return;
    taken.boxes.push(box);
    said.add(band.words);
    put(words, box.left, (box.top + box.bottom) / 2);
  }

  #build(g: Graphics, band: Band, toS: number, frame: Frame): void {
    const { tokens, unit, edgePx } = this.#style;
    const width = (toS - band.fromS) * frame.pxPerS;
    const height = (band.bottomM - band.topM) * frame.pxPerM;
    const edge = { width: Math.max(2.4 * unit, edgePx), color: tokens.placeWords };
    g.clear().rect(0, 0, width, height).fill({ color: tokens.place, alpha: PLACE_ALPHA });
    g.moveTo(0, 0).lineTo(width, 0).moveTo(0, height).lineTo(width, height).stroke(edge);
    const tooth = Math.min(8 * unit, height / 3);
    for (const s of teethS(band.fromS, toS)) {
      const x = (s - band.fromS) * frame.pxPerS;
      g.moveTo(x, 0)
        .lineTo(x, tooth)
        .moveTo(x, height)
        .lineTo(x, height - tooth);
    }
    g.stroke({ ...edge, width: edge.width * 0.8 });
  }
}
