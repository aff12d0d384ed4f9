import { HEAD_OUT_M, LUNG_VAPOUR_PA, TOP_UPRIGHT_M, emergedM3, foamM3, type Rig } from '../diver/index.ts';
import { boylePaM3, displacedKg, fallMps2, suitExhaustPa, waterDownMps, type DiveState } from '../dive/index.ts';
import type { WaterAt } from '../water/index.ts';
import { ENTRY_S, ENTRY_TICKS, HELD_ENTRIES, steadyLungM3, type BodyAhead } from './body-ahead.ts';
import { HORIZON_S, type Attempt } from './attempt.ts';
import { writeFlown, type Flown, type Stretch } from './drift-flows.ts';
import { bestDisplacedKg, waterIn, type Pieces } from './drift-water.ts';

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
 * @param pieces those of the rig's column
 * @param leadless mass and volume of the solid parts once all lead that can go is gone
 * @param supplyPa what the cylinders give, taken as lasting
 */
export function drifts(
  rig: Rig,
  state: DiveState,
  attempt: Attempt,
  body: BodyAhead,
  pieces: Pieces,
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
  const layered = pieces.fromM.length > 1;
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
  if (layered) waterIn(pieces, z, water);
  let p = layered ? water.pressurePa : surfacePressurePa + rhoG0 * (z > 0 ? z : 0);

  let lungFrom = lungM3[0]!;
  for (let ranS = 0, k = 0, held = 0; ranS < HORIZON_S;) {
    const sin = pitchSin[k]!;
    let flowing = close;
    if (drysuit && !close) {
      // Unless somebody presses it, the suit's valve opens by itself alone, on the way up or when he turns.
      const soonPa = v < 0 ? Math.max(p + rhoG0 * v, surfacePressurePa) : p;
      flowing = suitExhaustPa(rig, attempt.idle, suitMol, soonPa, Math.max(sin, pitchSin[k + HELD_ENTRIES]!)) > 0;
    }
    const usual = entriesAhead(flowing, loop !== null, k < body.turnedFrom, k < settledFrom, swings);
    // A step ends where he begins to act.
    const entries = k < actsFrom ? Math.min(usual, actsFrom - k) : usual;
    const to = k + entries;
    const before = k + (entries >> 1);
    const behind = to - (entries >> 1);
    const stepS = entries * ENTRY_S;
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
      const ticks = (to - heldFrom + held) * ENTRY_TICKS;
      const halfTicks = entries * (ENTRY_TICKS / 2);
      lungTo = steadyLungM3(breath, ticks);
      if (ticks > halfTicks) lungMiddle = steadyLungM3(breath, ticks - halfTicks);
    }
    const upFrom = thrustUpN[k]!;
    const upTo = thrustUpN[to - 1]!;
    let speedMiddle = v;
    let fall = 0;
    for (let at = 0; at < 2; at++) {
      const from = at === 0 ? k : before;
      const until = at === 0 ? k : behind;
      const ahead = at * 0.5 * stepS;
      const depthM = z + ahead * v;
      speedMiddle = v + ahead * fall;
      if (at === 1) {
        if (layered) waterIn(pieces, depthM, water);
        p = layered ? water.pressurePa : surfacePressurePa + rhoG0 * (depthM > 0 ? depthM : 0);
      }
      if (layered) rho = water.densityKgPerM3;
      const share = 0.5 * at;
      const jacketNow = jacketMol + share * (jacketEnd - jacketMol);
      const suitNow = suitMol + share * (suitEnd - suitMol);
      const perPa = 1 / p;
      let bodyM3 = solidM3 + boyle * perPa + Math.min(jacketNow * gasJ * perPa, jacketMostM3);
      if (drysuit) bodyM3 += Math.min(Math.max(suitNow * gasJ * perPa, suitLeastM3), suitMostM3);
      if (!boyleFoam) bodyM3 += foamM3(foam, p) - foam.solidM3;
      if (loop) bodyM3 += Math.min((loopMol + share * (loopEnd - loopMol)) * gasJ * perPa, loopMostM3);
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
          // Water that is still to come may hold him better.
          const lungs = body.actingLungM3 + way * body.swingM3;
          const bestKg = bestDisplacedKg(rig, pieces, z, p, way, jacketMol, suitMol, solidM3 + lungs);
          const nowKg = way * rho * (bodyM3 + body.actingLungM3);
          if (lastingN + (bestKg - nowKg) * g < 0) return false;
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

    if (layered) waterIn(pieces, z, water);
    p = layered ? water.pressurePa : surfacePressurePa + rhoG0 * (z > 0 ? z : 0);
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
 * Entries of a step: a tenth of a second in all while the body turns and gas flows, up to three tenths as long as anything
 * but the breath changes, six tenths while he breathes, a second once nothing changes any more. A loop's gas swings back and
 * forth with little else to hold it: it stays at a fifth of a second.
 */
function entriesAhead(flowing: boolean, loop: boolean, turns: boolean, unsettled: boolean, swings: boolean): number {
  if (flowing) return turns ? 2 : unsettled || loop ? 4 : 12;
  if (unsettled) return turns ? 4 : 6;
  return swings ? 12 : 20;
}

/** The state with another attitude, for a hand that looks for the right vent. */
function turned(state: DiveState, pitchSin: number): DiveState {
  state.pitchSin = pitchSin;
  return state;
}
