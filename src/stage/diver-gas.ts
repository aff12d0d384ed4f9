import { Container, Graphics } from 'pixi.js';
import { jacketM3, loopM3, type Rig } from '../diver/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { joined, lobe } from './figure-shape.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** Lungs, jacket and loop are drawn as if this deep across, metres: their areas compare as their volumes do. */
export const ACROSS_M = 0.13;
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

  /** Between back and cylinder; an empty bladder is still there, as a fold. */
  #drawBladder(g: Graphics, volumeM3: number, shift: number, pxPerM: number): void {
    const { tokens, unit } = this.#style;
    g.moveTo(-0.36 * pxPerM, -0.155 * pxPerM)
      .lineTo(0.16 * pxPerM, -0.155 * pxPerM)
      .stroke({ width: Math.max(2.4 * unit, 0.036 * pxPerM), color: tokens.ink, cap: 'round' });
    const outline = bladderOutline(volumeM3, shift);
    if (outline) this.#gas(g, outline, pxPerM);
  }

  /** A bar of contents in each cylinder: as long as the share of the filling that is left. */
  #drawCylinders(g: Graphics, rig: Rig, shares: readonly number[], pxPerM: number): void {
    const { tokens, unit } = this.#style;
    cylinderBoxes(rig).forEach((metres, i) => {
      const { x, y, width, height } = metres;
      const [half, radius] = [width / 2, height / 2];
      const box = [x * pxPerM, y * pxPerM, width * pxPerM, height * pxPerM] as const;
      // Between wall and contents a cylinder shows itself, full as it is: it is not the jacket beside it.
      const inset = 0.8 * unit + 0.02 * pxPerM;
      g.roundRect(
        (x + half * 2 - 0.02) * pxPerM,
        (y + radius - 0.032) * pxPerM,
        0.1 * pxPerM,
        0.064 * pxPerM,
        0.02 * pxPerM,
      ).fill(tokens.ink);
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

/** Outline of the bladder, metres in the figure's frame: its gas moves to the high end; null where there is next to none. */
export function bladderOutline(volumeM3: number, shift: number): number[] | null {
  const half = 0.27 * Math.max(0.55, (volumeM3 / 8e-3) ** 0.3);
  const area = volumeM3 / ACROSS_M;
  const thick = area / (Math.PI * half);
  return thick > 2e-3 ? lobe({ x: -0.1 + 0.1 * shift, y: -0.145 - 0.4 * thick }, half, area, -0.25 * shift) : null;
}

/** Where the cylinders lie in the figure's frame, metres; the first behind the others. */
export function cylinderBoxes({ vessels }: Rig): { x: number; y: number; width: number; height: number }[] {
  return vessels.map(({ waterM3 }, i) => {
    const size = Math.cbrt(waterM3 / 12e-3);
    const [half, radius] = [0.31 * size, 0.088 * size];
    const back = vessels.length - 1 - i;
    const y = CYLINDER_Y - 0.1 * back - radius + 0.088;
    return { x: CYLINDER_X + 0.05 * back - half, y: y - radius, width: half * 2, height: radius * 2 };
  });
}
