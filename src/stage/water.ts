import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { mixed } from './tokens.ts';
import type { StageView } from './view.ts';
import { labelOf, put } from './words.ts';

/** Flat strips of colour that make the gradient: the eye sees no step, and the same depth has the same tint at every zoom. */
const STRIPS = 72;
/** How far off the chest the up-line hangs, metres of the diver's own scale: within an arm's reach. */
export const LINE_AHEAD_M = 0.62;
/** Thickness of a ledge. Its edges are level: a slope would read as a speed. */
const LEDGE_M = 0.55;

/** Water, air above, ground below, ledge, up-line and a thin rule each five metres. Rebuilt when the zoom or the ground changes. */
export class Water {
  readonly root = new Container();
  /** The waterline goes over the diver: a head out of the water is cut by it where the water stands. */
  readonly surface = new Graphics();
  readonly #style: Style;
  /** The ground goes over the diver too, who stands behind its edge. */
  readonly ground = new Graphics();
  readonly #picture = new Graphics();
  readonly #line = new Graphics();
  readonly #ledge: Text;
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    this.#ledge = labelOf(style, { bold: true });
    this.#ledge.text = 'ledge';
    this.root.addChild(this.#picture, this.#line, this.#ledge);
  }

  draw(view: StageView, frame: Frame): void {
    const { rig } = view;
    const ledgeM = rig.ledgeM !== null && view.controls.ledge === 1 ? rig.ledgeM : null;
    const key = `${frame.pxPerM} ${rig.bottomM} ${ledgeM} ${rig.line} ${frame.enlarged}`;
    if (key !== this.#key) {
      this.#key = key;
      this.#build(frame, rig.bottomM, ledgeM);
      this.#buildLine(frame, rig.line ? rig.bottomM : null);
    }
    this.root.y = this.surface.y = this.ground.y = depthToY(frame, 0);
  }

  #build(frame: Frame, bottomM: number, ledgeM: number | null): void {
    const { tokens, waterPx, unit, heightPx } = this.#style;
    const g = this.#picture.clear();
    const px = frame.pxPerM;
    g.rect(0, -heightPx, waterPx, heightPx + 1).fill(tokens.paper);
    for (let i = 0; i < STRIPS; i++) {
      const colour = mixed(tokens.waterTop, tokens.waterBottom, i / (STRIPS - 1));
      g.rect(0, (bottomM * px * i) / STRIPS, waterPx, (bottomM * px) / STRIPS + 1).fill(colour);
    }
    for (let m = 5; m < bottomM; m += 5)
      g.moveTo(0, m * px)
        .lineTo(waterPx, m * px)
        .stroke({ width: unit, color: tokens.secondary, alpha: 0.35 });
    this.surface
      .clear()
      .moveTo(0, 0)
      .lineTo(waterPx, 0)
      .stroke({ width: 2 * unit, color: tokens.ink });
    if (ledgeM !== null) {
      const width = frame.nowX + 1.9 * px;
      g.poly([
        0,
        ledgeM * px,
        width - 0.1 * px,
        ledgeM * px,
        width,
        (ledgeM + 0.12) * px,
        width - 0.1 * px,
        (ledgeM + LEDGE_M) * px,
        0,
        (ledgeM + LEDGE_M) * px,
      ])
        .fill(tokens.ground)
        .stroke({ width: 2 * unit, color: tokens.ink, join: 'round' });
    }
    const roomy = LEDGE_M * px > this.#style.textPx * 1.5;
    this.#ledge.visible = ledgeM !== null && roomy;
    if (ledgeM !== null) put(this.#ledge, 10 * unit, (ledgeM + LEDGE_M / 2) * px);
    this.#buildGround(bottomM * px);
  }

  #buildGround(y: number): void {
    const { tokens, waterPx, unit, heightPx } = this.#style;
    const g = this.ground.clear().rect(0, y, waterPx, heightPx).fill(tokens.ground);
    g.moveTo(0, y)
      .lineTo(waterPx, y)
      .stroke({ width: 2 * unit, color: tokens.ink });
    const step = 46 * unit;
    for (let i = 0; i * step < waterPx; i++) {
      const x = i * step + ((i * 37) % 23) * unit;
      const low = y + (9 + ((i * 53) % 31)) * unit;
      g.moveTo(x, low).lineTo(x + (5 + ((i * 29) % 9)) * unit, low);
    }
    g.stroke({ width: 1.5 * unit, color: tokens.ink, alpha: 0.4, cap: 'round' });
  }

  #buildLine(frame: Frame, bottomM: number | null): void {
    const { tokens, unit } = this.#style;
    const g = this.#line.clear();
    if (bottomM === null) return;
    const px = frame.pxPerM;
    const x = frame.nowX + LINE_AHEAD_M * px * frame.enlarged;
    g.moveTo(x, 0)
      .lineTo(x, bottomM * px)
      .stroke({ width: 1.6 * unit, color: tokens.secondary, alpha: 0.8 });
    g.rect(x - 5 * unit, bottomM * px - 9 * unit, 10 * unit, 9 * unit).fill(tokens.ink);
    g.ellipse(x, -1 * unit, 11 * unit, 6.5 * unit)
      .fill(tokens.paper)
      .stroke({ width: 1.8 * unit, color: tokens.ink });
  }
}
