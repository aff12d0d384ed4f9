import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';
import { isFree, placesNear, type Box, type Obstacles } from './words-place.ts';
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

  /** @param taken what stands there already; @param edgesY heights of lines across the picture */
  draw(view: StageView, frame: Frame, taken: readonly Box[], edgesY: readonly number[]): void {
    const { forecastM, forecastWords = 'if you do nothing' } = view;
    const { unit, textPx, waterPx, heightPx, narrow } = this.#style;
    const endM = forecastM?.[10];
    this.root.visible = endM !== undefined && forecastWords !== '';
    if (endM === undefined || !this.root.visible) return;
    // A dot cannot lie above the water: words speak of metres below the surface.
    const metres = Math.max(0, endM).toFixed(1);
    this.#words.text = `${metres} m in 10 s${narrow ? '\n' : ' '}${forecastWords}`;
    const pad = 4 * unit;
    const width = Math.ceil(this.#words.width / 4) * 4 + 2 * pad;
    const height = this.#words.height + pad;
    const within = { left: 4 * unit, top: textPx * 2.2, right: waterPx - 5 * unit, bottom: heightPx - 4 * unit };
    const x = secondsToX(frame, view.nowS + 10);
    const y = depthToY(frame, endM);
    const obstacles: Obstacles = {
      boxes: [...taken, this.#diverBox(view, frame)],
      lines: [...edgesY.map((edge) => ({ y: edge, fromX: 0 })), { y: depthToY(frame, view.depthM), fromX: frame.nowX }],
      within,
    };
    const places = placesNear(Math.min(x, waterPx), y, width, height, within, 9 * unit);
    // The last place is kept while it is free, so that words do not hop to and fro.
    if (!isFree(places[this.#place]!, obstacles)) this.#place = places.findIndex((box) => isFree(box, obstacles));
    this.root.visible = this.#place >= 0;
    if (this.#place < 0) {
      this.#place = 0;
      return;
    }
    const box = places[this.#place]!;
    this.#drawPlate(width, height);
    this.#plate.position.set(box.left, box.top);
    put(this.#words, box.left + pad, (box.top + box.bottom) / 2);
  }

  #diverBox({ depthM, state }: StageView, frame: Frame): Box {
    const px = frame.pxPerM * frame.enlarged;
    const y = depthToY(frame, depthM);
    const [cos, sin] = [state.pitchCos, state.pitchSin];
    const [headX, headY, feetX, feetY] = [0.66 * cos, -0.66 * sin, -1.55 * cos, 1.55 * sin];
    return {
      left: frame.nowX + (Math.min(headX, feetX) - 0.2) * px,
      right: frame.nowX + (Math.max(headX, feetX) + 0.12) * px,
      top: y + (Math.min(headY, feetY) - 0.3) * px,
      bottom: y + (Math.max(headY, feetY) + 0.25) * px,
    };
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
