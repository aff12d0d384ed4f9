import type { Rig } from '../diver/index.ts';
import {
  SUSTAINED_N,
  TICKS_PER_S,
  TICKS_PER_CHANGE as CHANGE_TICKS,
  addedShare,
  breatheAndKick,
  direction,
  dragAreaM2,
  floorDepthM,
  glide,
  overwriteState,
  type Controls,
  type DiveState,
} from '../dive/index.ts';
import type { Attempt } from './stopping.ts';

/** Time between two entries, ticks: half a step of the drift. */
export const ENTRY_TICKS = 12;
export const ENTRY_S = ENTRY_TICKS / TICKS_PER_S;
/** A body is recorded until it has settled and breathed twice, but never longer, seconds. */
const KNOWN_S = 40;
/** A body that has not come to rest in its attitude by then is taken as it is, seconds after the reaction. */
const TURNS_S = 12;
const ENTRIES = (KNOWN_S * TICKS_PER_S) / ENTRY_TICKS + 1;

/**
 * What a diver's body does while a means is tried: recorded once from the step's own laws, since lungs, fins and attitude hardly
 * depend on where he is. One entry each tenth of a second from now on; at its end it goes on as it was `again` entries before.
 */
export interface BodyAhead {
  readonly lungM3: Float64Array;
  readonly entries: number;
  /** Whole number of steps of two entries, one breath long; two where nothing swings. */
  readonly again: number;
  readonly pitchSin: Float64Array;
  /** Vertical thrust, upward, newtons, from each entry to the next: what is given, and of it what can be kept up. */
  readonly thrustUpN: Float64Array;
  readonly keptUpN: Float64Array;
  /** ½ CdA, m², and added mass as a share of displaced mass. */
  readonly halfDragM2: Float64Array;
  readonly addedShare: Float64Array;
  /** Depth of mid-chest at which the ground is touched, metres. */
  readonly groundM: Float64Array;
  /** From this entry on the diver acts, and from that one on nothing but an automatic breath changes any more. */
  readonly actsFrom: number;
  readonly settledFrom: number;
  /** Middle of the breath before and after he acts, m³, and half of its swing after, 0 where it does not swing. */
  readonly idleLungM3: number;
  readonly actingLungM3: number;
  readonly swingM3: number;
}

/** Records a body from a state on. @param s a state of the same rig to work in */
export function bodyAhead(rig: Rig, state: Readonly<DiveState>, attempt: Attempt, s: DiveState): BodyAhead {
  const { action, idle, reactionTicks } = attempt;
  overwriteState(s, state);
  const middleM = floorDepthM(rig, idle, state.depthM, state.pitchSin) / 2;
  stay(s, state, middleM);
  const table = (): Float64Array => new Float64Array(ENTRIES);
  const [lungM3, pitchSin, thrustUpN, keptUpN] = [table(), table(), table(), table()] as const;
  const [halfDragM2, added, groundM] = [table(), table(), table()] as const;
  const turnsUntil = reactionTicks + TURNS_S * TICKS_PER_S;
  const swings = rig.lungs.open && action(s).breath === 0;
  let settledFrom = ENTRIES - 1;
  let isSettled = false;
  let entries = 0;
  let again = 2;
  let breathFrom = 0;
  let wasIn = 0;
  for (let i = 0, ran = 0; i < ENTRIES; i++, ran += ENTRY_TICKS) {
    entries = i + 1;
    let c = ran >= reactionTicks ? action(s) : idle;
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
    if (isSettled) {
      const begins = s.breathIn === 1 && wasIn === 0;
      if (!swings ? i > settledFrom + 2 : begins && breathFrom > 0) {
        if (swings) again = Math.max(2, Math.round((i - breathFrom) / 2) * 2);
        break;
      }
      if (begins) breathFrom = i;
    }
    wasIn = isSettled ? s.breathIn : 1;
    if (turned) breatheAndKick(rig, s, c, ENTRY_TICKS);
    else
      for (let part = 0; part < ENTRY_TICKS; part += CHANGE_TICKS) {
        if (ran >= reactionTicks) c = action(s);
        glide(rig, s, c, CHANGE_TICKS, CHANGE_TICKS);
        stay(s, state, middleM);
      }
    const meanSin = (sin + s.pitchSin) / 2;
    thrustUpN[i] = s.thrustN * meanSin;
    keptUpN[i] = Math.min(Math.max(s.thrustN, -SUSTAINED_N), SUSTAINED_N) * meanSin;
  }
  const acting = action(state);
  return {
    lungM3,
    entries,
    again,
    pitchSin,
    thrustUpN,
    keptUpN,
    halfDragM2,
    addedShare: added,
    groundM,
    actsFrom: Math.ceil(reactionTicks / ENTRY_TICKS),
    settledFrom,
    idleLungM3: middleM3(rig, idle),
    actingLungM3: middleM3(rig, acting),
    swingM3: acting.breath === 0 && rig.lungs.open ? rig.lungs.tidalM3 / 2 : 0,
  };
}

/** Keeps a body at one depth with the gas it has: how it turns is wanted, not where it goes. */
function stay(s: DiveState, from: Readonly<DiveState>, depthM: number): void {
  s.depthM = depthM;
  s.speedMps = 0;
  s.jacketMol = from.jacketMol;
  s.suitMol = from.suitMol;
  s.loopMol = from.loopMol;
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
  return rig.lungs.open ? Math.min(Math.max(lungCl * 1e-5, rig.lungs.residualM3), rig.lungs.totalM3) : 0;
}
