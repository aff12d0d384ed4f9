import type { Instant, Rig } from '../diver/index.ts';
import { FLOATING_M, enter, forceLine, look, type ForceLine } from './force-line.ts';
import { crossings, neutralDepths } from './neutral.ts';

/** Net force and potential energy over a stretch of depth, gas moles and lungs as given. */
export interface Hilltop {
  readonly depthsM: readonly number[];
  /** Up positive. */
  readonly forcesN: readonly number[];
  /** Work to carry the diver there slowly from where he is, J: greatest where neutral is unstable, 0 at the diver. */
  readonly energyJ: readonly number[];
  /** Where the net force is less than 0.1 kgf, around that neutral depth; ends at −0.6 m or the bottom where it goes on. */
  readonly flatM: readonly [number, number] | null;
  /** The unstable neutral depth nearest to the diver, within the stretch or not; null where there is none. */
  readonly topM: number | null;
}

/** Below this a net force is called flat, newtons: 0.1 kgf, as it is for the word neutral. Chosen. */
const FLAT_N = 0.980665;

/**
 * The hill that a diver stands on: U(z) = ∫F dz from the diver's depth, in closed form, at equally spaced depths. Gas that follows
 * pressure has ∫ρgV dz = ∫V dp, which is a logarithm in still water of any layering.
 * @throws {RangeError} when fromM is not above toM, points is not a whole number >= 2, or lungM3 is negative or not finite
 */
export function hilltop(rig: Rig, at: Instant, lungM3: number, fromM: number, toM: number, points = 81): Hilltop {
  if (!(fromM < toM && fromM > -Infinity && toM < Infinity))
    throw new RangeError(`hilltop: fromM must be less than toM, both finite, got ${fromM} and ${toM}`);
  if (!(Number.isInteger(points) && points >= 2))
    throw new RangeError(`hilltop: points must be a whole number >= 2, got ${points}`);
  const topM = nearestTopM(rig, at, lungM3);
  const flatM = topM === null ? null : flatAbout(rig, at, lungM3, topM);

  const depthsM: number[] = [];
  for (let i = 0; i < points; i++) depthsM.push(i + 1 < points ? fromM + ((toM - fromM) * i) / (points - 1) : toM);
  const forcesN: number[] = [];
  const energyJ: number[] = [];
  const line = forceLine(rig, at, lungM3, Math.min(fromM, at.depthM), Math.max(toM, at.depthM));
  const { edgesM } = line;
  let workDoneJ = 0;
  let ownJ = 0;
  for (let i = 0; i + 1 < edgesM.length; i++) {
    enter(i);
    const endM = edgesM[i + 1]!;
    const last = i + 2 === edgesM.length;
    let doneM = edgesM[i]!;
    if (at.depthM >= doneM && at.depthM <= endM) ownJ = workDoneJ + workJ(line, doneM, at.depthM);
    // A depth at an edge belongs to the deeper side, as everywhere.
    while (energyJ.length < points && (depthsM[energyJ.length]! < endM || last)) {
      const depthM = depthsM[energyJ.length]!;
      workDoneJ += workJ(line, doneM, depthM);
      doneM = depthM;
      look(depthM);
      forcesN.push(line.displacedM3 > 0 ? line.netN : -line.massKg * line.gravityMps2);
      energyJ.push(workDoneJ);
    }
    workDoneJ += workJ(line, doneM, endM);
  }
  for (let i = 0; i < points; i++) energyJ[i]! -= ownJ;
  return { depthsM, forcesN, energyJ, flatM, topM };
}

function nearestTopM(rig: Rig, at: Instant, lungM3: number): number | null {
  let nearest: number | null = null;
  for (const { depthM, stable } of neutralDepths(rig, at, lungM3))
    if (!stable && (nearest === null || Math.abs(depthM - at.depthM) < Math.abs(nearest - at.depthM))) nearest = depthM;
  return nearest;
}

/** Depths about an unstable neutral depth between which the net force is flat. */
function flatAbout(rig: Rig, at: Instant, lungM3: number, topM: number): readonly [number, number] {
  const line = forceLine(rig, at, lungM3, FLOATING_M, rig.bottomM);
  let from = FLOATING_M;
  let to = rig.bottomM;
  // The force is up just above the top and down just below it: only at that level can a sharp edge end the flat at the top itself.
  for (const { depthM } of crossings(line, FLAT_N)) {
    if (depthM <= topM) from = Math.max(from, depthM);
    else to = Math.min(to, depthM);
  }
  for (const { depthM } of crossings(line, -FLAT_N)) {
    if (depthM < topM) from = Math.max(from, depthM);
    else to = Math.min(to, depthM);
  }
  return [from, to];
}

/** ∫F dz between two depths of the piece entered, J. */
function workJ(line: ForceLine, fromM: number, toM: number): number {
  const weightN = line.massKg * line.gravityMps2;
  if (!(toM > fromM)) return 0;
  const wetM = wetFromM(line, fromM, toM);
  if (wetM >= toM) return -weightN * (toM - fromM);
  const lengthM = toM - wetM;
  look(wetM);
  const { densityKgPerM3: rhoA, pressurePa: fromPa } = line;
  look(toM);
  const { densityKgPerM3: rhoB, pressurePa: toPa, gravityMps2: g, shiftPa } = line;
  const fallPa = toPa - fromPa;
  const liftJ = line.inAir
    ? rhoA * g * lengthM * (line.fixedM3 + line.boylePaM3 / fromPa + line.foamPaM3 / (fromPa + shiftPa))
    : line.fixedM3 * fallPa +
      line.boylePaM3 * Math.log1p(fallPa / fromPa) +
      line.foamPaM3 * Math.log1p(fallPa / (fromPa + shiftPa));
  // Density and what is out of the water are both linear here, so Simpson's rule is exact.
  const outA = line.emergedM3 + line.emergedPerM * (wetM - line.fromM);
  const outB = line.emergedM3 + line.emergedPerM * (toM - line.fromM);
  const lostJ = ((rhoA * outA + (rhoA + rhoB) * (outA + outB) + rhoB * outB) * g * lengthM) / 6;
  return liftJ - lostJ - weightN * (toM - fromM);
}

/** Depth at which a diver begins to touch the water, within a stretch of a piece; its end where he does not. */
function wetFromM(line: ForceLine, fromM: number, toM: number): number {
  look(fromM);
  if (line.displacedM3 >= 0) return fromM;
  look(toM);
  if (line.displacedM3 <= 0) return toM;
  let dry = fromM;
  let wet = toM;
  while (wet - dry > 1e-12) {
    const middle = (dry + wet) / 2;
    if (middle === dry || middle === wet) break;
    look(middle);
    if (line.displacedM3 < 0) dry = middle;
    else wet = middle;
  }
  return wet;
}
