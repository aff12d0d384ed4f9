import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';
import { labelOf, put } from './words.ts';

/** Steps between ticks that read well, seconds. */
const STEPS_S = [5, 10, 20, 30, 60, 120, 300, 600];

/** Ticks along the top edge that scroll with the paper, each with its seconds from now; `now`, solid when the dive is frozen. */
export class TimeTicks {
  readonly root = new Container();
  readonly nowLine = new Container();
  readonly #style: Style;
  readonly #ticks: { mark: Graphics; label: Text }[] = [];
  readonly #nowLabel: Text;
  readonly #solid = new Graphics();

  constructor(style: Style) {
    this.#style = style;
    const { tokens, nowX, unit, edgePx, textPx, heightPx } = style;
    this.#nowLabel = labelOf(style, { bold: true, size: 0.93, anchorX: 0.5, anchorY: 0 });
    this.#nowLabel.text = 'now';
    const tick = new Graphics()
      .moveTo(nowX, 0)
      .lineTo(nowX, 8 * unit)
      .stroke({ width: edgePx, color: tokens.ink });
    this.#solid
      .moveTo(nowX, 0)
      .lineTo(nowX, 7 * unit)
      .moveTo(nowX, 12 * unit + textPx)
      .lineTo(nowX, heightPx)
      .stroke({ width: edgePx, color: tokens.ink });
    this.nowLine.addChild(this.#solid);
    this.root.addChild(tick, this.#nowLabel);
  }

  draw(view: StageView, frame: Frame): void {
    this.#solid.visible = view.frozen;
    const { freePx, textPx, narrow, unit } = this.#style;
    const room = textPx * (narrow ? 5.5 : 8);
    const stepS = STEPS_S.find((s) => s * frame.pxPerS >= room) ?? 1200;
    // Words stand in the air or under the surface, never across it.
    const surfaceY = depthToY(frame, 0);
    const crossed = surfaceY > 0 && surfaceY < 9 * unit + textPx * 1.35;
    const top = crossed ? surfaceY + 3 * unit : 9 * unit;
    put(this.#nowLabel, frame.nowX, top);
    const firstS = Math.ceil((view.nowS - frame.nowX / frame.pxPerS) / stepS) * stepS;
    let used = 0;
    for (let s = firstS; secondsToX(frame, s) < freePx - textPx; s += stepS) {
      const x = secondsToX(frame, s);
      const { mark, label } = this.#tick(used++);
      mark.visible = true;
      mark.x = x;
      // Near `now` a tick keeps quiet, and so does one whose words would be cut at the edge.
      label.visible = Math.abs(x - frame.nowX) > textPx * 3.4 && x > textPx * 1.7 && x < freePx - textPx * 1.8;
      if (!label.visible) continue;
      const fromNow = Math.round(s - view.nowS);
      label.text = `${fromNow < 0 ? '−' : '+'}${Math.abs(fromNow)} s`;
      put(label, x, top);
    }
    for (let i = used; i < this.#ticks.length; i++)
      this.#ticks[i]!.mark.visible = this.#ticks[i]!.label.visible = false;
  }

  #tick(i: number): { mark: Graphics; label: Text } {
    const { tokens, unit, edgePx } = this.#style;
    let tick = this.#ticks[i];
    if (!tick) {
      const mark = new Graphics()
        .moveTo(0, 0)
        .lineTo(0, 7 * unit)
        .stroke({ width: edgePx * 0.8, color: tokens.secondary });
      tick = { mark, label: labelOf(this.#style, { colour: tokens.secondary, size: 0.93, anchorX: 0.5, anchorY: 0 }) };
      this.#ticks.push(tick);
      this.root.addChild(tick.mark, tick.label);
    }
    return tick;
  }
}
