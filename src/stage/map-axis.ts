import { Container, Graphics, type Text } from 'pixi.js';
import type { Style } from './layout.ts';
import type { AcrossTick } from './view.ts';
import { labelOf, put } from './words.ts';

/** The axis across a map: ticks with their words and what they count, on paper at the foot of the panel. */
export class MapAxis {
  readonly root = new Container();
  readonly #style: Style;
  readonly #paper = new Graphics();
  readonly #words: Text;
  readonly #labels: Text[] = [];
  #ticks: readonly AcrossTick[] = [];
  #key = '';
  #heightPx = 0;

  constructor(style: Style) {
    this.#style = style;
    this.#words = labelOf(style, { anchorX: 0.5, anchorY: 0 });
    const wordWrapWidth = style.waterPx - style.freePx - 8 * style.unit;
    Object.assign(this.#words.style, { wordWrap: true, wordWrapWidth, align: 'center' });
    this.root.addChild(this.#paper, this.#words);
  }

  /** Height of the strip, pixels above the foot of the picture. */
  get heightPx(): number {
    return this.#heightPx;
  }

  /** @param toX place across the page of a value */
  draw(words: string, ticks: readonly AcrossTick[], toX: (value: number) => number, rangeKey: string): void {
    const key = `${words} ${rangeKey} ${ticks.map((tick) => `${tick.at} ${tick.words}`).join()}`;
    if (key === this.#key && ticks.length === this.#ticks.length) return;
    this.#key = key;
    this.#ticks = ticks;
    const { tokens, unit, textPx, waterPx, freePx, footPx, heightPx, edgePx } = this.#style;
    this.#words.text = words;
    this.#heightPx = Math.max(footPx, Math.ceil(this.#words.height + textPx * 1.35 + 9 * unit));
    const top = heightPx - this.#heightPx;
    put(this.#words, (freePx + waterPx) / 2, top + 8 * unit + textPx * 1.3);
    const g = this.#paper
      .clear()
      .rect(freePx, top, waterPx - freePx, this.#heightPx)
      .fill(tokens.paper);
    g.moveTo(freePx, top).lineTo(waterPx, top);
    let lastX = -Infinity;
    let used = 0;
    for (const tick of ticks) {
      const x = toX(tick.at);
      if (x < freePx - 0.5 || x > waterPx + 0.5) continue;
      g.moveTo(x, top).lineTo(x, top + 6 * unit);
      const label = (this.#labels[used] ??= this.root.addChild(labelOf(this.#style, { anchorX: 0.5, anchorY: 0 })));
      label.text = tick.words;
      const half = label.width / 2;
      const at = Math.min(Math.max(x, freePx + half + 4 * unit), waterPx - half - 4 * unit);
      label.visible = at - half > lastX + 5 * unit;
      used++;
      if (!label.visible) continue;
      put(label, at, top + 7 * unit);
      lastX = at + half;
    }
    g.stroke({ width: edgePx, color: tokens.ink });
    for (const label of this.#labels.slice(used)) label.visible = false;
  }
}
