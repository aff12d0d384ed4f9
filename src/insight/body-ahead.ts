import type { Rig } from '../diver/index.ts';
import {
  SUSTAINED_N,
  TICKS_PER_S,
  addedShare,
  breatheAndKick,
  direction,
  dragAreaM2,
  floorDepthM,
  glide,
  overwriteState,
  phaseTicks,
  type Controls,
  type DiveState,
} from '../dive/index.ts';
import type { Attempt } from './attempt.ts';
import { heldBy } from './means.ts';

/** Time between two entries, ticks: hands may change at each. */
export const ENTRY_TICKS = 6;
/** The same in seconds. */
export const ENTRY_S = ENTRY_TICKS / TICKS_PER_S;
/** A body is recorded until it has settled and begun a breath, but never longer, seconds. */
const KNOWN_S = 40;
/** A body that has not come to rest in its attitude by then is taken as it is, seconds after the reaction. */
const TURNS_S = 12;
/** Where bodies are recorded, as shares of the depth there is: how they turn depends a little on how far their gas is compressed. */
const TURNS_DEEP = 0.85;
const TURNS_SHALLOW = 0.35;
const ENTRIES = (KNOWN_S * TICKS_PER_S) / ENTRY_TICKS + 1;
/** Entries that are there beyond the last, so that the longest step from it finds what it needs. */
export const HELD_ENTRIES = 20;

/**
 * What a diver's body does while a means is tried: recorded once from the step's own laws, since lungs, fins and attitude hardly
 * depend on where he is. One entry each twentieth of a second from now on; from `heldFrom` on all stays but the breath.
 */
export interface BodyAhead {
  readonly lungM3: Float64Array;
  readonly pitchSin: Float64Array;
  /** Vertical thrust, upward, newtons, from each entry to the next: what is given, and of it what can be kept up. */
  readonly thrustUpN: Float64Array;
  readonly keptUpN: Float64Array;
  /** ½ CdA, m², and added mass as a share of displaced mass. */
  readonly halfDragM2: Float64Array;
  readonly addedShare: Float64Array;
  /** Depth of mid-chest at which the ground is touched, metres. */
  readonly groundM: Float64Array;
  /** From these entries on the diver acts, the body no longer turns, and nothing but an automatic breath changes any more. */
  readonly actsFrom: number;
  readonly turnedFrom: number;
  readonly settledFrom: number;
  readonly heldFrom: number;
  /** The automatic breath from there on: null where lungs stay. */
  readonly breath: SteadyBreath | null;
  /** Middle of the breath before and after he acts, m³, and half of its swing after, 0 where it does not swing. */
  readonly idleLungM3: number;
  readonly actingLungM3: number;
  readonly swingM3: number;
}

/** An automatic breath that goes on unchanged: volumes in m³, times in ticks. */
export interface SteadyBreath {
  readonly lowM3: number;
  readonly tidalM3: number;
  readonly inTicks: number;
  readonly outTicks: number;
  /** How far into the breath in it is when it begins to count. */
  readonly atTick: number;
}

/** Lungs of a steady breath some ticks after it began to count, m³. */
export function steadyLungM3(breath: SteadyBreath, ticks: number): number {
  const { inTicks, outTicks } = breath;
  const at = breath.atTick + ticks;
  // The remainder of fractions is slower than floor.
  const into = at - (inTicks + outTicks) * Math.floor(at / (inTicks + outTicks));
  const u = into < inTicks ? into / inTicks : 1 - (into - inTicks) / outTicks;
  return breath.lowM3 + breath.tidalM3 * u * u * (3 - 2 * u);
}

/** Records a body from a state on. @param s a state of the same rig to work in */
export function bodyAhead(rig: Rig, state: Readonly<DiveState>, attempt: Attempt, s: DiveState): BodyAhead {
  const { action, idle, reactionTicks } = attempt;
  overwriteState(s, state);
  const share = attempt.way > 0 ? TURNS_DEEP : TURNS_SHALLOW;
  const turnsAtM = floorDepthM(rig, idle, state.depthM, state.pitchSin) * share;
  stay(s, turnsAtM);
  const table = (): Float64Array => new Float64Array(ENTRIES + HELD_ENTRIES);
  const [lungM3, pitchSin, thrustUpN, keptUpN] = [table(), table(), table(), table()] as const;
  const [halfDragM2, added, groundM] = [table(), table(), table()] as const;
  const turnsUntil = reactionTicks + TURNS_S * TICKS_PER_S;
  const swings = rig.lungs.open && action(s).breath === 0;
  let settledFrom = ENTRIES - 1;
  let turnedFrom = 0;
  let isSettled = false;
  let heldFrom = ENTRIES - 1;
  let breath: SteadyBreath | null = null;
  let wasIn = 1;
  for (let i = 0, ran = 0; i < ENTRIES; i++, ran += ENTRY_TICKS) {
    const c = ran >= reactionTicks ? action(s) : idle;
    const sin = s.pitchSin;
    lungM3[i] = s.lungM3;
    pitchSin[i] = sin;
    halfDragM2[i] = 0.5 * dragAreaM2(rig, sin);
    added[i] = addedShare(rig, sin);
    groundM[i] = floorDepthM(rig, c, state.depthM, sin);
    const turned = ran > turnsUntil || isTurned(s, c);
    if (!isSettled && ran >= reactionTicks && turned && isSpent(rig, s, c)) {
      isSettled = true;
      settledFrom = i;
    }
    if (isSettled && (!swings || (s.breathIn === 1 && wasIn === 0))) {
      heldFrom = i;
      if (swings) breath = breathOf(rig, s, c);
      break;
    }
    if (isSettled) wasIn = s.breathIn;
    if (turned) breatheAndKick(rig, s, c, ENTRY_TICKS);
    else {
      glide(rig, s, c, ENTRY_TICKS, ENTRY_TICKS);
      stay(s, turnsAtM);
      turnedFrom = i + 1;
    }
    const meanSin = (sin + s.pitchSin) / 2;
    thrustUpN[i] = s.thrustN * meanSin;
    keptUpN[i] = Math.min(Math.max(s.thrustN, -SUSTAINED_N), SUSTAINED_N) * meanSin;
  }
  thrustUpN[heldFrom] = thrustUpN[Math.max(0, heldFrom - 1)]!;
  keptUpN[heldFrom] = keptUpN[Math.max(0, heldFrom - 1)]!;
  for (const entries of [lungM3, pitchSin, thrustUpN, keptUpN, halfDragM2, added, groundM])
    entries.fill(entries[heldFrom]!, heldFrom + 1, heldFrom + 1 + HELD_ENTRIES);
  const acting = action(state);
  return {
    lungM3,
    pitchSin,
    thrustUpN,
    keptUpN,
    halfDragM2,
    addedShare: added,
    groundM,
    actsFrom: Math.ceil(reactionTicks / ENTRY_TICKS),
    turnedFrom,
    settledFrom,
    heldFrom,
    breath,
    idleLungM3: middleM3(rig, idle),
    actingLungM3: middleM3(rig, acting),
    swingM3: acting.breath === 0 && rig.lungs.open ? rig.lungs.tidalM3 / 2 : 0,
  };
}

/** The breath that is being taken, as it goes on. */
function breathOf(rig: Rig, s: Readonly<DiveState>, c: Controls): SteadyBreath {
  const { tidalM3 } = rig.lungs;
  return {
    lowM3: c.lungCl * 1e-5 - tidalM3 / 2,
    tidalM3,
    inTicks: s.breathTicks,
    outTicks: phaseTicks(rig, s.thrustN, 0),
    atTick: s.breathTick,
  };
}

/** Keeps a body at one depth: how it turns is wanted, not where it goes. */
function stay(s: DiveState, depthM: number): void {
  s.depthM = depthM;
  s.speedMps = 0;
  s.resting = 0;
}

/** Whether the body rests in the attitude that is commanded. */
function isTurned(s: Readonly<DiveState>, c: Controls): boolean {
  const target = direction(c.pitchDeg);
  return c.attitude === 0 && s.pitchRateRadps === 0 && s.pitchCos === target.cos && s.pitchSin === target.sin;
}

/** Whether lungs are where they are told to be and no sprint is left that is still being used. */
function isSpent(rig: Rig, s: Readonly<DiveState>, c: Controls): boolean {
  const there = c.breath !== 1 || !rig.lungs.open || Math.abs(s.lungM3 - c.lungCl * 1e-5) < 1e-9;
  return there && (Math.abs(c.finsN) <= SUSTAINED_N || s.sprintS === 0);
}

function middleM3(rig: Rig, { lungCl }: Controls): number {
  return rig.lungs.open ? heldBy(rig, lungCl * 1e-5) : 0;
}
