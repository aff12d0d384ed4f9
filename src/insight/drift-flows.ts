import type { Rig } from '../diver/index.ts';
import { noFlows, writeFlows, type Controls, type Flows, type ValveState } from '../dive/index.ts';

const rate: Flows = noFlows();
const rateAfter: Flows = noFlows();
const valves: ValveState = { jacketMol: NaN, suitMol: NaN, loopMol: NaN, ambientPa: NaN, supplyPa: NaN, pitchSin: NaN };

/** Gas of one who drifts as a step begins, moles, what it is as the step ends, and what was lost meanwhile. */
export interface Flown {
  jacketMol: number;
  suitMol: number;
  loopMol: number;
  jacketEnd: number;
  suitEnd: number;
  loopEnd: number;
  lostMol: number;
}

/** Where a step begins and is thought to end: ambient pressure and sine of the attitude; and how long it takes. */
export interface Stretch {
  fromPa: number;
  toPa: number;
  fromSin: number;
  toSin: number;
  seconds: number;
}

/** Writes the ends of a step: flows of gas at the mean of the rates with which it begins and is thought to end. */
export function writeFlown(
  rig: Rig,
  c: Controls,
  { fromPa, toPa, fromSin, toSin, seconds }: Stretch,
  supplyPa: number,
  gas: Flown,
): void {
  const { jacketMol, suitMol, loopMol } = gas;
  const { drysuit, loop, gasJPerMol: gasJ } = rig;
  const leastJacket = (rig.jacket.residualM3 * fromPa) / gasJ;
  const leastSuit = ((drysuit ? drysuit.minimumM3 : 0) * fromPa) / gasJ;
  valves.supplyPa = supplyPa;
  valves.pitchSin = fromSin;
  valves.ambientPa = fromPa;
  valves.jacketMol = jacketMol;
  valves.suitMol = suitMol;
  valves.loopMol = loopMol;
  writeFlows(rig, c, valves, rate);
  valves.pitchSin = toSin;
  valves.ambientPa = toPa;
  valves.jacketMol = after(jacketMol, rate.jacketIn, rate.jacketOut, leastJacket, seconds);
  valves.suitMol = after(suitMol, rate.suitIn, rate.suitOut, leastSuit, seconds);
  // What the nose lets out below the least volume the diluent valve gives back at once.
  const keeps = loop !== null && c.noseVent === 1 && c.diluent === 0;
  const leastLoop = keeps ? Math.min(loopMol, (loop.minimumM3 * fromPa) / gasJ) : 0;
  valves.loopMol = after(loopMol, rate.loopIn, rate.loopOut, leastLoop, seconds);
  writeFlows(rig, c, valves, rateAfter);
  const jacketIn = 0.5 * (rate.jacketIn + rateAfter.jacketIn);
  const suitIn = 0.5 * (rate.suitIn + rateAfter.suitIn);
  const loopIn = keeps && leastLoop < loopMol ? 0 : 0.5 * (rate.loopIn + rateAfter.loopIn);
  gas.jacketEnd = after(jacketMol, jacketIn, 0.5 * (rate.jacketOut + rateAfter.jacketOut), leastJacket, seconds);
  gas.suitEnd = after(suitMol, suitIn, 0.5 * (rate.suitOut + rateAfter.suitOut), leastSuit, seconds);
  gas.loopEnd = after(loopMol, loopIn, 0.5 * (rate.loopOut + rateAfter.loopOut), leastLoop, seconds);
  gas.lostMol =
    jacketMol +
    jacketIn * seconds -
    gas.jacketEnd +
    (suitMol + suitIn * seconds - gas.suitEnd) +
    (loopMol + loopIn * seconds - gas.loopEnd);
}

/** What a store holds after a step: never drawn below what a valve leaves in it. */
function after(mol: number, inMolps: number, outMolps: number, leastMol: number, stepS: number): number {
  const filled = mol + inMolps * stepS;
  return outMolps > 0 ? Math.max(Math.min(filled, leastMol), filled - outMolps * stepS) : filled;
}
