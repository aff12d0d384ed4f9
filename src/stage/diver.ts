import { Container, Graphics } from 'pixi.js';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** The diver, true to size, mid-chest on the line. */
export class Diver {
  readonly root = new Container();
  readonly mark = new Graphics();
  readonly #body = new Graphics();

  constructor(style: Style) {
    const { tokens, unit } = style;
    const line = 0.018;
    this.#body
      .moveTo(0.36, -0.06)
      .bezierCurveTo(0.1, -0.18, -0.2, -0.14, -0.45, -0.08)
      .lineTo(-1.14, -0.04)
      .lineTo(-1.55, -0.08)
      .lineTo(-1.55, 0.02)
      .lineTo(-1.14, 0.05)
      .lineTo(-0.45, 0.12)
      .bezierCurveTo(-0.2, 0.16, 0.1, 0.18, 0.36, 0.06)
      .closePath()
      .fill(tokens.suit)
      .stroke({ width: line, color: tokens.ink, join: 'round' })
      .circle(0.52, -0.02, 0.13)
      .fill(tokens.suit)
      .stroke({ width: line, color: tokens.ink });
    this.root.addChild(this.#body);
    this.mark
      .circle(0, 0, 5.5 * unit)
      .fill(tokens.paper)
      .stroke({ width: 2.4 * unit, color: tokens.ink });
  }

  draw(view: StageView, frame: Frame): void {
    const y = depthToY(frame, view.depthM);
    this.root.position.set(frame.nowX, y);
    this.root.scale.set(frame.pxPerM * frame.enlarged);
    this.root.rotation = -Math.atan2(view.state.pitchSin, view.state.pitchCos);
    this.mark.position.set(frame.nowX, y);
  }
}
