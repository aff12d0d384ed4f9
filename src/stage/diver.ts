import { Container, Graphics } from 'pixi.js';
import { foamM3, suitGasM3 } from '../diver/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { DiverBody, mouthOf, type Covers } from './diver-body.ts';
import { DiverGas } from './diver-gas.ts';
import { DiverLead } from './diver-lead.ts';
import { poseOf } from './figure-pose.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate } from './plate.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import type { Box } from './words-place.ts';

/** Suit and the gas under it are drawn so many times thicker than they are, or they would not show. */
export const COVER_TIMES = 6;
/** Area over which a suit's volume is spread to a thickness, m². Practice. */
const BODY_M2 = 1.7;

/** The diver in section, from the state: mid-chest on the line, as long as the scale says unless it must be enlarged. */
export class Diver {
  readonly root = new Container();
  /** The chest mark, drawn over the line. */
  readonly mark = new Graphics();
  /** Says how many times its true size the figure is drawn, when it is. */
  readonly enlarged: Plate;
  readonly #style: Style;
  readonly #body: DiverBody;
  readonly #gas: DiverGas;
  readonly #lead: DiverLead;
  readonly #hose = new Graphics();
  readonly #water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };
  #hoseKey = '';

  constructor(style: Style) {
    this.#style = style;
    this.enlarged = new Plate(style, { size: 0.93 });
    this.#body = new DiverBody(style);
    this.#gas = new DiverGas(style);
    this.#lead = new DiverLead(style);
    const { far, near } = this.#body;
    const { behind, within, before } = this.#gas;
    this.root.addChild(far, before, behind, near, within, this.#lead.worn, this.#hose);
    const { tokens, unit } = style;
    this.mark
      .circle(0, 0, 5 * unit)
      .fill(tokens.paper)
      .stroke({ width: 2.4 * unit, color: tokens.ink });
  }

  draw(view: StageView, frame: Frame): void {
    const pxPerM = frame.pxPerM * frame.enlarged;
    const pose = poseOf(view);
    this.#body.draw(pose, this.#coversOf(view, pxPerM), pxPerM);
    this.#gas.draw(view, pxPerM);
    this.#lead.draw(view, pose, pxPerM);
    this.#drawHose(pose.gaze, pxPerM);
    const y = depthToY(frame, view.depthM);
    this.root.position.set(frame.nowX, y);
    this.root.rotation = -Math.atan2(view.state.pitchSin, view.state.pitchCos);
    this.mark.position.set(frame.nowX, y);
  }

  /** Says that the figure is enlarged, when it is: at the foot, on one side of the now-line, off what is there already. */
  drawSays({ enlarged, nowX }: Frame, taken: Taken): void {
    if (enlarged === 1) return this.enlarged.show(undefined);
    const { freePx, heightPx, unit } = this.#style;
    const [width, height] = this.enlarged.say(`diver drawn ×${enlarged}`);
    const air = 6 * unit;
    const lefts = [freePx - air - width, nowX - air - width, air].filter(
      (left) => left >= 0 && (left > nowX + air || left + width < nowX - air / 2),
    );
    const places = [0, 1, 2, 3, 4].flatMap((up) =>
      lefts.map((left): Box => {
        const bottom = heightPx - air - up * height * 1.1;
        return { left, top: bottom - height, right: left + width, bottom };
      }),
    );
    const box = taken.first(places) ?? places[0];
    this.enlarged.show(box);
    if (box) taken.boxes.push(box);
  }

  /** The part of the page that the figure takes. */
  boxOf({ depthM, state }: StageView, frame: Frame): Box {
    return figureBox(state, depthM, frame);
  }

  #coversOf({ rig, state }: StageView, pxPerM: number): Covers {
    const { pressurePa } = waterAt(rig.column, state.depthM, this.#water);
    const px = (COVER_TIMES * pxPerM) / BODY_M2;
    return { suitPx: foamM3(rig.foam, pressurePa) * px, gapPx: suitGasM3(rig, state.suitMol, pressurePa) * px };
  }

  #drawHose(gaze: number, pxPerM: number): void {
    const key = `${Math.round(gaze * 60)} ${pxPerM}`;
    if (key === this.#hoseKey) return;
    this.#hoseKey = key;
    const [x, y] = mouthOf(gaze);
    const p = (metres: number) => metres * pxPerM;
    this.#hose
      .clear()
      .moveTo(p(0.2), p(-0.245))
      .bezierCurveTo(p(0.36), p(-0.3), p(0.44), p(0.06), p(0.5), p(0.11))
      .bezierCurveTo(p(0.54), p(0.14), p(x - 0.01), p(y + 0.07), p(x), p(y + 0.02))
      .stroke({ width: Math.max(2 * this.#style.unit, 0.022 * pxPerM), color: this.#style.tokens.ink, cap: 'round' });
  }
}

/** The part of the page that a figure at a depth takes. */
export function figureBox(
  { pitchCos, pitchSin }: Pick<StageView['state'], 'pitchCos' | 'pitchSin'>,
  depthM: number,
  frame: Frame,
): Box {
  const px = frame.pxPerM * frame.enlarged;
  const y = depthToY(frame, depthM);
  const [headX, headY, feetX, feetY] = [0.66 * pitchCos, -0.66 * pitchSin, -1.55 * pitchCos, 1.55 * pitchSin];
  return {
    left: frame.nowX + (Math.min(headX, feetX) - 0.2) * px,
    right: frame.nowX + (Math.max(headX, feetX) + 0.12) * px,
    top: y + (Math.min(headY, feetY) - 0.3) * px,
    bottom: y + (Math.max(headY, feetY) + 0.25) * px,
  };
}
