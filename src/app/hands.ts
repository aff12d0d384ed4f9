import { jacketM3, type Rig } from '../diver/index.ts';
import {
  TICKS_PER_CHANGE,
  TICKS_PER_S,
  midBreathCl,
  pieceAtHand,
  restingControls,
  ventFor,
  type Controls,
  type DiveState,
} from '../dive/index.ts';
import type { Act } from '../panels/index.ts';
import { divePosture } from '../pilot/index.ts';
import { waterAt } from '../water/index.ts';

/** What the diver keeps doing between presses. */
export interface Hands {
  /** Middle of the breath, or the target of direct lungs, centilitres. */
  readonly levelCl: number;
  readonly breathing: 'automatic' | 'direct' | 'held';
  /** null: upright above a metre, level below. */
  readonly posture: 'head-up' | 'level' | 'head-down' | null;
  /** Attitude commanded last, degrees. */
  readonly pitchDeg: number;
  readonly releaseMask: number;
  /** Lead comes off (1) or goes back on (−1), one piece, at the next change of the hands. */
  readonly leadWay: 1 | 0 | -1;
  /** −1 leaves the drysuit's valve as the setup has it. */
  readonly valveHPa: number;
  readonly lineHeld: boolean;
  /** The vent is held until the jacket is empty, or gas is let in. */
  readonly ventsAll: boolean;
  /** For how long a kick has been held down, seconds. */
  readonly kickedS: number;
}

/** How fast a held button moves the level, centilitres a second, and direct lungs, as fast as air goes in. Practice. */
const LEVEL_CLPS = 60;
const DIRECT_CLPS = 150;
const NOTHING_HELD: ReadonlySet<Act> = new Set();
/** Attitudes, degrees: asked for by a press, and turned to for a kick. */
const POSTURE_DEG = { 'head-up': 45, level: 0, 'head-down': -45 } as const;
const KICK_DEG = 60;
/** Sine of pitch from which a turned diver kicks: 40°. */
const TURNED_SIN = 0.643;
/** Thrust of a kick, newtons: less than can be kept up; and of one that is held on, seconds: as hard as it goes. Practice. */
const KICK_N = 30;
const HARD_N = 100;
const HARD_AFTER_S = 1.5;
/** A drysuit's valve is turned by so much at a time, between these, hectopascals; and what counts as nothing left to vent, m³. Practice. */
const VALVE_STEP_HPA = 2;
const VALVE_MOST_HPA = 60;
const NOTHING_M3 = 5e-5;

/** Hands that do nothing, the breath about its middle. */
export function restingHands(rig: Rig, pitchDeg: number): Hands {
  return {
    levelCl: midBreathCl(rig),
    breathing: 'automatic',
    posture: null,
    pitchDeg,
    releaseMask: 0,
    leadWay: 0,
    valveHPa: -1,
    lineHeld: false,
    ventsAll: false,
    kickedS: 0,
  };
}

/** Hands that go on as a diver's controls say. */
export function handsOf(controls: Controls, before: Hands): Hands {
  const { lungCl, pitchDeg, releaseMask, suitValveHPa, holdLine, breath } = controls;
  return {
    ...before,
    levelCl: lungCl,
    breathing: (['automatic', 'direct', 'held'] as const)[breath] ?? 'automatic',
    posture: pitchDeg === 45 ? 'head-up' : pitchDeg === -45 ? 'head-down' : null,
    pitchDeg,
    releaseMask,
    valveHPa: suitValveHPa,
    lineHeld: holdLine === 1,
    ventsAll: false,
  };
}

/** Least and greatest level, centilitres: automatic breathing keeps half a breath on both sides. */
export function levelRange(rig: Rig, breathing: Hands['breathing']): readonly [least: number, most: number] {
  const { residualM3, totalM3, tidalM3 } = rig.lungs;
  const half = breathing === 'automatic' ? tidalM3 / 2 : 0;
  return [Math.ceil((residualM3 + half) * 1e5 - 1e-6), Math.floor((totalM3 - half) * 1e5 + 1e-6)];
}

/** What a press changes that stays: it happens once, when the press begins. */
export function pressed(hands: Hands, act: Act, rig: Rig): Hands {
  if (act === 'middle') return { ...hands, levelCl: midBreathCl(rig) };
  if (act === 'line') return { ...hands, lineHeld: rig.line && !hands.lineHeld };
  if (act === 'lead-off' || act === 'lead-on') return { ...hands, leadWay: act === 'lead-off' ? 1 : -1 };
  if (act === 'vent-all') return { ...hands, ventsAll: !hands.ventsAll };
  if (act === 'valve-open' || act === 'valve-shut') return turnedValve(hands, act === 'valve-open' ? -1 : 1, rig);
  if (act === 'lungs' && rig.lungs.open)
    return breathingAs(hands, hands.breathing === 'automatic' ? 'direct' : 'automatic', rig);
  // Held breath is never a step away from automatic breathing: who holds it has taken the lungs in hand before.
  if (act === 'hold' && hands.breathing !== 'automatic')
    return breathingAs(hands, hands.breathing === 'direct' ? 'held' : 'direct', rig);
  if (act === 'head-up' || act === 'level' || act === 'head-down')
    return { ...hands, posture: hands.posture === act ? null : act };
  return hands;
}

/** Opening pressure of the drysuit's valve now, hectopascals. */
export function valveHPa(hands: Hands, rig: Rig): number {
  return hands.valveHPa >= 0 ? hands.valveHPa : Math.round((rig.drysuit?.crackPa ?? 0) / 100);
}

function turnedValve(hands: Hands, way: 1 | -1, rig: Rig): Hands {
  if (!rig.drysuit) return hands;
  const hPa = valveHPa(hands, rig) + way * VALVE_STEP_HPA;
  return { ...hands, valveHPa: Math.min(Math.max(hPa, 0), VALVE_MOST_HPA) };
}

/** Whether venting would change nothing any more. */
export function jacketIsEmpty(rig: Rig, { depthM, jacketMol }: Readonly<DiveState>): boolean {
  const { pressurePa } = waterAt(rig.column, Math.max(depthM, 0), { densityKgPerM3: 0, pressurePa: 0 });
  return jacketM3(rig, jacketMol, pressurePa) <= rig.jacket.residualM3 + NOTHING_M3;
}

/** Another way of breathing; the level stays where the lungs can follow it. */
export function breathingAs(hands: Hands, breathing: Hands['breathing'], rig: Rig): Hands {
  const [least, most] = levelRange(rig, breathing);
  return { ...hands, breathing, levelCl: Math.min(Math.max(hands.levelCl, least), most) };
}

/** Lets one more piece of lead go, the first that is still worn, or all that can be. @param goneMask lead that is not worn */
export function released(hands: Hands, rig: Rig, all: boolean, goneMask = 0): Hands {
  let mask = hands.releaseMask;
  for (let i = 0; i < rig.lead.length; i++) {
    if (!rig.lead[i]!.releasable || ((mask | goneMask) & (1 << i)) !== 0) continue;
    mask |= 1 << i;
    if (!all) break;
  }
  return { ...hands, releaseMask: mask };
}

/** Pieces that can still be let go. @param goneMask lead that is not worn */
export function leadLeft(hands: Hands, rig: Rig, goneMask = 0): number {
  return rig.lead.filter(({ releasable }, i) => releasable && ((hands.releaseMask | goneMask) & (1 << i)) === 0).length;
}

/**
 * One change of the hands: moves what is being moved, and says what the diver does until the next twentieth of a second begins.
 * A kick turns the body first and thrusts once it is turned, as hard as it goes when it is held on; the vent is the one under which the gas lies.
 * @param ticks how many there are until then
 * @param before what was held when this twentieth was last looked ahead at: of that, the rest is taken back or added
 */
export function steer(
  hands: Hands,
  held: ReadonlySet<Act>,
  state: Readonly<DiveState>,
  rig: Rig,
  ticks: number = TICKS_PER_CHANGE,
  before = NOTHING_HELD,
): { readonly hands: Hands; readonly controls: Controls } {
  const [least, most] = levelRange(rig, hands.breathing);
  const clps = hands.breathing === 'direct' ? DIRECT_CLPS : LEVEL_CLPS;
  const way = wayOf(held) - wayOf(before);
  const levelCl = Math.min(Math.max(hands.levelCl + (way * clps * ticks) / TICKS_PER_S, least), most);
  const atRest = divePosture(state.depthM, hands.pitchDeg);
  const kick = held.has('kick-up') ? 1 : held.has('kick-down') ? -1 : 0;
  const wanted = hands.posture ? POSTURE_DEG[hands.posture] : atRest;
  const pitchDeg = kick > 0 ? Math.max(KICK_DEG, wanted) : kick < 0 ? -KICK_DEG : wanted;
  const kicks = before.has('kick-up') || before.has('kick-down');
  const kickedS = kick === 0 ? 0 : hands.kickedS + (kicks ? 0 : ticks / TICKS_PER_S);
  const turned = kick !== 0 && state.pitchSin * kick >= TURNED_SIN;
  const on = (act: Act) => (held.has(act) ? 1 : 0);
  const ventsAll = hands.ventsAll && !held.has('add') && !held.has('blow') && !jacketIsEmpty(rig, state);
  return {
    hands: { ...hands, levelCl, pitchDeg: kick === 0 ? wanted : hands.pitchDeg, kickedS, ventsAll, leadWay: 0 },
    controls: {
      ...restingControls(Math.round(levelCl)),
      breath: hands.breathing === 'automatic' ? 0 : hands.breathing === 'direct' ? 1 : 2,
      jacketAdd: on('add'),
      jacketVent: held.has('vent') || ventsAll ? ventFor(state.pitchSin) : 0,
      oral: on('blow'),
      suitAdd: rig.drysuit ? on('suit-add') : 0,
      suitVent: rig.drysuit ? on('suit-vent') : 0,
      suitValveHPa: hands.valveHPa,
      finsN: turned ? (kickedS > HARD_AFTER_S ? HARD_N : KICK_N) : 0,
      pitchDeg,
      releaseMask: hands.releaseMask,
      handLead: hands.leadWay && pieceAtHand(rig, state.releasedMask, hands.releaseMask, hands.leadWay),
      diluent: rig.loop ? on('diluent') : 0,
      noseVent: rig.loop ? on('nose-vent') : 0,
      holdLine: hands.lineHeld ? 1 : 0,
    },
  };
}

/** Which way held buttons move the breath. */
function wayOf(held: ReadonlySet<Act>): number {
  return (held.has('in') ? 1 : 0) - (held.has('out') ? 1 : 0);
}
