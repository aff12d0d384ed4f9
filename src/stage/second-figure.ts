import { Container, Graphics } from 'pixi.js';
import { jacketM3 } from '../diver/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { bladderOutline, cylinderBoxes } from './diver-gas.ts';
import { HEAD, SHOULDER, TRUNK, legRibs, poseKey, poseOf, type Pose } from './figure-pose.ts';
import { elbow, hull, joined, lobe, rib, type Spot } from './figure-shape.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { mixed } from './tokens.ts';
import type { SecondView, StageView } from './view.ts';

/** Steps of the water's tint within the outline, from the surface to the ground. */
const TINTS = 24;

/** The second diver as an outline that holds nothing but water: body, cylinder and jacket, the jacket as large as its gas. */
export class SecondFigure {
  readonly root = new Container();
  readonly #style: Style;
  readonly #g = new Graphics();
  readonly #water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };
  #key = '';

  constructor(style: Style) {
    this.#style = style;
    this.root.addChild(this.#g);
  }

  draw(view: StageView, second: SecondView, frame: Frame): void {
    const { rig, state, depthM, controls } = second;
    const pxPerM = frame.pxPerM * frame.enlarged;
    const pose = poseOf({ ...view, state, controls });
    const { pressurePa } = waterAt(rig.column, Math.max(depthM, 0), this.#water);
    const litres = Math.round(jacketM3(rig, state.jacketMol, pressurePa) * 2e4) / 20;
    const shift = Math.round(state.pitchSin * 40) / 40;
    const tint = Math.round((Math.min(Math.max(depthM, 0), view.rig.bottomM) / view.rig.bottomM) * TINTS);
    const key = `${poseKey(pose)} ${litres} ${shift} ${tint} ${pxPerM} ${rig.vessels.length}`;
    if (key !== this.#key) {
      this.#key = key;
      this.#build(pose, { litres, shift, tint, pxPerM }, second);
    }
    this.root.position.set(frame.nowX, depthToY(frame, depthM));
    this.root.rotation = -Math.atan2(state.pitchSin, state.pitchCos);
  }

  #build(
    pose: Pose,
    { litres, shift, tint, pxPerM }: { litres: number; shift: number; tint: number; pxPerM: number },
    { rig }: SecondView,
  ): void {
    const { tokens } = this.#style;
    const hollow = mixed(tokens.waterTop, tokens.waterBottom, tint / TINTS);
    const scaled = (points: number[]) => points.map((metres) => metres * pxPerM);
    const [near, far] = [legRibs(pose.near), legRibs(pose.far)];
    const head = lobe(HEAD, 0.125, 0.125 * 0.118 * Math.PI, 0);
    const farHand = { x: pose.hand.x + 0.05, y: pose.hand.y - 0.04 };
    this.#g.clear();
    this.#outline(
      [far.leg, far.fin, armOf(farHand)].map((ribs) => scaled(hull(ribs))),
      hollow,
    );
    this.#outline(
      cylinderBoxes(rig).map(({ x, y, width, height }) =>
        scaled([x, y, x + width, y, x + width, y + height, x, y + height]),
      ),
      hollow,
    );
    const bladder = bladderOutline(litres * 1e-3, shift);
    if (bladder) this.#outline([scaled(bladder)], hollow);
    const body = [near.leg, near.fin, TRUNK, armOf(pose.hand)].map((ribs) => scaled(hull(ribs)));
    this.#outline([...body, scaled(head)], hollow);
  }

  /** One outline around shapes that belong together. */
  #outline(shapes: readonly number[][], hollow: number): void {
    const { tokens, unit } = this.#style;
    const line = (width: number, color: number) => {
      for (const points of shapes) this.#g.poly(joined(points), false).stroke({ width, color, join: 'round' });
    };
    line(7.4 * unit, tokens.paper);
    line(5 * unit, tokens.secondDiver);
    for (const points of shapes) this.#g.poly(points).fill(hollow);
  }
}

function armOf(hand: Spot) {
  const joint = elbow(SHOULDER, hand, 0.2, 0.22);
  return [rib(SHOULDER.x, SHOULDER.y, 0.052), rib(joint.x, joint.y, 0.038), rib(hand.x, hand.y, 0.032)];
}
