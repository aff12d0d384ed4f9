import { HEAD_OUT_M, LUNG_VAPOUR_PA, TOP_UPRIGHT_M, emergedM3, foamM3, type Rig } from '../diver/index.ts';
import { boylePaM3, displacedKg, fallMps2, suitExhaustPa, waterDownMps, type DiveState } from '../dive/index.ts';
import { waterAt, type Column, type WaterAt } from '../water/index.ts';
import { ENTRY_S, ENTRY_TICKS, HELD_ENTRIES, steadyLungM3, type BodyAhead } from './body-ahead.ts';
import { HORIZON_S, type Attempt } from './attempt.ts';
import { writeFlown, type Flown, type Stretch } from './drift-flows.ts';
import type { Way } from './means.ts';

const water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };
const gas: Flown = {
  jacketMol: NaN,
  suitMol: NaN,
  loopMol: NaN,
  jacketEnd: NaN,
  suitEnd: NaN,
  loopEnd: NaN,
  lostMol: NaN,
};
const stretch: Stretch = { fromPa: NaN, toPa: NaN, fromSin: NaN, toSin: NaN, seconds: NaN };

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
  // Short steps all the way: gas that is pressed, a loop, and where how fast he ever is counts.
  const close = uses.gas || loop !== null || (drysuit !== null && floor.kind === 'rate');
  const swings = body.swingM3 > 0;
  // Deeper, all gas shrinks; on the way up a drysuit's valve may yet open, and a loop is filled up.
  const mayBeGone = !uses.gas && !loop && (way > 0 || !drysuit) && floor.kind !== 'rate';
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
    const sin = pitchSin[k]!;
    let flowing = close;
    if (drysuit && !close) {
      // Unless somebody presses it, the suit's valve opens by itself alone, on the way up or when he turns.
      const soonPa = v < 0 ? Math.max(p + rhoG0 * v, surfacePressurePa) : p;
      flowing = suitExhaustPa(rig, attempt.idle, suitMol, soonPa, Math.max(sin, pitchSin[k + HELD_ENTRIES]!)) > 0;
    }
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

    let jacketEnd = jacketMol;
    let suitEnd = suitMol;
    let loopEnd = loopMol;
    if (flowing) {
      gas.jacketMol = jacketMol;
      gas.suitMol = suitMol;
      gas.loopMol = loopMol;
      stretch.fromPa = p;
      stretch.toPa = Math.max(p + rhoG0 * v * stepS, surfacePressurePa);
      stretch.fromSin = sin;
      stretch.toSin = pitchSin[to]!;
      stretch.seconds = stepS;
      const c = acting ? attempt.action(turned(state, sin)) : attempt.idle;
      writeFlown(rig, c, stretch, supplyPa, gas);
      jacketEnd = gas.jacketEnd;
      suitEnd = gas.suitEnd;
      loopEnd = gas.loopEnd;
      gasMol -= gas.lostMol;
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
        if (mayBeGone && settled && v * way > 0 && lastingN + body.swingM3 * rho * g < 0) {
          if (!layered) return false;
          // The water that is to come may hold him better.
          const mostM3 = bodyM3 + body.actingLungM3 + body.swingM3;
          const stillN = (bestDensity(column, z, way) - rho) * mostM3 * g * way;
          if (lastingN + stillN + body.swingM3 * rho * g < 0) return false;
        }
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

/** Density of the water that holds best who goes on the bad way from a depth: the densest below, the lightest above, kg/m³. */
function bestDensity({ segments }: Column, depthM: number, way: Way): number {
  let best = NaN;
  for (let i = 0; i < segments.length; i++) {
    const { fromM, densityKgPerM3, slopeKgPerM4 } = segments[i]!;
    const toM = segments[i + 1]?.fromM ?? Infinity;
    if (way > 0 ? toM <= depthM : fromM >= depthM) continue;
    const ends = slopeKgPerM4 === 0 ? densityKgPerM3 : densityKgPerM3 + slopeKgPerM4 * (toM - fromM);
    const mine = (ends - densityKgPerM3) * way > 0 ? ends : densityKgPerM3;
    if (!((best - mine) * way >= 0)) best = mine;
  }
  return best;
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
