import {
  EMERGED_LEVEL_M,
  EMERGED_UPRIGHT_M,
  JACKET_GAS_SHIFT_M,
  PLACES,
  SUIT_GAS_SHIFT_M,
  type Rig,
} from '../diver/index.ts';
import type { Direction } from './attitude.ts';
import type { Controls } from './controls.ts';
import type { DiveState } from './state.ts';

/** Rotation: inertia with water, kg m²; damping, N m s and N m s². Practice. */
const INERTIA_KGM2 = 50;
const DAMP_NMS = 40;
const DAMP_NMS2 = 60;
/** The most torque that a diver has, N m. Practice. */
export const TORQUE_NM = 60;
/** How a diver holds an attitude: stiffness, N m, and damping, N m s. Practice: a turn of 60° takes about three seconds. */
const HOLD_NM = 120;
const HOLD_NMS = 115;
/** Nearer to the commanded attitude than this (sine), and slower (rad/s), the diver is there. */
const THERE = 1e-5;

/** What the parts weigh and displace at one stage of a tick, and what comes of it. Filled and read in place, so that nothing
 * is allocated inside the step. */
export interface Lever {
  pitchCos: number;
  pitchSin: number;
  pitchRateRadps: number;
  densityKgPerM3: number;
  massKg: number;
  cylinderGasKg: number;
  jacketMol: number;
  suitMol: number;
  loopMol: number;
  gutM3: number;
  foamM3: number;
  jacketM3: number;
  suitGasM3: number;
  loopM3: number;
  wholeM3: number;
  emergedM3: number;
  /** Out: moment of all parts about the centre of mass, N m, head-up positive. */
  momentNm: number;
  /** Out: angular acceleration, rad/s². */
  accelerationRadps2: number;
}

/** A lever of nothing. */
export function emptyLever(): Lever {
  return {
    pitchCos: 1,
    pitchSin: 0,
    pitchRateRadps: 0,
    densityKgPerM3: 0,
    massKg: 0,
    cylinderGasKg: 0,
    jacketMol: 0,
    suitMol: 0,
    loopMol: 0,
    gutM3: 0,
    foamM3: 0,
    jacketM3: 0,
    suitGasM3: 0,
    loopM3: 0,
    wholeM3: 0,
    emergedM3: 0,
    momentNm: 0,
    accelerationRadps2: 0,
  };
}

/**
 * Writes the moment of all parts about the centre of mass: each buoyant force at its place, less the whole at the centre of
 * mass, since weight has no moment about it. Jacket and drysuit gas lie toward the high end.
 */
export function writeMoment(rig: Rig, s: DiveState, at: Lever): void {
  const { pitchCos: cos, pitchSin: sin } = at;
  const jacketHeadward = PLACES.jacket.headwardM + JACKET_GAS_SHIFT_M * sin;
  const suitGasHeadward = PLACES.suit.headwardM + SUIT_GAS_SHIFT_M * sin;
  const jacketKg = at.jacketMol * rig.kgPerMol;
  const suitKg = at.suitMol * rig.kgPerMol;
  const loopKg = at.loopMol * rig.kgPerMol;
  const massHeadward =
    s.massHeadward +
    at.cylinderGasKg * PLACES.cylinder.headwardM +
    jacketKg * jacketHeadward +
    suitKg * suitGasHeadward +
    loopKg * PLACES.loop.headwardM;
  const massBackward =
    s.massBackward +
    at.cylinderGasKg * PLACES.cylinder.backwardM +
    jacketKg * PLACES.jacket.backwardM +
    loopKg * PLACES.loop.backwardM;
  const volumeHeadward =
    s.volumeHeadward +
    at.gutM3 * PLACES.tissue.headwardM +
    at.foamM3 * PLACES.suit.headwardM +
    at.jacketM3 * jacketHeadward +
    at.suitGasM3 * suitGasHeadward +
    at.loopM3 * PLACES.loop.headwardM -
    at.emergedM3 * EMERGED_UPRIGHT_M * sin;
  const volumeBackward =
    s.volumeBackward +
    at.jacketM3 * PLACES.jacket.backwardM +
    at.loopM3 * PLACES.loop.backwardM -
    at.emergedM3 * EMERGED_LEVEL_M * cos;
  const afloatPerKg = (at.wholeM3 - at.emergedM3) / at.massKg;
  at.momentNm =
    at.densityKgPerM3 *
    rig.column.gravityMps2 *
    (cos * (volumeHeadward - afloatPerKg * massHeadward) - sin * (volumeBackward - afloatPerKg * massBackward));
}

/** Whether the diver is at rest in the commanded attitude and strong enough to stay there against the moment. */
export function canHold(c: Controls, target: Direction, at: Lever): boolean {
  return (
    c.attitude === 0 &&
    at.pitchRateRadps === 0 &&
    at.pitchCos === target.cos &&
    at.pitchSin === target.sin &&
    Math.abs(at.momentNm) <= TORQUE_NM
  );
}

/**
 * Writes the angular acceleration: the parts' moment, the diver's own torque within ±60 N m, and damping. Holding, the diver
 * takes off what the parts exert and steers toward the attitude; direct, the torque is the one commanded.
 */
export function writeTurn(c: Controls, target: Direction, at: Lever): void {
  const q = at.pitchRateRadps;
  let own = c.torqueNm;
  if (c.attitude === 0) {
    const offSin = target.sin * at.pitchCos - target.cos * at.pitchSin;
    const offCos = target.cos * at.pitchCos + target.sin * at.pitchSin;
    own = HOLD_NM * (offCos >= 0 ? offSin : offSin >= 0 ? 1 : -1) - HOLD_NMS * q - at.momentNm;
  }
  own = Math.min(Math.max(own, -TORQUE_NM), TORQUE_NM);
  at.accelerationRadps2 = (at.momentNm + own - DAMP_NMS * q - DAMP_NMS2 * Math.abs(q) * q) / INERTIA_KGM2;
}

/** Stores the attitude after a tick: brought back to unit length, and set on the command once it is as good as reached. */
export function settleAttitude(s: DiveState, c: Controls, target: Direction, after: Lever): void {
  const { pitchCos: cos, pitchSin: sin, pitchRateRadps: q } = after;
  const length = Math.sqrt(cos * cos + sin * sin);
  s.pitchCos = cos / length;
  s.pitchSin = sin / length;
  s.pitchRateRadps = q;
  if (c.attitude !== 0 || Math.abs(q) > THERE || Math.abs(target.sin * s.pitchCos - target.cos * s.pitchSin) > THERE)
    return;
  if (target.cos * s.pitchCos + target.sin * s.pitchSin < 0) return;
  s.pitchCos = target.cos;
  s.pitchSin = target.sin;
  s.pitchRateRadps = 0;
}
