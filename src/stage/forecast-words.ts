import { Container, Graphics, type Text } from 'pixi.js';
import { ForecastPlace, type PlacedForecast } from './forecast-place.ts';
import type { Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';
import type { Taken } from './taken.ts';
import { labelOf, put } from './words.ts';

/** "8.9 m in 10 s if you do nothing", on a plate of paper near its ring, where it crosses nothing that must be read. */
export class ForecastWords {
  readonly root = new Container();
  readonly #style: Style;
  readonly #place: ForecastPlace;
  readonly #plate = new Graphics();
  readonly #hair = new Graphics();
  readonly #words: Text;
  #plateKey = '';
  #hairKey = '';

  constructor(style: Style) {
    this.#style = style;
    this.#place = new ForecastPlace(style);
    this.#words = labelOf(style, { size: style.projector ? 1 : 0.96 });
    this.root.addChild(this.#hair, this.#plate, this.#words);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { forecastM, forecastWords = 'if you do nothing' } = view;
    const { unit, narrow } = this.#style;
    const endM = forecastM?.[10];
    this.root.visible = endM !== undefined && forecastWords !== '';
    if (endM === undefined || !this.root.visible) return;
    // A dot cannot lie above the water: words speak of metres below the surface.
    const metres = Math.max(0, endM).toFixed(1);
    this.#words.text = `${metres} m in 10 s${narrow ? '\n' : ' '}${forecastWords}`;
    const pad = 4 * unit;
    const width = Math.ceil(this.#words.width / 4) * 4 + 2 * pad;
    const height = this.#words.height + pad;
    const placed = this.#place.seek(width, height, view, frame, taken);
    this.root.visible = placed !== undefined;
    if (!placed) return;
    const { box, hair } = placed;
    taken.boxes.push(box);
    this.#drawPlate(width, height);
    this.#drawHair(hair);
    this.#plate.position.set(box.left, box.top);
    put(this.#words, box.left + pad, (box.top + box.bottom) / 2);
  }

  #drawHair(hair: PlacedForecast['hair']): void {
    this.#hair.visible = hair !== null;
    if (!hair) return;
    const [fromX, fromY, toX, toY] = hair;
    this.#hair.position.set(fromX, fromY);
    const key = `${Math.round(toX - fromX)} ${Math.round(toY - fromY)}`;
    if (key === this.#hairKey) return;
    this.#hairKey = key;
    const { tokens, unit } = this.#style;
    this.#hair
      .clear()
      .moveTo(0, 0)
      .lineTo(toX - fromX, toY - fromY)
      .stroke({ width: 1.4 * unit, color: tokens.ink });
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
