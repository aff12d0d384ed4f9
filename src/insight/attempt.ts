import { HEAD_OUT_M, TOP_UPRIGHT_M, netForceN, type Instant, type Rig } from '../diver/index.ts';
import {
  SUSTAINED_N,
  TICKS_PER_S,
  dragAreaM2,
  floorDepthM,
  glide,
  overwriteState,
  regulatorGives,
  supplyPa,
  waterDownMps,
  type Controls,
  type DiveState,
} from '../dive/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { handsOff } from './forecast.ts';
import {
  USUAL_LUNGS,
  actionOf,
  heldBy,
  usesOf,
  type Action,
  type LungRange,
  type Means,
  type Uses,
  type Way,
} from './means.ts';

/**
 * What must not be reached. Sinking: the ground (the bottom, or the ledge for who is above it), or a depth of mid-chest.
 * Rising: the head out of the water, or any faster than a speed until then.
 */
export type Floor =
  | { readonly kind: 'ground' }
  | { readonly kind: 'depth'; readonly depthM: number }
  | { readonly kind: 'head-out' }
  | { readonly kind: 'rate'; readonly mps: number };

/** What a stopping forecast takes for granted. */
export interface StoppingAsk {
  readonly lungs: LungRange;
  /** Seconds in which nothing is done. */
  readonly reactionS: number;
  readonly below: Floor;
  readonly above: Floor;
}

/** Lungs between 1.8 and 5.8 L, a second to react, the ground below and the air above. */
export const USUAL_ASK: StoppingAsk = {
  lungs: USUAL_LUNGS,
  reactionS: 1,
  below: { kind: 'ground' },
  above: { kind: 'head-out' },
};

/** What one means comes to. */
export interface Stopping {
  readonly means: Means;
  readonly stops: boolean;
  /** Where the motion ends; null where it does not. */
  readonly depthM: number | null;
  /** From now, the reaction included. */
  readonly timeS: number | null;
  /** Greatest speed the bad way on the way there, m/s, >= 0. */
  readonly peakMps: number;
}

/** How far ahead is looked before a motion counts as not stopped, seconds. Chosen. */
export const HORIZON_S = 120;
/** Controls may be asked for anew after so many ticks. */
const CHANGE_TICKS = 6;
/** Steps of a look ahead, ticks: while the body turns, at first, once all is slow, and once nothing can help. */
export interface Steps {
  readonly turning: number;
  readonly first: number;
  readonly slow: number;
  readonly gone: number;
}
/** Steps of a stopping forecast: within centimetres of the full model. */
export const USUAL_STEPS: Steps = { turning: CHANGE_TICKS, first: 12, slow: 24, gone: 48 };
/** Metres from the floor within which the look ahead is close, and seconds of acting after which all is slow. Chosen. */
const NEAR_FLOOR_M = 2;
const SLOW_AFTER_S = 12;

/**
 * Net force that lasts, newtons, up positive: lungs in the middle of the automatic breath, or where they are told to be, and
 * of the fins what can be kept up; and the pull of water that moves on who stands still in it.
 */
export function steadyNetN(rig: Rig, state: Readonly<DiveState>, controls: Controls, withFins: boolean): number {
  const told = heldBy(rig, controls.lungCl * 1e-5);
  // Lungs are not filled by a regulator that gives nothing.
  const follows = rig.lungs.open && controls.breath !== 2 && (told <= state.lungM3 || breathes(rig, state));
  const lungM3 = follows ? told : state.lungM3;
  probe.depthM = state.depthM;
  probe.pitchCos = state.pitchCos;
  probe.pitchSin = state.pitchSin;
  probe.lungM3 = lungM3;
  probe.lungMol = state.lungMol;
  probe.jacketMol = state.jacketMol;
  probe.suitMol = state.suitMol;
  probe.loopMol = state.loopMol;
  probe.cylinderMol = state.cylinderMol;
  probe.releasedMask = state.releasedMask;
  const thrustN = withFins ? Math.min(Math.max(state.thrustN, -SUSTAINED_N), SUSTAINED_N) : 0;
  return netForceN(rig, probe) + thrustN * state.pitchSin - pullDownN(rig, state, controls);
}

/** What water that moves pulls down with, newtons, on a diver who stands still in it: drag at the water's speed. */
function pullDownN(rig: Rig, { depthM, pitchSin }: Readonly<DiveState>, controls: Controls): number {
  const mps = waterDownMps(rig, controls);
  if (mps === 0) return 0;
  return 0.5 * waterAt(rig.column, depthM, water).densityKgPerM3 * dragAreaM2(rig, pitchSin) * Math.abs(mps) * mps;
}

function breathes(rig: Rig, { depthM, cylinderMol }: Readonly<DiveState>): boolean {
  return regulatorGives(supplyPa(rig, cylinderMol), waterAt(rig.column, depthM, water).pressurePa);
}

const water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };
const probe: Instant = {
  depthM: NaN,
  pitchCos: 1,
  pitchSin: 0,
  lungM3: NaN,
  lungMol: NaN,
  jacketMol: NaN,
  suitMol: NaN,
  loopMol: NaN,
  cylinderMol: [],
  releasedMask: 0,
};

/** One means made ready to be tried from any state of a rig under the same controls. */
export interface Attempt {
  readonly means: Means;
  readonly way: Way;
  readonly uses: Uses;
  readonly action: Action;
  readonly idle: Controls;
  readonly reactionTicks: number;
  readonly floor: Floor;
}

/** A means made ready. @param ask its floor for the way is the one that counts */
export function attemptOf(means: Means, way: Way, rig: Rig, controls: Controls, ask: StoppingAsk): Attempt {
  return {
    means,
    way,
    uses: usesOf(means, way, rig),
    action: actionOf(means, way, rig, controls, ask.lungs),
    idle: handsOff(controls),
    reactionTicks: Math.round((ask.reactionS * TICKS_PER_S) / CHANGE_TICKS) * CHANGE_TICKS,
    floor: way > 0 ? ask.below : ask.above,
  };
}

/**
 * Whether a means arrests the motion before the floor: no longer going the bad way, and in the middle of the breath, with
 * the thrust that lasts, no longer pulled that way. Where and when is the turning point.
 * @param s a state of the same rig to work in
 */
export function tryOut(rig: Rig, state: Readonly<DiveState>, attempt: Attempt, s: DiveState, steps: Steps): Stopping {
  const { means, way, action, idle, reactionTicks, floor } = attempt;
  const { fins, gas } = attempt.uses;
  overwriteState(s, state);
  let peakMps = Math.max(0, s.speedMps * way);
  let turnedM = s.speedMps * way <= 0 ? s.depthM : NaN;
  let turnedS = s.speedMps * way <= 0 ? 0 : NaN;
  const limitM = way > 0 ? floorDepthM(rig, idle, s.depthM, s.pitchSin) : HEAD_OUT_M;
  let gone = false;
  for (let ran = 0; ran < HORIZON_S * TICKS_PER_S;) {
    const acting = ran >= reactionTicks;
    const c = acting ? action(s) : idle;
    if (s.speedMps * way <= 0 && turnedS >= 0 && steadyNetN(rig, s, c, acting && fins) * way >= 0)
      return { means, stops: true, depthM: turnedM, timeS: turnedS, peakMps };
    const sinceS = (ran - reactionTicks) / TICKS_PER_S;
    const turning = s.pitchRateRadps !== 0 || (acting && fins && sinceS < SLOW_AFTER_S);
    gone ||= acting && !turning && !gas && isGone(rig, s, c, fins, way);
    // Close to the floor in short steps again: how fast he comes to it is to be seen.
    const far = gone && Math.abs(limitM - s.depthM) > NEAR_FLOOR_M;
    const longest = far ? steps.gone : turning ? steps.turning : sinceS > SLOW_AFTER_S ? steps.slow : steps.first;
    const ticks = acting ? longest : Math.min(longest, reactionTicks - ran);
    const before = s.depthM;
    const speed = s.speedMps;
    glide(rig, s, c, ticks, longest);
    ran += ticks;
    // Of a step that goes through the floor only the part before it counts.
    const reachedM = floor.kind === 'depth' ? floor.depthM : HEAD_OUT_M;
    const through = (s.depthM - reachedM) * way > 0 && (way < 0 || floor.kind === 'depth');
    const part = through ? ((reachedM - before) * way > 0 ? (reachedM - before) / (s.depthM - before) : 0) : 1;
    peakMps = Math.max(peakMps, (speed + part * (s.speedMps - speed)) * way);
    if (speed * way > 0 && s.speedMps * way <= 0) {
      const share = speed / (speed - s.speedMps);
      const lastedS = ticks / TICKS_PER_S;
      turnedS = (ran - ticks) / TICKS_PER_S + share * lastedS;
      turnedM = before + 0.5 * speed * share * lastedS;
    }
    if (isReached(s, floor, way)) break;
    if (floor.kind !== 'rate') continue;
    if (peakMps > floor.mps) break;
    if (s.depthM >= HEAD_OUT_M) continue;
    const timeS = (ran - ticks + part * ticks) / TICKS_PER_S;
    return { means, stops: true, depthM: Math.min(before, HEAD_OUT_M), timeS, peakMps };
  }
  return { means, stops: false, depthM: null, timeS: null, peakMps };
}

/** Whether a state is at the floor, or past it. */
function isReached(s: Readonly<DiveState>, floor: Floor, way: Way): boolean {
  if (way > 0) return s.resting !== 0 || (floor.kind === 'depth' && s.depthM >= floor.depthM);
  return floor.kind === 'head-out' && s.depthM < HEAD_OUT_M;
}

/**
 * Whether nothing can stop a diver any more, so that only how fast he comes to the floor is left to see: going the bad way,
 * pulled that way in every phase of the breath, with no gas on its way, in water of one density, where the pull only grows.
 */
function isGone(rig: Rig, s: Readonly<DiveState>, c: Controls, fins: boolean, way: Way): boolean {
  const plain = rig.column.segments.length === 1 && rig.drysuit === null && rig.loop === null;
  if (!plain || c.breath === 2 || s.speedMps * way <= 0 || s.depthM < TOP_UPRIGHT_M) return false;
  if (c.breath === 1 && Math.abs(s.lungM3 - c.lungCl * 1e-5) > 1e-5) return false;
  const { densityKgPerM3 } = rig.column.segments[0]!;
  const swingN = c.breath === 0 ? (rig.lungs.tidalM3 / 2) * densityKgPerM3 * rig.column.gravityMps2 : 0;
  return steadyNetN(rig, s, c, fins) * way + swingN < 0;
}

/** Depth of mid-chest, metres, at which the floor below is reached from a state: the ground under the body, or the depth given. */
export function groundM(rig: Rig, state: Readonly<DiveState>, controls: Controls, ask: StoppingAsk): number {
  const ground = floorDepthM(rig, controls, state.depthM, state.pitchSin);
  return ask.below.kind === 'depth' ? Math.min(ground, ask.below.depthM) : ground;
}
