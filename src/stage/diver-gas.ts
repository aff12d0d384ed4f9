import { Container, Graphics } from 'pixi.js';
import { jacketM3, loopM3, type Rig } from '../diver/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { joined, lobe } from './figure-shape.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** Lungs, jacket and loop are drawn as if this deep across, metres: their areas compare as their volumes do. */
const ACROSS_M = 0.13;
/** Share of the loop's one volume that is drawn as lungs. */
const LUNGS_OF_LOOP = 0.6;
const CYLINDER_Y = -0.245;
const CYLINDER_X = -0.15;

/** Everything in and on the diver that holds gas: amber with an ink outline. Each piece is redrawn when it looks different. */
export class DiverGas {
  readonly behind = new Container();
  readonly within = new Container();
  readonly before = new Container();
  readonly #style: Style;
  readonly #bladder = new Graphics();
  readonly #cylinders = new Graphics();
  readonly #lungs = new Graphics();
  readonly #bag = new Graphics();
  readonly #water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };
  readonly #keys = new Map<Graphics, string>();

  constructor(style: Style) {
    this.#style = style;
    this.behind.addChild(this.#cylinders, this.#bladder);
    this.within.addChild(this.#lungs);
    this.before.addChild(this.#bag);
  }

  draw({ rig, state }: StageView, pxPerM: number): void {
    const { pressurePa } = waterAt(rig.column, state.depthM, this.#water);
    const jacket = jacketM3(rig, state.jacketMol, pressurePa);
    const loop = loopM3(rig, state.loopMol, pressurePa);
    const lungs = rig.lungs.open ? state.lungM3 : loop * LUNGS_OF_LOOP;
    const shift = Math.round(state.pitchSin * 40) / 40;
    this.#keep(this.#lungs, `${q(lungs)} ${pxPerM}`, (g) => {
      const grown = Math.sqrt(lungs / 4e-3);
      this.#gas(g, lobe({ x: 0.075, y: 0.005 }, 0.155 * grown, lungs / ACROSS_M), pxPerM);
    });
    this.#keep(this.#bladder, `${q(jacket)} ${shift} ${pxPerM}`, (g) => this.#drawBladder(g, jacket, shift, pxPerM));
    this.#keep(this.#bag, `${q(loop)} ${pxPerM}`, (g) => {
      if (rig.loop) this.#gas(g, lobe({ x: 0.1, y: 0.17 }, 0.13, (loop * (1 - LUNGS_OF_LOOP)) / ACROSS_M, 0), pxPerM);
    });
    const shares = state.cylinderMol.map((mol, i) => Math.round((mol / (rig.vessels[i]?.fillMol || 1)) * 200) / 200);
    this.#keep(this.#cylinders, `${shares.join(' ')} ${pxPerM}`, (g) => this.#drawCylinders(g, rig, shares, pxPerM));
  }

  #keep(g: Graphics, key: string, draw: (g: Graphics) => void): void {
    if (this.#keys.get(g) === key) return;
    this.#keys.set(g, key);
    draw(g.clear());
  }

  #gas(g: Graphics, points: number[], pxPerM: number): void {
    const { tokens, unit } = this.#style;
    const outline = points.map((metres) => metres * pxPerM);
    g.poly(outline)
      .fill(tokens.gas)
      .poly(joined(outline), false)
      .stroke({ width: 1.6 * unit, color: tokens.ink, join: 'round' });
  }

  /** Between back and cylinder; its gas moves to the high end. */
  #drawBladder(g: Graphics, volumeM3: number, shift: number, pxPerM: number): void {
    const { tokens, unit } = this.#style;
    const half = 0.27 * Math.max(0.55, (volumeM3 / 8e-3) ** 0.3);
    const area = volumeM3 / ACROSS_M;
    const thick = area / (Math.PI * half);
    // An empty bladder is still there, as a fold.
    g.moveTo(-0.36 * pxPerM, -0.155 * pxPerM)
      .lineTo(0.16 * pxPerM, -0.155 * pxPerM)
      .stroke({ width: Math.max(2.4 * unit, 0.036 * pxPerM), color: tokens.ink, cap: 'round' });
    if (thick > 2e-3)
      this.#gas(g, lobe({ x: -0.1 + 0.1 * shift, y: -0.145 - 0.4 * thick }, half, area, -0.25 * shift), pxPerM);
  }

  /** A bar of contents in each cylinder: as long as the share of the filling that is left. */
  #drawCylinders(g: Graphics, rig: Rig, shares: readonly number[], pxPerM: number): void {
    const { tokens, unit } = this.#style;
    rig.vessels.forEach((vessel, i) => {
      const size = Math.cbrt(vessel.waterM3 / 12e-3);
      const [half, radius] = [0.31 * size, 0.088 * size];
      const back = rig.vessels.length - 1 - i;
      const x = (CYLINDER_X + 0.035 * back) * pxPerM;
      const y = (CYLINDER_Y - 0.06 * back - radius + 0.088) * pxPerM;
      const box = [x - half * pxPerM, y - radius * pxPerM, half * 2 * pxPerM, radius * 2 * pxPerM] as const;
      const inset = 1.2 * unit;
      g.roundRect(x + (half - 0.02) * pxPerM, y - 0.032 * pxPerM, 0.1 * pxPerM, 0.064 * pxPerM, 0.02 * pxPerM).fill(
        tokens.ink,
      );
      g.roundRect(...box, radius * 0.72 * pxPerM).fill(tokens.paper);
      const share = Math.min(1, shares[i] ?? 0);
      if (share > 0.02)
        g.roundRect(
          box[0] + inset,
          box[1] + inset,
          (box[2] - 2 * inset) * share,
          box[3] - 2 * inset,
          Math.min(radius * 0.66 * pxPerM, box[2] * share * 0.5),
        ).fill(tokens.gas);
      g.roundRect(...box, radius * 0.72 * pxPerM).stroke({ width: 1.7 * unit, color: tokens.ink });
    });
  }
}

/** A volume to the hundredth of a litre: finer does not show. */
function q(volumeM3: number): number {
  return Math.round(volumeM3 * 5e4);
}
