import { TOP_UPRIGHT_M, instantOf, mouthClearM, netForceN, type Instant, type Rig } from '../diver/index.ts';
import { direction } from './attitude.ts';

/**
 * The whole state of a dive between two ticks: plain numbers, JSON-safe. The step changes it in place; what leaves the room
 * is a copy. Speeds are positive down, gas is in moles, attitude is a unit vector.
 */
export interface DiveState extends Instant {
  tick: number;
  speedMps: number;
  /** Thrust of the last tick along the body, newtons, as far as the diver could give it. */
  thrustN: number;
  pitchRateRadps: number;
  /** Gas that left as bubbles, and net gas breathed from the air above: so that all stores add up to the start. */
  bubbleMol: number;
  airMol: number;
  /** Ticks into the present phase of the automatic breath, its length, and 1 while it goes in. */
  breathTick: number;
  breathTicks: number;
  breathIn: number;
  /** Sums over the solid parts still worn; mass moments in kg m, volume moments in m⁴. */
  solidKg: number;
  solidM3: number;
  massHeadward: number;
  massBackward: number;
  volumeHeadward: number;
  volumeBackward: number;
  /** Seconds of thrust above the sustained limit that are left. */
  sprintS: number;
  /** 0 free, 1 on the bottom, 2 on the ledge. */
  resting: number;
  /** Conditions that last, one bit each (events.ts). */
  flags: number;
  /** Impulse of the fins' vertical component since the start, N s: upward, downward. */
  finsUpNs: number;
  finsDownNs: number;
  /** Gas let into and out of jacket, suit and loop since the start, as volume at the depth of the moment, m³. */
  letInM3: number;
  letOutM3: number;
  /** Net force at the start of the last tick as the step reckoned it, newtons, up positive: the sum of that moment's ledger. */
  netN: number;
  /** Tick up to which nothing slow can happen (calm.ts): a memo that never changes what comes out. */
  calmUntil: number;
}

/**
 * Every number of a state in the order in which runs store and hash it; what follows from them is left out. The gas in the cylinders
 * follows these.
 */
export const STATE_NAMES = [
  'tick',
  'depthM',
  'speedMps',
  'pitchCos',
  'pitchSin',
  'pitchRateRadps',
  'lungM3',
  'lungMol',
  'jacketMol',
  'suitMol',
  'loopMol',
  'bubbleMol',
  'airMol',
  'breathTick',
  'breathTicks',
  'breathIn',
  'thrustN',
  'sprintS',
  'resting',
  'flags',
  'releasedMask',
  'solidKg',
  'solidM3',
  'massHeadward',
  'massBackward',
  'volumeHeadward',
  'volumeBackward',
  'finsUpNs',
  'finsDownNs',
  'letInM3',
  'letOutM3',
] as const satisfies readonly (keyof DiveState)[];

/** How a dive begins; volumes at that depth, level and at rest unless said. */
export interface Start {
  readonly depthM: number;
  readonly lungM3?: number;
  readonly jacketM3?: number;
  readonly suitGasM3?: number;
  readonly cylinderBar?: number;
  readonly pitchDeg?: number;
  readonly speedMps?: number;
}

/**
 * The state at the start of a dive, at the beginning of a breath in.
 * @throws {RangeError} when the depth is not between −0.6 m and the bottom, or a pressure lies outside the real-gas fit
 */
export function startState(rig: Rig, start: Start): DiveState {
  if (!(start.depthM >= -0.6 && start.depthM <= rig.bottomM))
    throw new RangeError(
      `startState: depthM must lie between -0.6 and the bottom at ${rig.bottomM} m, got ${start.depthM}`,
    );
  const { pitchDeg = 0, speedMps = 0, depthM, ...volumes } = start;
  const facing = direction(pitchDeg);
  const breathOutM3 = rig.lungs.endExpiratoryM3;
  const instant = instantOf(rig, { ...volumes, depthM: Math.max(depthM, 0), lungM3: volumes.lungM3 ?? breathOutM3 });
  return Object.assign(blankState(), instant, solidSums(rig, 0), {
    depthM,
    pitchCos: facing.cos,
    pitchSin: facing.sin,
    speedMps,
  });
}

/**
 * A state of nothing, to be filled. Every field that can hold a fraction begins as NaN: an engine that first sees a whole
 * number keeps the field as one and must rebuild all that it compiled when the first fraction comes.
 */
function blankState(): DiveState {
  const state = {
    depthM: NaN,
    pitchCos: NaN,
    pitchSin: NaN,
    lungM3: NaN,
    lungMol: NaN,
    jacketMol: NaN,
    suitMol: NaN,
    loopMol: NaN,
    cylinderMol: [],
    releasedMask: 0,
    tick: 0,
    speedMps: NaN,
    thrustN: NaN,
    pitchRateRadps: NaN,
    bubbleMol: NaN,
    airMol: NaN,
    breathTick: 0,
    breathTicks: 0,
    breathIn: 0,
    solidKg: NaN,
    solidM3: NaN,
    massHeadward: NaN,
    massBackward: NaN,
    volumeHeadward: NaN,
    volumeBackward: NaN,
    sprintS: NaN,
    resting: 0,
    flags: 0,
    finsUpNs: NaN,
    finsDownNs: NaN,
    letInM3: NaN,
    letOutM3: NaN,
    netN: NaN,
    calmUntil: 0,
  };
  state.netN = state.thrustN = state.pitchRateRadps = state.bubbleMol = state.airMol = 0;
  state.finsUpNs = state.finsDownNs = state.letInM3 = state.letOutM3 = 0;
  state.sprintS = 5;
  return state;
}

/** Sums over the solid parts that are still worn when the lead of `releasedMask` is gone. */
export function solidSums(
  rig: Rig,
  releasedMask: number,
): Pick<DiveState, 'solidKg' | 'solidM3' | 'massHeadward' | 'massBackward' | 'volumeHeadward' | 'volumeBackward'> {
  const sums = { solidKg: 0, solidM3: 0, massHeadward: 0, massBackward: 0, volumeHeadward: 0, volumeBackward: 0 };
  const worn = [...rig.solids, ...rig.lead.filter((_, i) => (releasedMask & (1 << i)) === 0)];
  for (const { massKg, volumeM3, headwardM, backwardM } of worn) {
    sums.solidKg += massKg;
    sums.solidM3 += volumeM3;
    sums.massHeadward += massKg * headwardM;
    sums.massBackward += massKg * backwardM;
    sums.volumeHeadward += volumeM3 * headwardM;
    sums.volumeBackward += volumeM3 * backwardM;
  }
  return sums;
}

/** A copy that shares nothing with the state. */
export function copyState(state: DiveState): DiveState {
  const copy = blankState();
  copy.cylinderMol = [...state.cylinderMol];
  overwriteState(copy, state);
  return copy;
}

/** Puts the numbers of one state into another of the same rig without allocating, so that a forecast can start from now. */
export function overwriteState(into: DiveState, from: DiveState): void {
  for (const name of STATE_NAMES) into[name] = from[name];
  into.netN = from.netN;
  into.calmUntil = from.calmUntil;
  for (let i = 0; i < from.cylinderMol.length; i++) into.cylinderMol[i] = from.cylinderMol[i]!;
}

/** The state of stored numbers: those of STATE_NAMES, then the cylinders. The reverse of {@link stateNumbers}. */
export function stateOf(numbers: readonly number[]): DiveState {
  const state = blankState();
  STATE_NAMES.forEach((name, i) => (state[name] = numbers[i]!));
  state.cylinderMol = numbers.slice(STATE_NAMES.length);
  return state;
}

/** All numbers of a state in stored order. */
export function stateNumbers(state: DiveState): number[] {
  return [...STATE_NAMES.map((name) => state[name]), ...state.cylinderMol];
}

/** All gas there is, moles: stores, bubbles, and what came from or went to the air. It never changes in a run. */
export function totalMol(state: DiveState): number {
  let sum = state.lungMol + state.jacketMol + state.suitMol + state.loopMol + state.bubbleMol + state.airMol;
  for (const mol of state.cylinderMol) sum += mol;
  return sum;
}

/**
 * Depth at which the diver of a rig floats upright at rest with so much gas in the jacket, lungs at mid-breath, metres: the
 * root of the net force. A diver who sinks anyway gets the depth at which the head is just covered.
 */
export function floatingDepthM(rig: Rig, jacketM3: number): number {
  let high = -0.6;
  let low = TOP_UPRIGHT_M;
  for (let i = 0; i < 60; i++) {
    const middle = (high + low) / 2;
    const instant = instantOf(rig, { depthM: Math.max(middle, 0), jacketM3 });
    if (netForceN(rig, { ...instant, depthM: middle, pitchCos: 0, pitchSin: 1 }) < 0) high = middle;
    else low = middle;
  }
  return low;
}

/** Whether the mouth is above the water. */
export function mouthIsClear(state: Instant): boolean {
  return state.depthM < mouthClearM(state.pitchSin, state.pitchCos);
}
