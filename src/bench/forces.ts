import type { Speed } from './engine.ts';
import { areaOf, below, type Point } from './section.ts';
import { waterIn } from './soaked.ts';
import { LENGTH_M, type Thing } from './thing.ts';

/** Water of the bench. */
export interface BenchWater {
  readonly densityKgPerM3: number;
  readonly gravityMps2: number;
}

/** A thing that moves, and what pulls at it. */
export interface Moving {
  readonly thing: Thing;
  readonly at: Point;
  readonly speed: Speed;
  /** Its hull and its hollow where they are, and the section of the water in that. */
  readonly hull: readonly Point[];
  readonly hollow: readonly Point[];
  readonly waterM2: number;
  /** Mass of the water that it displaced a step ago. */
  readonly displacedKg: number;
  /** Pull of the spring balance, upward; null off the hook. */
  readonly balanceN: number | null;
  readonly hand: Point | null;
}

/** What acts on a thing: newtons to the right and downward, newton metres clockwise. */
export interface Acting {
  readonly rightN: number;
  readonly downN: number;
  readonly turnNm: number;
  /** What has to be moved: the thing, the water in it, and the water that goes along. */
  readonly movedKg: number;
  readonly displacedKg: number;
}

/** Drag of a body moving broadside: coefficient on the area that faces the way. Practice, 0.8 to 1.2 for blunt bodies. */
const DRAG = 1;
/** Water moved along with a body, as a share of what it displaces: 1 for a cylinder across (Lamb 1932, closed form). */
export const ADDED = 1;
/** What calms a body in water, 1/s: waves and eddies that are not modelled. Chosen. */
const CALM_PER_S = 1.6;
const TURN_CALM_PER_S = 2.5;
const TURN_DRAG = 0.1;
const AIR_KG_PER_M3 = 1.2;
/** A hand pulls with a damped spring of this natural frequency, 1/s, and with no more than this many weights of the thing. Chosen. */
const HAND_PER_S = 22;
const HAND_WEIGHTS = 12;
/** The balance's spring hangs through by so much under the thing's own weight, metres. Chosen. */
const SAG_M = 0.03;

/** Pull of a spring balance whose hook without load is at a depth, newtons: it never pushes. */
export function pullOfBalanceN(thing: Thing, at: Point, hookYM: number, gravityMps2: number): number {
  return Math.max(0, ((at.yM - hookYM) * thing.massKg * gravityMps2) / SAG_M);
}

/**
 * Everything that acts on a thing: weight at its centre of mass, buoyancy at the centre of the displaced water, the water in its
 * hollow, drag, the water that it sets moving, the balance, a hand.
 */
export function actingOn(moving: Moving, water: BenchWater, surfaceYM: number, stepS: number): Acting {
  const { thing, at, speed: v, hull, hollow, waterM2, balanceN, hand } = moving;
  const { densityKgPerM3: rho, gravityMps2: g } = water;
  const wet = areaOf(below(hull, surfaceYM));
  const share = wet.areaM2 / areaOf(hull).areaM2;
  const displacedKg = rho * wet.areaM2 * LENGTH_M;
  let downN = (thing.massKg - displacedKg) * g;
  // Upward to the right of the centre of mass turns anticlockwise.
  let turnNm = displacedKg > 0 ? -displacedKg * g * (wet.xM - at.xM) : 0;
  let soakedKg = 0;
  if (waterM2 > 0) {
    const soaked = waterIn(hollow, waterM2);
    soakedKg = rho * soaked.areaM2 * LENGTH_M;
    downN += soakedKg * g;
    turnNm += soakedKg * g * (soaked.xM - at.xM);
  }
  const movedKg = thing.massKg + soakedKg + ADDED * displacedKg;
  const turnedKgM2 = thing.inertiaKgM2 * (movedKg / thing.massKg);
  const around = share * rho + (1 - share) * AIR_KG_PER_M3;
  const facingM2 = widthAcross(hull, v.x, v.y) * LENGTH_M;
  // Water that is set moving by what plunges in takes its momentum from there; what comes out leaves its own behind.
  const slam = (ADDED * Math.max(0, displacedKg - moving.displacedKg)) / stepS;
  const drag = 0.5 * around * DRAG * facingM2 * Math.hypot(v.x, v.y) + CALM_PER_S * share * movedKg + slam;
  let rightN = -drag * v.x;
  downN -= drag * v.y;
  const reach4 = areaOf(hull).areaM2 ** 2;
  turnNm -= (TURN_DRAG * around * LENGTH_M * reach4 * Math.abs(v.turn) + TURN_CALM_PER_S * share * turnedKgM2) * v.turn;
  if (balanceN !== null) {
    downN -= balanceN + 0.6 * thing.massKg * Math.sqrt(g / SAG_M) * v.y;
    rightN -= 2 * movedKg * v.x;
  }
  if (hand) {
    const mostN = HAND_WEIGHTS * Math.max(thing.massKg, displacedKg) * g;
    const pullN = (wayM: number, mps: number) =>
      Math.min(Math.max(movedKg * (HAND_PER_S ** 2 * wayM - 2 * HAND_PER_S * mps), -mostN), mostN);
    rightN += pullN(hand.xM - at.xM, v.x);
    downN += pullN(hand.yM - at.yM, v.y);
    turnNm -= 6 * turnedKgM2 * v.turn;
  }
  return { rightN, downN, turnNm, movedKg, displacedKg };
}

/** How wide an outline is across a way, metres. */
function widthAcross(outline: readonly Point[], x: number, y: number): number {
  const speed = Math.hypot(x, y);
  if (speed === 0) return 0;
  let [least, most] = [Infinity, -Infinity];
  for (const { xM, yM } of outline) {
    const across = (xM * -y + yM * x) / speed;
    if (across < least) least = across;
    if (across > most) most = across;
  }
  return most - least;
}
