import { HEAD_OUT_M, instantOf, midBreathM3, netForceN, type Rig } from '../diver/index.ts';
import {
  TICKS_PER_ROW,
  TICKS_PER_S,
  advance,
  midBreathCl,
  restingControls,
  startState,
  type Controls,
  type DiveState,
} from '../dive/index.ts';
import {
  USUAL_ASK,
  USUAL_LUNGS,
  breathReachAt,
  steepnessAt,
  stopping,
  withMoreLead,
  type Way,
} from '../insight/index.ts';
import { neutralJacketM3 } from './carrying.ts';
import { rowsOf } from './rows.ts';

/* Where a diver goes, by flying the full model or by the looks ahead of the insight room. */

/** Sinking at 6 m/min, m/s, and one litre in centilitres. */
const SINKING_MPS = 0.1;
const LITRE_CL = 100;
/** Less pull than this is none, newtons: a tenth of a kilogram. Speeds closer than this share are the same. Practice. */
const NOTICED_N = 0.980665;
const SAME_SHARE = 0.02;
/** Longest that is waited for anything, seconds. */
const LONGEST_S = 60;

interface MomentWish {
  readonly depthM: number;
  /** Jacket gas more than neutral, m³. */
  readonly offM3?: number;
  readonly speedMps?: number;
  readonly pitchDeg?: number;
}

/** A diver at mid-breath, neutral or off it by some gas. */
function moment(rig: Rig, { depthM, offM3 = 0, speedMps = 0, pitchDeg = 0 }: MomentWish): DiveState {
  const lungs = rig.lungs.open ? { lungM3: midBreathM3(rig) } : {};
  const { residualM3, capacityM3 } = rig.jacket;
  const jacketM3 = Math.min(Math.max(neutralJacketM3(rig, depthM) + offM3, residualM3), capacityM3);
  return startState(rig, { depthM, jacketM3, speedMps, pitchDeg, ...lungs });
}

/** Lungs kept at mid-breath, or so much fuller, with the airway open. */
function atLungs(rig: Rig, moreCl = 0): Controls {
  return { ...restingControls(midBreathCl(rig) + moreCl), breath: 1 };
}

/**
 * How soon a breath of one litre more ends sinking at 6 m/min, and how much deeper: level, neutral at mid-breath before it, and no
 * further breath; a minute where it never does.
 */
export function breathStops(rig: Rig, depthM: number): { readonly afterS: number; readonly deeperM: number } {
  const state = moment(rig, { depthM, speedMps: SINKING_MPS });
  for (let ticks = 1; ticks <= LONGEST_S * TICKS_PER_S; ticks++) {
    advance(rig, state, atLungs(rig, LITRE_CL), 1);
    if (state.speedMps <= 0) return { afterS: ticks / TICKS_PER_S, deeperM: state.depthM - depthM };
  }
  return { afterS: LONGEST_S, deeperM: state.depthM - depthM };
}

/** What a breath of one litre more does to a neutral diver, by where he is ten seconds later. */
export function deepBreath(rig: Rig, depthM: number): string {
  const movedM = (moreCl: number) => breathLineM(rig, depthM, moreCl, 1)[1]!;
  const lowerM = movedM(LITRE_CL) - movedM(0);
  return Math.abs(lowerM) < 0.02 ? 'nothing' : lowerM < 0 ? 'up' : 'down';
}

/** How long a deeper breath is looked at, seconds. */
export const BREATH_S = 10;

/** The line of who breathes so much deeper and keeps it, a litre left out: depths at the ends of equal parts of ten seconds, metres. */
export function breathLineM(rig: Rig, depthM: number, moreCl = LITRE_CL, parts = 10): number[] {
  return lineM(rig, moment(rig, { depthM }), atLungs(rig, moreCl), BREATH_S, parts);
}

/** Depth after a while of a diver whose gas is right (or off) at a depth and who is moved from there, metres. */
export function driftM(rig: Rig, atM: number, byM: number, offM3: number, afterS: number): number {
  return driftLineM(rig, atM, byM, offM3, afterS, 1)[1]!;
}

/** His line: depths where he begins and at the ends of equal parts of the time, metres. */
export function driftLineM(rig: Rig, atM: number, byM: number, offM3: number, afterS: number, parts = 10): number[] {
  const { jacketMol } = moment(rig, { depthM: atM, offM3 });
  const moved = moment(rig, { depthM: Math.max(0, atM + byM) });
  moved.jacketMol = jacketMol;
  return lineM(rig, moved, atLungs(rig), afterS, parts);
}

/** Moves a state on, and notes its depth at the beginning and after each part. */
function lineM(rig: Rig, state: DiveState, controls: Controls, seconds: number, parts: number): number[] {
  const tickOf = (part: number) => Math.round((seconds * TICKS_PER_S * part) / parts);
  const depthsM = [state.depthM];
  for (let part = 1; part <= parts; part++) {
    advance(rig, state, controls, tickOf(part) - tickOf(part - 1));
    depthsM.push(state.depthM);
  }
  return depthsM;
}

/** Time in which a small offset doubles, neutral at mid-breath, seconds; an hour where it does not grow. */
export function doublingS(rig: Rig, depthM: number): number {
  return steepnessAt(rig, moment(rig, { depthM })).doublingS ?? 3600;
}

export function comesBack(rig: Rig, depthM: number): string {
  return steepnessAt(rig, moment(rig, { depthM })).kNPerM < 0 ? 'comes-back' : 'runs-away';
}

/** Item ids such as m10, the depth at which an offset grows fastest first. */
export function doublingOrder(rig: Rig, ids: readonly string[]): readonly string[] {
  const seconds = new Map(ids.map((id) => [id, doublingS(rig, Number(id.slice(1)))]));
  return [...ids].sort((a, b) => (seconds.get(a) ?? 0) - (seconds.get(b) ?? 0));
}

/** The gentlest of lungs, gas and everything that still stops a diver, a second to react. */
export function stillStops(rig: Rig, depthM: number, offM3: number, speedMps: number): string {
  const state = moment(rig, { depthM, offM3, speedMps });
  const { rows } = stopping(rig, state, restingControls(midBreathCl(rig)));
  const stops = (means: string) => rows.some((row) => row.means === means && row.stops);
  return stops('breath') ? 'breath' : stops('gas') ? 'gas' : stops('all') ? 'all' : 'too-late';
}

/** What gas alone comes to when the first press waits, a look ahead by the insight room. */
function gasAfter(rig: Rig, state: DiveState, reactionS: number, way: Way) {
  const { rows } = stopping(rig, state, restingControls(midBreathCl(rig)), { ...USUAL_ASK, reactionS }, way);
  return rows.find(({ means }) => means === 'gas');
}

/** Where gas stops who sinks from rest with the jacket empty, the first press after so long, metres; the bottom where it does not. */
export function stopsAtM(rig: Rig, depthM: number, afterS: number): number {
  const state = moment(rig, { depthM, offM3: -rig.jacket.capacityM3 });
  return gasAfter(rig, state, afterS, 1)?.depthM ?? rig.bottomM;
}

/** The latest whole second at which venting still ends under water. */
export function latestVentS(rig: Rig, depthM: number, offM3: number): number {
  const state = moment(rig, { depthM, offM3 });
  for (let seconds = 1; seconds <= LONGEST_S; seconds++)
    if (gasAfter(rig, state, seconds, -1)?.stops !== true) return seconds - 1;
  return LONGEST_S;
}

/** Fastest on the way up over 3 s, head under, when a neutral diver loses lead and does nothing, m/min. */
export function lostLeadMpmin(rig: Rig, depthM: number, kg: number): number {
  const { jacketMol } = moment(rig, { depthM });
  const lighter = withMoreLead(rig, -kg);
  const state = moment(lighter, { depthM });
  state.jacketMol = jacketMol;
  const depths = [depthM];
  let fastest = 0;
  for (let row = 1; row < rowsOf(LONGEST_S) && state.depthM > HEAD_OUT_M; row++) {
    advance(lighter, state, atLungs(lighter), TICKS_PER_ROW);
    depths.push(state.depthM);
    const from = Math.max(0, row - rowsOf(3));
    fastest = Math.max(fastest, ((depths[from] ?? depthM) - state.depthM) / ((row - from) / rowsOf(60)));
  }
  return fastest;
}

/** Deepest place from which full lungs alone come up, jacket empty, metres; the surface where there is none. */
export function breathReachesToM(rig: Rig): number {
  const at = instantOf(rig, { depthM: 3, jacketM3: rig.jacket.residualM3, lungM3: midBreathM3(rig) });
  return breathReachAt(rig, at, USUAL_LUNGS)?.[1] ?? 0;
}

/** Which attitude is pulled down more, so many kilograms heavy. */
export function postureForce(rig: Rig, depthM: number, kg: number): string {
  const heavy = withMoreLead(rig, kg);
  const netN = (pitchDeg: number) => {
    const { jacketMol } = moment(rig, { depthM });
    const state = moment(heavy, { depthM, pitchDeg });
    state.jacketMol = jacketMol;
    return netForceN(heavy, state);
  };
  const moreUprightN = netN(0) - netN(90);
  return Math.abs(moreUprightN) < NOTICED_N ? 'same' : moreUprightN > 0 ? 'upright' : 'level';
}

/** Which attitude sinks faster, so many kilograms heavy, after ten seconds from rest. */
export function postureSpeed(rig: Rig, depthM: number, kg: number): string {
  const heavy = withMoreLead(rig, kg);
  const speed = (pitchDeg: number) => {
    const state = moment(heavy, { depthM, pitchDeg });
    state.jacketMol = moment(rig, { depthM }).jacketMol;
    advance(heavy, state, { ...atLungs(heavy), pitchDeg }, 10 * TICKS_PER_S);
    return state.speedMps;
  };
  const [upright, level] = [speed(90), speed(0)];
  if (Math.abs(upright - level) < SAME_SHARE * Math.max(upright, level)) return 'same';
  return upright > level ? 'upright' : 'level';
}
