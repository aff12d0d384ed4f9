import { LUNG_VAPOUR_PA, TOP_UPRIGHT_M, foamM3, gutM3, jacketM3, loopM3, suitGasM3, type Rig } from '../diver/index.ts';
import { floorDepthM, isAboveLedge } from './aftermath.ts';
import type { Direction } from './attitude.ts';
import { addedShare, boylePaM3, displacedKg, dragAreaM2, fallMps2, isDisturbed, waterDownMps } from './balance.ts';
import { planBreath, type BreathPlan } from './breath.ts';
import { STEP_S, type Controls } from './controls.ts';
import { SPRINT_S, SUSTAINED_N } from './fins.ts';
import { anyValvePressed, drawMol, suitExhaustPa, supplyPa } from './flows.ts';
import type { DiveState } from './state.ts';
import { TORQUE_NM, emptyLever, writeMoment, type Lever } from './turn.ts';

/** For how many ticks a check of the slow things holds: a tenth of a second. */
const CHECK_TICKS = 12;
/** Faster than this nothing is called calm, m/s: in a tenth of a second ambient pressure then changes by less than 4 %. */
const CALM_MPS = 3;
/** What a tenth of a second cannot use up: share of a volume's limit, torque, feed pressure, crack pressure. */
const VOLUME_MARGIN = 0.08;
const TORQUE_MARGIN_NM = 12;
const SUPPLY_MARGIN_PA = 12e5;
const CRACK_MARGIN_PA = 150;
/** Distance from surface and floor within which the full tick takes over, metres. */
const DEPTH_MARGIN_M = 0.05;

const plan: BreathPlan = { oralM3ps: NaN, middleM3: NaN, endM3: NaN };
const lever: Lever = emptyLever();

/** Whether this rig can ever be calm: one density, foam by Boyle's law, open circuit. */
export function canBeCalm(rig: Rig): boolean {
  return (
    rig.lungs.open &&
    rig.column.segments.length === 1 &&
    rig.foam.softness === 1 &&
    rig.gutM3 > 0 &&
    rig.vessels.length > 0
  );
}

/** What stays the same over a run of calm ticks. Filled once per call of the step and read in every tick of it. */
const k = {
  surfacePa: NaN,
  rho: NaN,
  rhoG: NaN,
  gravity: NaN,
  perLungJ: NaN,
  kgPerMol: NaN,
  current: NaN,
  drag: NaN,
  added: NaN,
  otherN: NaN,
  finsNs: NaN,
  storesMol: NaN,
  gasPaM3: NaN,
  fixedM3: NaN,
  solidKg: NaN,
  shallowestM: NaN,
  deepestM: NaN,
};

/**
 * Runs up to `ticks` calm ticks and says how many it ran. Calm is: submerged and clear of the floor, breathing through an
 * open airway from a cylinder that gives, no valve worked or about to open, in the commanded attitude and strong enough to
 * stay there. That is most of every dive, and the full tick would do the same sums in the same order with nothing to add:
 * what comes out is the same to the bit, several times faster. A test holds the two together.
 */
export function calmTicks(
  rig: Rig,
  s: DiveState,
  c: Controls,
  target: Direction,
  ticks: number,
  locked: boolean,
): number {
  if (s.flags !== 0 || s.resting !== 0 || c.breath === 2 || c.oral !== 0 || c.holdLine !== 0 || anyValvePressed(c))
    return 0;
  if (!locked && (c.attitude !== 0 || s.pitchRateRadps !== 0 || s.pitchCos !== target.cos || s.pitchSin !== target.sin))
    return 0;
  if (isDisturbed(c)) return 0;
  const thrustN = c.finsN;
  if (thrustN > SUSTAINED_N || thrustN < -SUSTAINED_N || s.sprintS < SPRINT_S) return 0;
  // Below a ledge the floor depends on where the diver has been: the full tick looks each time.
  if (rig.ledgeM !== null && c.ledge === 1 && !isAboveLedge(rig, c, s.depthM)) return 0;

  // The memo stands for the exhaust valve as it was set: the diver may have turned it since.
  if (rig.drysuit !== null) s.calmUntil = 0;

  const { column, gasJPerMol } = rig;
  const sin = s.pitchSin;
  k.surfacePa = column.surfacePressurePa;
  k.rho = column.segments[0]!.densityKgPerM3;
  k.gravity = column.gravityMps2;
  k.rhoG = k.rho * k.gravity;
  k.perLungJ = 1 / rig.lungJPerMol;
  k.kgPerMol = rig.kgPerMol;
  k.current = waterDownMps(rig, c);
  k.drag = 0.5 * k.rho * dragAreaM2(rig, sin);
  k.added = addedShare(rig, sin);
  k.otherN = -thrustN * sin;
  k.finsNs = thrustN * sin * STEP_S;
  k.storesMol = s.jacketMol + s.suitMol + s.loopMol;
  k.gasPaM3 = boylePaM3(rig) + (s.jacketMol * gasJPerMol + s.suitMol * gasJPerMol + s.loopMol * gasJPerMol);
  k.fixedM3 = s.solidM3 + rig.foam.solidM3;
  k.solidKg = s.solidKg;
  k.shallowestM = TOP_UPRIGHT_M + DEPTH_MARGIN_M;
  k.deepestM = floorDepthM(rig, c, s.depthM, sin) - DEPTH_MARGIN_M;
  s.thrustN = thrustN;
  plan.oralM3ps = 0;
  let n = 0;
  while (n < ticks && isCalm(rig, s, c)) {
    calmTick(rig, s, c);
    n++;
  }
  return n;
}

function isCalm(rig: Rig, s: DiveState, c: Controls): boolean {
  const { depthM, speedMps } = s;
  if (!(depthM > k.shallowestM && depthM < k.deepestM && speedMps < CALM_MPS && speedMps > -CALM_MPS)) return false;
  return s.tick < s.calmUntil || staysCalm(rig, s, c);
}

function calmTick(rig: Rig, s: DiveState, c: Controls): void {
  const { surfacePa, rho, rhoG, gravity, perLungJ, kgPerMol, current, drag, added, otherN, fixedM3, gasPaM3 } = k;
  const half = 0.5 * STEP_S;
  const sixth = STEP_S / 6;
  const z = s.depthM;
  const v = s.speedMps;
  const lung0 = s.lungMol;
  const lungStart = s.lungM3;
  planBreath(rig, s, c, plan, 1);
  const lungMiddle = plan.middleM3;
  const lungEnd = plan.endM3;
  const cylinders = s.cylinderMol;
  let cylindersMol = cylinders[0]!;
  for (let i = 1; i < cylinders.length; i++) cylindersMol += cylinders[i]!;
  const gas0Kg = k.solidKg + (cylindersMol + lung0 + k.storesMol) * kgPerMol;

  let p = surfacePa + rhoG * z;
  let mol = (p - LUNG_VAPOUR_PA) * lungStart * perLungJ;
  let massKg = gas0Kg - (lung0 > mol ? lung0 - mol : 0) * kgPerMol;
  let displaced = displacedKg(rho, fixedM3, lungStart, gasPaM3, 1 / p, 0);
  s.netN = (displaced - massKg) * gravity;
  const a1 = fallMps2(massKg, displaced, gravity, drag, added, v - current, otherN);
  const v2 = v + half * a1;
  p = surfacePa + rhoG * (z + half * v);
  mol = (p - LUNG_VAPOUR_PA) * lungMiddle * perLungJ;
  massKg = gas0Kg - (lung0 > mol ? lung0 - mol : 0) * kgPerMol;
  displaced = displacedKg(rho, fixedM3, lungMiddle, gasPaM3, 1 / p, 0);
  const a2 = fallMps2(massKg, displaced, gravity, drag, added, v2 - current, otherN);
  const v3 = v + half * a2;
  p = surfacePa + rhoG * (z + half * v2);
  mol = (p - LUNG_VAPOUR_PA) * lungMiddle * perLungJ;
  massKg = gas0Kg - (lung0 > mol ? lung0 - mol : 0) * kgPerMol;
  displaced = displacedKg(rho, fixedM3, lungMiddle, gasPaM3, 1 / p, 0);
  const a3 = fallMps2(massKg, displaced, gravity, drag, added, v3 - current, otherN);
  const v4 = v + STEP_S * a3;
  p = surfacePa + rhoG * (z + STEP_S * v3);
  mol = (p - LUNG_VAPOUR_PA) * lungEnd * perLungJ;
  massKg = gas0Kg - (lung0 > mol ? lung0 - mol : 0) * kgPerMol;
  displaced = displacedKg(rho, fixedM3, lungEnd, gasPaM3, 1 / p, 0);
  const a4 = fallMps2(massKg, displaced, gravity, drag, added, v4 - current, otherN);

  const depthM = z + sixth * (v + 2 * v2 + 2 * v3 + v4);
  s.depthM = depthM;
  s.speedMps = v + sixth * (a1 + 2 * a2 + 2 * a3 + a4);
  p = surfacePa + rhoG * depthM;
  let gained = (p - LUNG_VAPOUR_PA) * lungEnd * perLungJ - lung0;
  if (gained <= 0) s.bubbleMol -= gained;
  else if (cylinders.length === 1) cylinders[0]! -= gained;
  else gained = drawMol(rig, cylinders, gained, p);
  s.lungMol = lung0 + gained;
  s.lungM3 = lungEnd;
  if (k.finsNs > 0) s.finsUpNs += k.finsNs;
  else s.finsDownNs -= k.finsNs;
  s.tick++;
}

/** Looks at all that changes slowly, with margins that the next tenth of a second cannot use up, and notes until when. */
function staysCalm(rig: Rig, s: DiveState, c: Controls): boolean {
  const density = rig.column.segments[0]!.densityKgPerM3;
  const p = rig.column.surfacePressurePa + density * rig.column.gravityMps2 * s.depthM;
  if (supplyPa(rig, s.cylinderMol) < p + SUPPLY_MARGIN_PA) return false;
  if ((s.jacketMol * rig.gasJPerMol) / p > rig.jacket.capacityM3 * (1 - VOLUME_MARGIN)) return false;
  const suit = rig.drysuit;
  if (suit) {
    const volume = (s.suitMol * rig.gasJPerMol) / p;
    if (volume < suit.minimumM3 * (1 + VOLUME_MARGIN) || volume > suit.capacityM3 * (1 - VOLUME_MARGIN)) return false;
    if (suitExhaustPa(rig, c, s.suitMol, p, s.pitchSin) > -CRACK_MARGIN_PA && s.pitchSin >= 0) return false;
  }
  // Looked at for a locked attitude too: the memo must not depend on who asks.
  if (!(holdingMomentNm(rig, s, density, p) < TORQUE_NM - TORQUE_MARGIN_NM)) return false;
  s.calmUntil = s.tick + CHECK_TICKS;
  return true;
}

/** Torque that the diver needs to stay as he is, N m, without its sign. */
function holdingMomentNm(rig: Rig, s: DiveState, densityKgPerM3: number, p: number): number {
  lever.pitchCos = s.pitchCos;
  lever.pitchSin = s.pitchSin;
  lever.densityKgPerM3 = densityKgPerM3;
  let cylindersMol = 0;
  for (const mol of s.cylinderMol) cylindersMol += mol;
  lever.cylinderGasKg = cylindersMol * rig.kgPerMol;
  lever.jacketMol = s.jacketMol;
  lever.suitMol = s.suitMol;
  lever.loopMol = s.loopMol;
  lever.gutM3 = gutM3(rig, p);
  lever.foamM3 = foamM3(rig.foam, p);
  lever.jacketM3 = jacketM3(rig, s.jacketMol, p);
  lever.suitGasM3 = suitGasM3(rig, s.suitMol, p);
  lever.loopM3 = loopM3(rig, s.loopMol, p);
  const gasM3 = lever.gutM3 + lever.foamM3 + s.lungM3 + lever.jacketM3 + lever.suitGasM3 + lever.loopM3;
  lever.wholeM3 = s.solidM3 + gasM3;
  lever.emergedM3 = 0;
  lever.massKg = s.solidKg + (cylindersMol + s.lungMol + s.jacketMol + s.suitMol + s.loopMol) * rig.kgPerMol;
  writeMoment(rig, s, lever);
  return Math.abs(lever.momentNm);
}
