import {
  HEAD_OUT_M,
  LUNG_VAPOUR_PA,
  TOP_UPRIGHT_M,
  emergedM3,
  foamM3,
  gutM3,
  mouthClearM,
  type Rig,
} from '../diver/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { contact, floorDepthM, lastingFlags, logTurns } from './aftermath.ts';
import type { Direction } from './attitude.ts';
import {
  addedShare,
  boylePaM3,
  displacedKg,
  disturbedN,
  dragAreaM2,
  fallMps2,
  isDisturbed,
  waterDownMps,
} from './balance.ts';
import { planBreath, settleLungs, type BreathPlan } from './breath.ts';
import { STEP_S, type Controls } from './controls.ts';
import { FLAG, type DiveEvent } from './events.ts';
import { kick } from './fins.ts';
import {
  applyFlows,
  flowsPossible,
  noFlows,
  oralRateM3ps,
  overflow,
  regulatorGives,
  stop,
  supplyPa,
  writeFlows,
  type Flows,
  type ValveState,
} from './flows.ts';
import type { DiveState } from './state.ts';
import { canHold, emptyLever, settleAttitude, writeMoment, writeTurn, type Lever } from './turn.ts';

/** Damping of heave while the surface is pierced, N s/m, full once half a litre is out. Practice. */
const HEAVE_NSPM = 80;
const HEAVE_FULL_M3 = 0.5e-3;
/** The hand on the up-line: greatest force, newtons, and the time in which it takes the speed away, seconds. Practice. */
const LINE_N = 200;
const LINE_S = 0.2;

const plan: BreathPlan = { oralM3ps: NaN, middleM3: NaN, endM3: NaN };
const water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };
const rate: Flows = noFlows();
const sums: Flows = noFlows();
const lever: Lever = emptyLever();
const valves: ValveState = { jacketMol: NaN, suitMol: NaN, loopMol: NaN, ambientPa: NaN, supplyPa: NaN, pitchSin: NaN };

/**
 * One step with everything that can happen in it: a tick in a dive, several where somebody looks ahead. The balance of forces
 * stands here on flat numbers, because that is what makes it fast; the force ledger is the same balance in words, and a test
 * holds the two to 1e-9 N.
 */
export function fullTick(
  rig: Rig,
  s: DiveState,
  c: Controls,
  target: Direction,
  events: DiveEvent[] | undefined,
  locked: boolean,
  ticks: number,
): void {
  const { column, gasJPerMol, lungJPerMol, kgPerMol, foam, drysuit } = rig;
  const { open: openCircuit, residualM3: lungLeastM3, totalM3: lungMostM3 } = rig.lungs;
  const { gravityMps2: g, surfacePressurePa } = column;
  const layered = column.segments.length > 1;
  const rho0 = column.segments[0]!.densityKgPerM3;
  const rhoG0 = rho0 * g;
  const perLungJ = 1 / lungJPerMol;
  const boyle = boylePaM3(rig);
  const boyleFoam = foam.softness === 1;
  const jacketMostM3 = rig.jacket.capacityM3;
  const suitLeastM3 = drysuit ? drysuit.minimumM3 : 0;
  const suitMostM3 = drysuit ? drysuit.capacityM3 : 0;
  const loopMostM3 = rig.loop ? rig.loop.capacityM3 : 0;
  const held = openCircuit && c.breath === 2;
  const onLine = rig.line && c.holdLine === 1;
  const waterMps = waterDownMps(rig, c);
  const disturbed = isDisturbed(c);
  const h = STEP_S * ticks;
  const sixth = h / 6;
  s.calmUntil = 0;

  const z0 = s.depthM;
  const v0 = s.speedMps;
  const cos0 = s.pitchCos;
  const sin0 = s.pitchSin;
  const q0 = s.pitchRateRadps;
  const jacket0 = s.jacketMol;
  const suit0 = s.suitMol;
  const loop0 = s.loopMol;
  const lung0 = s.lungMol;

  // What holds for the whole tick: fins, the plan of the breath, who supplies, which valves could pass gas.
  kick(s, c, h);
  const thrustN = s.thrustN;
  let p0 = surfacePressurePa + rhoG0 * (z0 > 0 ? z0 : 0);
  if (layered) p0 = waterAt(column, z0, water).pressurePa;
  const inAir = z0 < HEAD_OUT_M && z0 < mouthClearM(sin0, cos0);
  valves.supplyPa = supplyPa(rig, s.cylinderMol);
  const gives = regulatorGives(valves.supplyPa, p0);
  const closed = held || (openCircuit && !inAir && !gives);
  plan.oralM3ps = c.oral === 1 && !held ? oralRateM3ps(rig, c, p0) : 0;
  const blowing = plan.oralM3ps > 0;
  let lungStart = openCircuit ? s.lungM3 : 0;
  let lungMiddle = 0;
  let lungEnd = 0;
  if (held) lungStart = lungMiddle = lungEnd = plan.endM3 = lungMostM3;
  else if (openCircuit) {
    planBreath(rig, s, c, plan, ticks);
    lungMiddle = plan.middleM3;
    lungEnd = plan.endM3;
  }
  valves.ambientPa = p0;
  const flowing = flowsPossible(rig, s, c, valves);
  if (flowing) {
    stop(sums);
    stop(rate);
  }
  let cylindersMol = 0;
  for (let i = 0; i < s.cylinderMol.length; i++) cylindersMol += s.cylinderMol[i]!;
  const gas0Kg = s.solidKg + (cylindersMol + lung0 + (jacket0 + suit0 + loop0)) * kgPerMol;
  const solidM3 = s.solidM3 + foam.solidM3;
  let turning = !locked;
  let drag = 0.5 * rho0 * dragAreaM2(rig, sin0);
  let added = addedShare(rig, sin0);

  // The four stages.
  let dz = 0;
  let dv = 0;
  let dCos = 0;
  let dSin = 0;
  let dq = 0;
  let sumZ = 0;
  let sumV = 0;
  let sumCos = 0;
  let sumSin = 0;
  let sumQ = 0;
  let cos = cos0;
  let sin = sin0;
  for (let stage = 0; stage < 4; stage++) {
    const ahead = stage === 0 ? 0 : stage === 3 ? h : 0.5 * h;
    const weight = stage === 0 || stage === 3 ? 1 : 2;
    const z = z0 + ahead * dz;
    const v = v0 + ahead * dv;
    let q = q0;
    if (turning) {
      cos = cos0 + ahead * dCos;
      sin = sin0 + ahead * dSin;
      q = q0 + ahead * dq;
    }
    let rho = rho0;
    let p = surfacePressurePa + rhoG0 * (z > 0 ? z : 0);
    if (layered) {
      waterAt(column, z, water);
      rho = water.densityKgPerM3;
      p = water.pressurePa;
    }
    const perPa = 1 / p;

    let jacketMol = jacket0;
    let suitMol = suit0;
    let loopMol = loop0;
    let leftMol = 0;
    if (flowing) {
      jacketMol = Math.max(0, jacket0 + ahead * (rate.jacketIn - rate.jacketOut));
      suitMol = Math.max(0, suit0 + ahead * (rate.suitIn - rate.suitOut));
      loopMol = Math.max(0, loop0 + ahead * (rate.loopIn - rate.loopOut));
      leftMol = ahead * (rate.jacketOut + rate.suitOut + rate.loopOut);
      valves.jacketMol = jacketMol;
      valves.suitMol = suitMol;
      valves.loopMol = loopMol;
      valves.ambientPa = p;
      valves.pitchSin = sin;
      writeFlows(rig, c, valves, rate);
      sums.jacketIn += weight * rate.jacketIn;
      sums.jacketOut += weight * rate.jacketOut;
      sums.suitIn += weight * rate.suitIn;
      sums.suitOut += weight * rate.suitOut;
      sums.loopIn += weight * rate.loopIn;
      sums.loopOut += weight * rate.loopOut;
    }

    // Lungs: the plan where the airway is open; trapped gas follows Boyle within what the chest can hold.
    let lungM3 = stage === 0 ? lungStart : stage === 3 ? lungEnd : lungMiddle;
    if (openCircuit) {
      const dryPa = p - LUNG_VAPOUR_PA;
      if (closed) lungM3 = Math.max(lungLeastM3, Math.min((lung0 * lungJPerMol) / dryPa, lungM3));
      const mol = held ? lung0 : dryPa * lungM3 * perLungJ;
      // Breathing in moves gas from cylinder to lungs and changes no weight; breathing out loses it; air above is free.
      if (blowing && lung0 > mol) jacketMol += lung0 - mol;
      else if (inAir) leftMol += lung0 - mol;
      else leftMol += lung0 > mol ? lung0 - mol : 0;
    }

    // Displacement: gas that follows 1/p, and gas at a limit of its bag, which counts as a fixed volume.
    let jacketPaM3 = jacketMol * gasJPerMol;
    let suitPaM3 = suitMol * gasJPerMol;
    let loopPaM3 = loopMol * gasJPerMol;
    let atLimitM3 = 0;
    if (jacketPaM3 * perPa > jacketMostM3) {
      atLimitM3 += jacketMostM3;
      jacketPaM3 = 0;
    }
    if (drysuit && (suitPaM3 * perPa < suitLeastM3 || suitPaM3 * perPa > suitMostM3)) {
      atLimitM3 += suitPaM3 * perPa < suitLeastM3 ? suitLeastM3 : suitMostM3;
      suitPaM3 = 0;
    }
    if (loopPaM3 * perPa > loopMostM3) {
      atLimitM3 += loopMostM3;
      loopPaM3 = 0;
    }
    if (!boyleFoam) atLimitM3 += foamM3(foam, p) - foam.solidM3;
    const gasPaM3 = boyle + (jacketPaM3 + suitPaM3 + loopPaM3);
    const fixedM3 = solidM3 + atLimitM3;
    let emerged = 0;
    if (z < TOP_UPRIGHT_M) emerged = Math.min(emergedM3(z, sin), fixedM3 + lungM3 + gasPaM3 * perPa);
    const massKg = gas0Kg - leftMol * kgPerMol;
    const displaced = displacedKg(rho, fixedM3, lungM3, gasPaM3, perPa, emerged);

    if (stage === 0) s.netN = (displaced - massKg) * g;

    // Motion, down positive.
    if (turning || layered) {
      drag = 0.5 * rho * dragAreaM2(rig, sin);
      added = addedShare(rig, sin);
    }
    let other = -thrustN * sin;
    if (emerged > 0) other -= HEAVE_NSPM * Math.min(1, emerged / HEAVE_FULL_M3) * v;
    if (disturbed) other += disturbedN(c, displaced, added);
    dz = v;
    dv = fallMps2(massKg, displaced, g, drag, added, v - waterMps, other);
    if (onLine) {
      const inertiaKg = massKg + added * displaced;
      dv -= Math.min(Math.max(inertiaKg * (dv + v / LINE_S), -LINE_N), LINE_N) / inertiaKg;
    }
    sumZ += weight * dz;
    sumV += weight * dv;

    if (turning) {
      lever.pitchCos = cos;
      lever.pitchSin = sin;
      lever.pitchRateRadps = q;
      lever.densityKgPerM3 = rho;
      lever.massKg = massKg;
      lever.cylinderGasKg = cylindersMol * kgPerMol;
      lever.jacketMol = jacketMol;
      lever.suitMol = suitMol;
      lever.loopMol = loopMol;
      lever.gutM3 = gutM3(rig, p);
      lever.foamM3 = foamM3(foam, p);
      lever.jacketM3 = jacketPaM3 > 0 || jacketMol === 0 ? jacketPaM3 * perPa : jacketMostM3;
      lever.suitGasM3 = drysuit ? Math.min(Math.max(suitMol * gasJPerMol * perPa, suitLeastM3), suitMostM3) : 0;
      lever.loopM3 = Math.min(loopMol * gasJPerMol * perPa, loopMostM3);
      lever.wholeM3 = displaced / rho + emerged;
      lever.emergedM3 = emerged;
      writeMoment(rig, s, lever);
      // A diver who is where he wants to be, and strong enough to stay, does not turn: the rest of the tick skips this.
      if (stage === 0 && canHold(c, target, lever)) turning = false;
      else {
        writeTurn(c, target, lever);
        dCos = -q * sin;
        dSin = q * cos;
        dq = lever.accelerationRadps2;
        sumCos += weight * dCos;
        sumSin += weight * dSin;
        sumQ += weight * dq;
      }
    }
  }

  // The new state. Gas moves as whole amounts: each transfer is one number, taken here and added there.
  s.depthM = z0 + sixth * sumZ;
  s.speedMps = v0 + sixth * sumV;
  s.tick += ticks;
  if (turning) {
    lever.pitchCos = cos0 + sixth * sumCos;
    lever.pitchSin = sin0 + sixth * sumSin;
    lever.pitchRateRadps = q0 + sixth * sumQ;
    settleAttitude(s, c, target, lever);
  }
  const finsNs = thrustN * s.pitchSin * h;
  if (finsNs > 0) s.finsUpNs += finsNs;
  else s.finsDownNs -= finsNs;
  const floor = floorDepthM(rig, c, z0, s.pitchSin);
  if (s.depthM >= floor || s.resting !== 0) contact(rig, s, floor, events);

  let p1 = surfacePressurePa + rhoG0 * (s.depthM > 0 ? s.depthM : 0);
  if (layered) p1 = waterAt(column, s.depthM, water).pressurePa;
  valves.ambientPa = p1;
  if (flowing) applyFlows(rig, s, sums, valves, h);
  if (openCircuit) settleLungs(rig, s, valves, plan, held, closed, inAir, blowing);
  // Bags and flags are looked at only where something could have come of them.
  const bags = drysuit !== null || !openCircuit;
  let relieved = false;
  if (bags || s.jacketMol * gasJPerMol > p1 * jacketMostM3) relieved = overflow(rig, s, valves);
  const supplied = gives || inAir;
  let flags = 0;
  if (bags || closed || relieved || !supplied || s.depthM < HEAD_OUT_M)
    flags = lastingFlags(rig, s, c, valves, closed, supplied, relieved ? FLAG.relief : 0);
  if (flags !== s.flags) {
    if (events) logTurns(events, s, flags);
    s.flags = flags;
  }
}
