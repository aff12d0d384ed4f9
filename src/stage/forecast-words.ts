import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';
import type { Taken } from './taken.ts';
import { placesNear } from './words-place.ts';
import { labelOf, put } from './words.ts';

/** "8.9 m in 10 s if you do nothing", on a plate of paper, where it crosses nothing that must be read. */
export class ForecastWords {
  readonly root = new Container();
  readonly #style: Style;
  readonly #plate = new Graphics();
  readonly #words: Text;
  #plateKey = '';
  #place = 0;

  constructor(style: Style) {
    this.#style = style;
    this.#words = labelOf(style, { size: style.projector ? 1 : 0.96 });
    this.root.addChild(this.#plate, this.#words);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { forecastM, forecastWords = 'if you do nothing' } = view;
    const { unit, freePx, narrow } = this.#style;
    const endM = forecastM?.[10];
    this.root.visible = endM !== undefined && forecastWords !== '';
    if (endM === undefined || !this.root.visible) return;
    // A dot cannot lie above the water: words speak of metres below the surface.
    const metres = Math.max(0, endM).toFixed(1);
    this.#words.text = `${metres} m in 10 s${narrow ? '\n' : ' '}${forecastWords}`;
    const pad = 4 * unit;
    const width = Math.ceil(this.#words.width / 4) * 4 + 2 * pad;
    const height = this.#words.height + pad;
    const x = secondsToX(frame, view.nowS + 10);
    // A ring out of the picture has its words at the edge where it left.
    const y = Math.min(Math.max(depthToY(frame, endM), taken.within.top), taken.within.bottom);
    const places = placesNear(Math.min(x, freePx), y, width, height, taken.within, 9 * unit);
    // The last place is kept while it is free, so that words do not hop to and fro.
    if (!taken.isFree(places[this.#place]!)) this.#place = places.findIndex((box) => taken.isFree(box));
    this.root.visible = this.#place >= 0;
    if (this.#place < 0) {
      this.#place = 0;
      return;
    }
    const box = places[this.#place]!;
    taken.boxes.push(box);
    this.#drawPlate(width, height);
    this.#plate.position.set(box.left, box.top);
    put(this.#words, box.left + pad, (box.top + box.bottom) / 2);
  }

  #drawPlate(width: number, height: number): void {
    const key = `${width} ${height}`;
    if (key === this.#plateKey) return;
    this.#plateKey = key;
    this.#plate
      .clear()
      .roundRect(0, 0, width, height, 4 * this.#style.unit)
      .fill({ color: this.#style.tokens.paper, alpha: 0.94 });
  }
}
