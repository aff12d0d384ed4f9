import { Container, Graphics, GraphicsContext } from 'pixi.js';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';
import { WaterSunk } from './water-sunk.ts';

/** One speck for so many square pixels of water at unit size. */
const PX2_PER_SPECK = 9500;

/** Specks hang in the water and show what moves up or down; they sink with a down-current, and never move sideways with time. */
export class Specks {
  readonly root = new Container();
  readonly #specks: { g: Graphics; share: number }[];
  readonly #water = new WaterSunk();

  constructor(style: Style) {
    const { waterPx, heightPx, unit, tokens } = style;
    const count = Math.round(Math.min(90, (waterPx * heightPx) / (PX2_PER_SPECK * unit * unit)));
    const shape = new GraphicsContext().circle(0, 0, 1.3 * unit).fill({ color: tokens.secondary, alpha: 0.45 });
    this.#specks = Array.from({ length: count }, (_, i) => {
      const g = this.root.addChild(new Graphics(shape));
      // Golden-ratio steps spread points evenly without a pattern that the eye finds.
      g.x = ((i * 0.754877666) % 1) * waterPx;
      g.scale.set(0.7 + ((i * 7) % 5) * 0.11);
      return { g, share: (i * 0.569840291) % 1 };
    });
  }

  draw(view: StageView, frame: Frame): void {
    const spanM = frame.heightPx / frame.pxPerM + 0.2;
    const sunkM = view.reducedMotion ? 0 : this.#water.sunkM(view);
    for (const { g, share } of this.#specks) {
      const hangsM = share * spanM + sunkM;
      const depthM = frame.topM - 0.1 + modulo(hangsM - frame.topM, spanM);
      g.visible = depthM > 0.03 && depthM < view.rig.bottomM;
      g.y = depthToY(frame, depthM);
    }
  }
}

function modulo(value: number, by: number): number {
  return value - Math.floor(value / by) * by;
}
