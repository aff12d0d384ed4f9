import { HEAD_OUT_M, LUNG_VAPOUR_PA, TOP_UPRIGHT_M, emergedM3, foamM3, type Rig } from '../diver/index.ts';
import {
  boylePaM3,
  displacedKg,
  fallMps2,
  noFlows,
  waterDownMps,
  writeFlows,
  type DiveState,
  type Flows,
  type ValveState,
} from '../dive/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { ENTRY_S, ENTRY_TICKS, steadyLungM3, type BodyAhead } from './body-ahead.ts';
import { HORIZON_S, type Attempt } from './attempt.ts';

const water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };
const rate: Flows = noFlows();
const rateAfter: Flows = noFlows();
const valves: ValveState = { jacketMol: NaN, suitMol: NaN, loopMol: NaN, ambientPa: NaN, supplyPa: NaN, pitchSin: NaN };

/**
 * Whether a means arrests a diver from where a state is: the same question as `tryOut`, answered many times faster for one
 * state carried to many depths, since what the body does was recorded before. The water's part is the balance of the step,
 * by the midpoint rule in steps of a tenth of a second to a whole one. For lungs that do as they
 * are told, from a cylinder that gives enough.
 * @param state may be changed in its attitude, which the valves look at
 * @param leadless mass and volume of the solid parts once all lead that can go is gone
 * @param supplyPa what the cylinders give, taken as lasting
 */
export function drifts(
  rig: Rig,
  state: DiveState,
  attempt: Attempt,
  body: BodyAhead,
  leadless: { readonly solidKg: number; readonly solidM3: number },
  supplyPa: number,
): boolean {
  const { way, floor, uses } = attempt;
  const { column, foam, gasJPerMol: gasJ, kgPerMol, lungJPerMol, drysuit, loop } = rig;
  const waterMps = waterDownMps(rig, attempt.idle);
  // What the water pulls down with on who stands still in it is this by density and half the drag area.
  const pull = Math.abs(waterMps) * waterMps;
  const {
    lungM3,
    pitchSin,
    thrustUpN,
    keptUpN,
    halfDragM2,
    addedShare,
    groundM,
    actsFrom,
    settledFrom,
    heldFrom,
    breath,
  } = body;
  const { gravityMps2: g, surfacePressurePa } = column;
  const layered = column.segments.length > 1;
  const open = rig.lungs.open;
  const perLungJ = 1 / lungJPerMol;
  const boyle = boylePaM3(rig);
  const boyleFoam = foam.softness === 1;
  const jacketMostM3 = rig.jacket.capacityM3;
  const suitLeastM3 = drysuit ? drysuit.minimumM3 : 0;
  const suitMostM3 = drysuit ? drysuit.capacityM3 : 0;
  const loopMostM3 = loop ? loop.capacityM3 : 0;
  const flowing = uses.gas || drysuit !== null || loop !== null;
  const swings = body.swingM3 > 0;
  // Deeper, all gas shrinks; on the way up a drysuit's valve may yet open, and a loop is filled up.
  const mayBeGone = !layered && !uses.gas && !loop && (way > 0 || !drysuit) && floor.kind !== 'rate';
  const lowestM = floor.kind === 'depth' ? floor.depthM : Infinity;
  const fastestMps = floor.kind === 'rate' ? floor.mps : Infinity;

  let rho = column.segments[0]!.densityKgPerM3;
  const rhoG0 = rho * g;
  let z = state.depthM;
  let v = state.speedMps;
  let jacketMol = state.jacketMol;
  let suitMol = state.suitMol;
  let loopMol = state.loopMol;
  let lungMol = state.lungMol;
  let gasMol = lungMol + jacketMol + suitMol + loopMol;
  for (let i = 0; i < state.cylinderMol.length; i++) gasMol += state.cylinderMol[i]!;
  let solidKg = state.solidKg;
  let solidM3 = state.solidM3 + foam.solidM3;
  let hasTurned = v * way <= 0;
  let p = surfacePressurePa + rhoG0 * (z > 0 ? z : 0);
  if (layered) p = waterAt(column, z, water).pressurePa;

  let lungFrom = lungM3[0]!;
  for (let ranS = 0, k = 0, held = 0; ranS < HORIZON_S;) {
    let half = halfStep(flowing, loop !== null, k < body.turnedFrom, k < settledFrom, swings);
    // A step ends where he begins to act.
    if (k < actsFrom) half = Math.min(half, (actsFrom - k) / 2);
    const to = k + 2 * half;
    const before = k + Math.floor(half);
    const behind = k + Math.ceil(half);
    const stepS = 2 * half * ENTRY_S;
    const acting = k >= actsFrom;
    if (acting && uses.lead) {
      solidKg = leadless.solidKg;
      solidM3 = leadless.solidM3 + foam.solidM3;
    }
    const massKg = solidKg + gasMol * kgPerMol;
    const sin = pitchSin[k]!;

    // Flows of gas, at the mean of the rates with which the step begins and is thought to end.
    let jacketEnd = jacketMol;
    let suitEnd = suitMol;
    let loopEnd = loopMol;
    if (flowing) {
      const c = acting ? attempt.action(turned(state, sin)) : attempt.idle;
      const leastJacket = (rig.jacket.residualM3 * p) / gasJ;
      const leastSuit = (suitLeastM3 * p) / gasJ;
      valves.supplyPa = supplyPa;
      valves.pitchSin = sin;
      valves.ambientPa = p;
      valves.jacketMol = jacketMol;
      valves.suitMol = suitMol;
      valves.loopMol = loopMol;
      writeFlows(rig, c, valves, rate);
      valves.pitchSin = pitchSin[to]!;
      valves.ambientPa = Math.max(p + rhoG0 * v * stepS, surfacePressurePa);
      valves.jacketMol = after(jacketMol, rate.jacketIn, rate.jacketOut, leastJacket, stepS);
      valves.suitMol = after(suitMol, rate.suitIn, rate.suitOut, leastSuit, stepS);
      // What the nose lets out below the least volume the diluent valve gives back at once.
      const keeps = loop !== null && c.noseVent === 1 && c.diluent === 0;
      const leastLoop = keeps ? Math.min(loopMol, (loop.minimumM3 * p) / gasJ) : 0;
      valves.loopMol = after(loopMol, rate.loopIn, rate.loopOut, leastLoop, stepS);
      writeFlows(rig, c, valves, rateAfter);
      const jacketIn = 0.5 * (rate.jacketIn + rateAfter.jacketIn);
      const suitIn = 0.5 * (rate.suitIn + rateAfter.suitIn);
      const loopIn = keeps && leastLoop < loopMol ? 0 : 0.5 * (rate.loopIn + rateAfter.loopIn);
      jacketEnd = after(jacketMol, jacketIn, 0.5 * (rate.jacketOut + rateAfter.jacketOut), leastJacket, stepS);
      suitEnd = after(suitMol, suitIn, 0.5 * (rate.suitOut + rateAfter.suitOut), leastSuit, stepS);
      loopEnd = after(loopMol, loopIn, 0.5 * (rate.loopOut + rateAfter.loopOut), leastLoop, stepS);
      gasMol -= jacketMol + jacketIn * stepS - jacketEnd;
      gasMol -= suitMol + suitIn * stepS - suitEnd;
      gasMol -= loopMol + loopIn * stepS - loopEnd;
    }

    let lungMiddle = 0.5 * (lungM3[before]! + lungM3[behind]!);
    let lungTo = lungM3[to]!;
    if (breath && to > heldFrom) {
      lungTo = steadyLungM3(breath, (to - heldFrom + held) * ENTRY_TICKS);
      if (k + half > heldFrom) lungMiddle = steadyLungM3(breath, (k + half - heldFrom + held) * ENTRY_TICKS);
    }
    const upFrom = thrustUpN[k]!;
    const upTo = thrustUpN[to - 1]!;
    let speedMiddle = v;
    let fall = 0;
    for (let at = 0; at < 2; at++) {
      const from = at === 0 ? k : before;
      const until = at === 0 ? k : behind;
      const ahead = at * half * ENTRY_S;
      const depthM = z + ahead * v;
      speedMiddle = v + ahead * fall;
      let pressure = surfacePressurePa + rhoG0 * (depthM > 0 ? depthM : 0);
      if (layered) {
        waterAt(column, depthM, water);
        rho = water.densityKgPerM3;
        pressure = water.pressurePa;
      }
      const share = 0.5 * at;
      const perPa = 1 / pressure;
      let bagsM3 = Math.min((jacketMol + share * (jacketEnd - jacketMol)) * gasJ * perPa, jacketMostM3);
      if (drysuit)
        bagsM3 += Math.min(Math.max((suitMol + share * (suitEnd - suitMol)) * gasJ * perPa, suitLeastM3), suitMostM3);
      if (loop) bagsM3 += Math.min((loopMol + share * (loopEnd - loopMol)) * gasJ * perPa, loopMostM3);
      if (!boyleFoam) bagsM3 += foamM3(foam, pressure) - foam.solidM3;
      const bodyM3 = solidM3 + bagsM3 + boyle * perPa;
      const lungAt = at === 0 ? lungFrom : lungMiddle;
      const wholeM3 = bodyM3 + lungAt;
      const emerged =
        depthM < TOP_UPRIGHT_M ? Math.min(emergedM3(depthM, 0.5 * (pitchSin[from]! + pitchSin[until]!)), wholeM3) : 0;
      const displaced = displacedKg(rho, bodyM3, lungAt, 0, 0, emerged);

      if (at === 0) {
        const lasts = (rho * (bodyM3 + (acting ? body.actingLungM3 : body.idleLungM3) - emerged) - massKg) * g;
        const lastingN = (lasts + (acting && uses.fins ? keptUpN[k]! : 0) - rho * halfDragM2[k]! * pull) * way;
        if (hasTurned && v * way <= 0 && lastingN >= 0) return true;
        const settled = acting && k >= settledFrom && z > TOP_UPRIGHT_M;
        if (mayBeGone && settled && v * way > 0 && lastingN + body.swingM3 * rho * g < 0) return false;
      }

      const through = speedMiddle - waterMps;
      const up = at === 0 ? upFrom : 0.5 * (upFrom + upTo);
      const drag = rho * 0.5 * (halfDragM2[from]! + halfDragM2[until]!);
      fall = fallMps2(massKg, displaced, g, drag, 0.5 * (addedShare[from]! + addedShare[until]!), through, -up);
    }
    const speedBefore = v;
    z += stepS * speedMiddle;
    v += stepS * fall;

    p = surfacePressurePa + rhoG0 * (z > 0 ? z : 0);
    if (layered) p = waterAt(column, z, water).pressurePa;
    if (open) {
      // Breathing in moves gas from the cylinder; breathing out loses it.
      const inLungs = (p - LUNG_VAPOUR_PA) * lungTo * perLungJ;
      if (inLungs < lungMol) gasMol -= lungMol - inLungs;
      lungMol = inLungs;
    }
    jacketMol = Math.min(jacketEnd, ((p + rig.jacket.reliefPa) * jacketMostM3) / gasJ);
    gasMol -= jacketEnd - jacketMol;
    if (drysuit) {
      suitMol = Math.min(suitEnd, (p * suitMostM3) / gasJ);
      gasMol -= suitEnd - suitMol;
    }
    if (loop) {
      loopMol = Math.min(loopEnd, (p * loopMostM3) / gasJ);
      gasMol -= loopEnd - loopMol;
    }
    if (speedBefore * way > 0 && v * way <= 0) hasTurned = true;
    if (way > 0) {
      if (z >= groundM[to]! || z >= lowestM) return false;
    } else {
      // The ground holds who still sinks a little before he rises.
      if (z >= groundM[to]!) {
        z = groundM[to]!;
        v = Math.min(0, v);
      }
      if (-v > fastestMps) return false;
      if (z < HEAD_OUT_M) return floor.kind === 'rate';
    }
    ranS += stepS;
    k = Math.min(to, heldFrom);
    held += to - k;
    lungFrom = lungTo;
  }
  return false;
}

/**
 * Half of a step, entries: a tenth of a second in all while the body turns and gas flows, up to three tenths as long as anything
 * but the breath changes, six tenths while he breathes, a second once nothing changes any more. A loop's gas swings back and
 * forth with little else to hold it: it stays at a fifth of a second.
 */
function halfStep(flowing: boolean, loop: boolean, turns: boolean, unsettled: boolean, swings: boolean): number {
  if (flowing) return turns ? 1 : unsettled || loop ? 2 : 6;
  if (unsettled) return turns ? 2 : 3;
  return swings ? 6 : 10;
}

/** The state with another attitude, for a hand that looks for the right vent. */
function turned(state: DiveState, pitchSin: number): DiveState {
  state.pitchSin = pitchSin;
  return state;
}

/** What a store holds after a step: never drawn below what a valve leaves in it. */
function after(mol: number, inMolps: number, outMolps: number, leastMol: number, stepS: number): number {
  const filled = mol + inMolps * stepS;
  return outMolps > 0 ? Math.max(Math.min(filled, leastMol), filled - outMolps * stepS) : filled;
}
