import { FLAG } from '../dive/index.ts';
import { jacketM3 } from '../diver/index.ts';
import { waterAt } from '../water/index.ts';
import { mouthOf } from './diver-body.ts';
import { REAR_VENT, SHOULDER_VENT, poseOf } from './figure-pose.ts';
import type { Spot } from './figure-shape.ts';
import type { StageView } from './view.ts';

/** A hose through which gas goes, as four points of a curve in the figure's frame, metres. */
export type Hose = readonly [Spot, Spot, Spot, Spot];

/** What happens to the diver's gas at a moment: in words, and where it shows on the figure. */
export interface Doings {
  /** The gravest first. */
  readonly words: readonly string[];
  readonly hoses: readonly Hose[];
  /** Where gas leaves. */
  readonly spouts: readonly Spot[];
  readonly suitSqueezed: boolean;
  readonly lungsStretched: boolean;
}

/** What venting leaves in a jacket, and a twentieth of a litre more, is nothing to let out, m³. */
const NOTHING_M3 = 5e-5;

/** Where gas leaves and enters, metres in the figure's frame: suit exhaust at the arm, first stage on the cylinder. */
const SUIT_EXHAUST: Spot = { x: 0.3, y: 0.1 };
const FIRST_STAGE: Spot = { x: 0.2, y: -0.245 };
const TO_JACKET: Hose = [FIRST_STAGE, { x: 0.3, y: -0.3 }, { x: 0.26, y: -0.16 }, { x: 0.13, y: -0.15 }];
const TO_CHEST: Hose = [FIRST_STAGE, { x: 0.4, y: -0.2 }, { x: 0.3, y: 0.12 }, { x: 0.14, y: 0.12 }];

/** What a view's moment does with the diver's gas. */
export function doingsOf(view: StageView): Doings {
  const { state, controls, rig } = view;
  const is = (flag: number) => (state.flags & flag) !== 0;
  const { pressurePa } = waterAt(rig.column, Math.max(state.depthM, 0), { densityKgPerM3: 0, pressurePa: 0 });
  const jacketEmpty = jacketM3(rig, state.jacketMol, pressurePa) <= rig.jacket.residualM3 + NOTHING_M3;
  const [mouthX, mouthY] = mouthOf(poseOf(view).gaze);
  const mouth: Spot = { x: mouthX, y: mouthY };
  const words: string[] = [];
  const hoses: Hose[] = [];
  const spouts: Spot[] = [];
  const say = (on: boolean, said: string) => void (on && words.push(said));
  say(is(FLAG.critical), 'lungs stretched too far');
  say(is(FLAG.overpressure) && !is(FLAG.critical), 'lungs stretched');
  say(is(FLAG.regulatorEmpty), 'nothing left to breathe');
  say(is(FLAG.loopLow), 'loop too empty');
  say(is(FLAG.lungSqueeze), 'lungs squeezed');
  say(is(FLAG.suitSqueeze), 'suit squeezes');
  if (is(FLAG.relief)) {
    words.push('relief valve lets gas out');
    spouts.push(REAR_VENT);
  }
  if (controls.jacketAdd === 1) {
    words.push(is(FLAG.inflatorDead) ? 'inflator gives no more' : 'gas into the jacket');
    if (!is(FLAG.inflatorDead)) hoses.push(TO_JACKET);
  }
  if (controls.jacketVent !== 0) {
    words.push(jacketEmpty ? 'jacket is empty' : 'gas out of the jacket');
    if (!jacketEmpty) spouts.push(controls.jacketVent === 1 ? SHOULDER_VENT : REAR_VENT);
  }
  if (controls.oral === 1) {
    words.push('breath into the jacket');
    hoses.push([mouth, { x: mouthX - 0.1, y: mouthY - 0.2 }, { x: 0.3, y: -0.12 }, { x: 0.13, y: -0.15 }]);
  }
  if (rig.drysuit && controls.suitAdd === 1) {
    words.push(is(FLAG.inflatorDead) ? 'suit valve gives no more' : 'gas into the suit');
    if (!is(FLAG.inflatorDead)) hoses.push(TO_CHEST);
  }
  if (rig.drysuit && controls.suitVent === 1) {
    words.push('suit valve pressed');
    spouts.push(SUIT_EXHAUST);
  }
  if (rig.loop && controls.diluent === 1) {
    words.push('gas into the loop');
    hoses.push(TO_CHEST);
  }
  if (rig.loop && controls.noseVent === 1) {
    words.push('gas out of the loop');
    spouts.push(mouth);
  }
  return {
    words,
    hoses,
    spouts,
    suitSqueezed: is(FLAG.suitSqueeze),
    lungsStretched: is(FLAG.overpressure) || is(FLAG.critical),
  };
}
