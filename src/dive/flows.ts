import { jacketM3, loopM3, type Rig } from '../diver/index.ts';
import { vesselPressurePa } from '../gas/index.ts';
import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import type { Controls } from './controls.ts';
import type { DiveState } from './state.ts';

/** Pressure over ambient at which the first stage feeds inflators, pascals. Practice. */
const FEED_PA = 9.5e5;
/** Pressure over ambient at or below which a regulator gives nothing, pascals. Practice. */
const DEAD_PA = 1e5;
/** Gas depth over which a jacket vent reaches its rated flow, metres, and the jacket's plan area, m². Practice. */
const VENT_HEAD_M = 0.25;
const JACKET_PLAN_M2 = 0.04;
/** Sine of pitch above which gas lies under the shoulder vent, and below which it lies under the rear vent. Practice. */
export const SHOULDER_ABOVE_SIN = 0.25;
export const REAR_BELOW_SIN = 0.5;
/** Free cross-section of a drysuit around the upright body, m²; level, the gas spreads ten times as wide. Practice. */
const SUIT_PLAN_M2 = 0.05;
const SUIT_LEVEL_SHARE = 0.1;
/** How far the exhaust valve lies below the highest gas: level, and how much less when upright, metres. Practice. */
const VALVE_LEVEL_M = 0.12;
const VALVE_UPRIGHT_GAIN_M = 0.07;

/** Molar rates of one moment, mol/s, all >= 0. */
export interface Flows {
  jacketIn: number;
  jacketOut: number;
  suitIn: number;
  suitOut: number;
  loopIn: number;
  loopOut: number;
}

/** Where a valve stands at one stage: what the stores hold, the water around, what feeds the inflators, the attitude. */
export interface ValveState {
  jacketMol: number;
  suitMol: number;
  loopMol: number;
  ambientPa: number;
  supplyPa: number;
  pitchSin: number;
}

/** All flows at rest. They begin as NaN for the same reason as a state's numbers: an engine that first sees 0 expects whole numbers. */
export function noFlows(): Flows {
  const flows = { jacketIn: NaN, jacketOut: NaN, suitIn: NaN, suitOut: NaN, loopIn: NaN, loopOut: NaN };
  stop(flows);
  return flows;
}

/** Sets all flows to rest. */
export function stop(flows: Flows): void {
  flows.jacketIn = flows.jacketOut = flows.suitIn = flows.suitOut = flows.loopIn = flows.loopOut = 0;
}

/** What the cylinders can give: the greatest pressure in any of them, pascals. */
export function supplyPa(rig: Rig, cylinderMol: readonly number[]): number {
  let most = 0;
  for (let i = 0; i < rig.vessels.length; i++)
    most = Math.max(most, vesselPressurePa(cylinderMol[i]!, rig.vessels[i]!.waterM3, rig.waterTemperatureK));
  return most;
}

/** Whether a regulator still gives gas at this ambient pressure. */
export function regulatorGives(supply: number, ambientPa: number): boolean {
  return supply > ambientPa + DEAD_PA;
}

/** Rate of the mouth when blowing into the jacket, m³/s at ambient: rated · √(p0/p). */
export function oralRateM3ps(rig: Rig, c: Controls, ambientPa: number): number {
  return c.oral === 1 && rig.lungs.open ? rig.jacket.oralM3ps * Math.sqrt(STANDARD_PRESSURE_PA / ambientPa) : 0;
}

/** The jacket vent under which the gas lies in this attitude: what a diver reaches for. 1 shoulder, 2 rear. */
export function ventFor(pitchSin: number): 1 | 2 {
  return pitchSin >= REAR_BELOW_SIN ? 1 : 2;
}

/** Whether any valve could pass gas on this tick; where none can, the step leaves the stores of jacket, suit and loop alone. */
export function flowsPossible(rig: Rig, s: DiveState, c: Controls, at: ValveState): boolean {
  if (anyValvePressed(c)) return true;
  if (rig.drysuit && suitExhaustPa(rig, c, s.suitMol, at.ambientPa, s.pitchSin) > 0) return true;
  return rig.loop !== null && loopM3(rig, s.loopMol, at.ambientPa) < rig.loop.minimumM3;
}

/** Whether the diver works any valve of jacket, suit or loop. */
export function anyValvePressed(c: Controls): boolean {
  return (c.jacketAdd | c.jacketVent | c.suitAdd | c.suitVent | c.diluent | c.noseVent) !== 0;
}

/**
 * Writes the molar rates of all valves for the stores given. Inflators are choked: the molar rate is proportional to the
 * feed pressure. Vents follow the square root of the gas column under them and of 1/p.
 */
export function writeFlows(rig: Rig, c: Controls, at: ValveState, out: Flows): void {
  const { ambientPa, pitchSin } = at;
  const feed = feedShare(at.supplyPa, ambientPa);
  const thin = Math.sqrt(STANDARD_PRESSURE_PA / ambientPa);
  const molPerM3 = ambientPa / rig.gasJPerMol;
  out.jacketIn = c.jacketAdd === 1 ? rig.jacket.inflatorMolps * feed : 0;
  out.jacketOut = 0;
  if (c.jacketVent !== 0) {
    const works = c.jacketVent === 1 ? pitchSin >= SHOULDER_ABOVE_SIN : pitchSin <= REAR_BELOW_SIN;
    const volume = jacketM3(rig, at.jacketMol, ambientPa);
    const head = Math.min(VENT_HEAD_M, volume / JACKET_PLAN_M2);
    if (works && volume > rig.jacket.residualM3)
      out.jacketOut = rig.jacket.ventM3ps * Math.sqrt(head / VENT_HEAD_M) * thin * molPerM3;
  }
  const suit = rig.drysuit;
  out.suitIn = suit && c.suitAdd === 1 ? suit.inletMolps * feed : 0;
  const overPa = suit ? suitExhaustPa(rig, c, at.suitMol, ambientPa, pitchSin) : 0;
  out.suitOut = suit && overPa > 0 ? suit.exhaustM3ps * Math.sqrt(overPa / 1000) * thin * molPerM3 : 0;
  const loop = rig.loop;
  out.loopIn = 0;
  out.loopOut = 0;
  if (loop) {
    const volume = loopM3(rig, at.loopMol, ambientPa);
    if (c.diluent === 1 || volume < loop.minimumM3) out.loopIn = loop.diluentMolps * feed;
    if (c.noseVent === 1 && volume > 0) out.loopOut = loop.noseVentM3ps * thin * molPerM3;
  }
}

/** Feed pressure of an inflator as a share of what it is at one standard atmosphere; 0 when the cylinders cannot feed it. */
export function feedShare(supply: number, ambientPa: number): number {
  if (!regulatorGives(supply, ambientPa)) return 0;
  return Math.min(FEED_PA + ambientPa, supply) / (FEED_PA + STANDARD_PRESSURE_PA);
}

/**
 * Takes moles from the cylinders in proportion to their pressure over ambient, never more than they hold.
 * @returns the moles that were taken
 */
export function drawMol(rig: Rig, cylinderMol: number[], wantedMol: number, ambientPa: number): number {
  const count = rig.vessels.length;
  if (count === 1) {
    const taken = Math.min(wantedMol, cylinderMol[0]!);
    cylinderMol[0]! -= taken;
    return taken;
  }
  let sum = 0;
  for (let i = 0; i < count; i++) sum += shareOf(rig, cylinderMol, i, ambientPa);
  if (!(sum > 0)) return 0;
  let total = 0;
  // The shares are measured on the contents at the start of the tick: taking from one does not move the others' pressure.
  for (let i = 0; i < count; i++) {
    const taken = Math.min((wantedMol * shareOf(rig, cylinderMol, i, ambientPa)) / sum, cylinderMol[i]!);
    cylinderMol[i]! -= taken;
    total += taken;
  }
  return total;
}

function shareOf(rig: Rig, cylinderMol: readonly number[], i: number, ambientPa: number): number {
  const over = vesselPressurePa(cylinderMol[i]!, rig.vessels[i]!.waterM3, rig.waterTemperatureK) - ambientPa;
  return over > DEAD_PA ? over : 0;
}

/**
 * Pressure over its crack at the drysuit's exhaust valve, pascals, at most 0 when shut: ρ g × height of the valve above the
 * gas's lowest point. The gas fills the high end; head-down it lies in the legs and nothing passes.
 */
export function suitExhaustPa(rig: Rig, c: Controls, suitMol: number, ambientPa: number, pitchSin: number): number {
  const suit = rig.drysuit;
  if (!suit || pitchSin < 0) return 0;
  const volume = (suitMol * rig.gasJPerMol) / ambientPa;
  if (volume <= suit.minimumM3) return 0;
  const gasDepthM = (Math.min(volume, suit.capacityM3) * Math.max(pitchSin, SUIT_LEVEL_SHARE)) / SUIT_PLAN_M2;
  // Who presses the valve lifts the elbow, and with it the valve to where the gas is highest.
  const belowTopM = c.suitVent === 1 ? 0 : VALVE_LEVEL_M - VALVE_UPRIGHT_GAIN_M * pitchSin;
  const valveM = gasDepthM - belowTopM;
  const crack = c.suitVent === 1 ? 0 : c.suitValveHPa >= 0 ? c.suitValveHPa * 100 : suit.crackPa;
  // A few centimetres of gas: the change of density along the dive does not show in what the valve feels.
  return rig.column.segments[0]!.densityKgPerM3 * rig.column.gravityMps2 * valveM - crack;
}

/**
 * Moves the gas of one step: each transfer is one number, never more than the store holds, taken here and added there.
 * @param sums weighted sums of the molar rates over the four stages
 * @param stepS length of the step, seconds
 */
export function applyFlows(rig: Rig, s: DiveState, sums: Flows, at: ValveState, stepS: number): void {
  const seconds = stepS / 6;
  const { ambientPa } = at;
  const { jacketIn, jacketOut, suitIn, suitOut, loopIn, loopOut } = sums;
  if (jacketIn > 0) s.jacketMol = fill(rig, s, s.jacketMol, jacketIn * seconds, ambientPa);
  if (jacketOut > 0) s.jacketMol = empty(rig, s, s.jacketMol, jacketOut * seconds, rig.jacket.residualM3, ambientPa);
  if (suitIn > 0) s.suitMol = fill(rig, s, s.suitMol, suitIn * seconds, ambientPa);
  if (suitOut > 0 && rig.drysuit)
    s.suitMol = empty(rig, s, s.suitMol, suitOut * seconds, rig.drysuit.minimumM3, ambientPa);
  if (loopIn > 0) s.loopMol = fill(rig, s, s.loopMol, loopIn * seconds, ambientPa);
  if (loopOut > 0) s.loopMol = empty(rig, s, s.loopMol, loopOut * seconds, 0, ambientPa);
}

/**
 * Lets out what no bag can hold: of the jacket what its relief valve passes, of drysuit and loop what exceeds their capacity.
 * @returns whether the jacket's relief valve passed gas
 */
export function overflow(rig: Rig, s: DiveState, at: ValveState): boolean {
  const { ambientPa } = at;
  const jacketLimit = ((ambientPa + rig.jacket.reliefPa) * rig.jacket.capacityM3) / rig.gasJPerMol;
  const relieved = s.jacketMol > jacketLimit;
  if (relieved) s.jacketMol = spill(rig, s, s.jacketMol, jacketLimit, ambientPa);
  if (rig.drysuit)
    s.suitMol = spill(rig, s, s.suitMol, (ambientPa * rig.drysuit.capacityM3) / rig.gasJPerMol, ambientPa);
  if (rig.loop) s.loopMol = spill(rig, s, s.loopMol, (ambientPa * rig.loop.capacityM3) / rig.gasJPerMol, ambientPa);
  return relieved;
}

/** What a store holds once all above its limit has left as bubbles, in moles. */
function spill(rig: Rig, s: DiveState, storeMol: number, limitMol: number, ambientPa: number): number {
  if (storeMol <= limitMol) return storeMol;
  s.bubbleMol += storeMol - limitMol;
  s.letOutM3 += ((storeMol - limitMol) * rig.gasJPerMol) / ambientPa;
  return limitMol;
}

function fill(rig: Rig, s: DiveState, storeMol: number, wantedMol: number, ambientPa: number): number {
  const taken = drawMol(rig, s.cylinderMol, wantedMol, ambientPa);
  s.letInM3 += (taken * rig.gasJPerMol) / ambientPa;
  return storeMol + taken;
}

function empty(
  rig: Rig,
  s: DiveState,
  storeMol: number,
  wantedMol: number,
  leastM3: number,
  ambientPa: number,
): number {
  const free = storeMol - (leastM3 * ambientPa) / rig.gasJPerMol;
  return free > 0 ? spill(rig, s, storeMol, storeMol - Math.min(wantedMol, free), ambientPa) : storeMol;
}
