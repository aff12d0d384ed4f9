import { Container, Graphics } from 'pixi.js';
import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import { ledgerPxPerKgf } from './bars-scale.ts';
import { PX_PER_KGF, depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';

/** Within this the diver is neutral, kgf. @source look: colour and words */
export const NEUTRAL_KGF = 0.1;
/** The force beyond which it grows no more, kgf. */
const MOST_KGF = 2.5;

/**
 * The net force of the moment: the only arrow there is. Up and blue, down and vermilion, none when neutral. It bears no word:
 * *light* and *heavy* are judged at mid-breath, beside the scale, and an arrow swings with every breath.
 */
export class ForceArrow {
  readonly root = new Container();
  readonly #style: Style;
  readonly #arrow = new Graphics();
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    this.root.addChild(this.#arrow);
  }

  draw({ state, depthM, forceArrow, arrowN, overlay }: StageView, frame: Frame, taken: Taken): void {
    this.root.visible = forceArrow;
    if (!forceArrow) return;
    const { unit, textPx, heightPx } = this.#style;
    const kgf = (arrowN ?? state.netN) / STANDARD_GRAVITY_MPS2;
    const px = frame.pxPerM * frame.enlarged;
    // The arrow starts off the body, on the side to which it points, behind the chest, where the line ahead leaves room.
    const upright = state.pitchSin * state.pitchSin;
    const x = frame.nowX - (0.2 * Math.abs(state.pitchCos) + 0.45 * upright) * px;
    const y = depthToY(frame, depthM) + (kgf > 0 ? -0.38 + 0.3 * upright : 0.27 - 0.2 * upright) * px;
    const roomPx =
      kgf > 0 ? y - textPx * 2.3 : heightPx - (this.#style.bars > 0 ? this.#style.footPx : 0) - 4 * unit - y;
    const mostPx = Math.max(24 * unit, Math.min(MOST_KGF * PX_PER_KGF * unit, Math.floor(roomPx / 4) * 4));
    const wantedPx = lengthPx(
      kgf,
      unit,
      overlay?.kind === 'ledger' ? ledgerPxPerKgf(this.#style, overlay.up, overlay.down) : PX_PER_KGF * unit,
    );
    const length = Math.abs(kgf) <= NEUTRAL_KGF ? 0 : Math.min(wantedPx, mostPx);
    const cut = wantedPx > mostPx;
    const key = `${Math.round(length * 2)} ${kgf > 0} ${cut}`;
    if (key !== this.#key) drawArrow(this.#arrow, this.#style, length, Math.sign(kgf), cut);
    this.#key = key;
    this.#arrow.position.set(x, y);
    if (length === 0) return;
    const wide = 12 * unit;
    taken.boxes.push({
      left: x - wide,
      top: y - (kgf > 0 ? length : 0),
      right: x + wide,
      bottom: y + (kgf > 0 ? 0 : length),
    });
  }
}

/** Draws an arrow from its foot at 0, up (1) or down (−1), so long and so thick against the one on the diver; cut: it should be longer. */
export function drawArrow(g: Graphics, style: Style, length: number, up: number, cut: boolean, thick = 1): void {
  const { tokens } = style;
  const unit = style.unit * thick;
  g.clear();
  if (length === 0) return;
  const [shaft, head, wide] = [4.5 * unit, Math.min(13 * unit, length * 0.8), 11 * unit];
  const at = (x: number, along: number) => [x, -up * along] as const;
  g.poly([
    ...at(-shaft, 0),
    ...at(-shaft, length - head),
    ...at(-wide, length - head),
    ...at(0, length),
    ...at(wide, length - head),
    ...at(shaft, length - head),
    ...at(shaft, 0),
  ])
    .fill(up > 0 ? tokens.forceUp : tokens.forceDown)
    .stroke({ width: 1.5 * style.unit, color: tokens.paper, join: 'round' });
  // A cut through the shaft says that the force is greater than the arrow is long.
  if (cut)
    g.poly([
      ...at(-shaft * 1.6, 12 * unit),
      ...at(shaft * 1.6, 17 * unit),
      ...at(shaft * 1.6, 21 * unit),
      ...at(-shaft * 1.6, 16 * unit),
    ]).fill(tokens.paper);
}

/** Length of the arrow of a force, pixels; a small one is as long as its head. */
function lengthPx(kgf: number, unit: number, pxPerKgf: number): number {
  return Math.max(Math.abs(kgf) * pxPerKgf, 15 * unit);
}
