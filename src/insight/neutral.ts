import type { Instant, Rig } from '../diver/index.ts';
import { FLOATING_M, enter, forceLine, look, type ForceLine } from './force-line.ts';
import { inertiaKg } from './steepness.ts';

/** A depth at which buoyancy equals weight. */
export interface NeutralDepth {
  readonly depthM: number;
  /** A small offset comes back: so at the surface and across water that grows denser downward, and nowhere else. */
  readonly stable: boolean;
  /** Of an unstable one: time in which a small offset grows by e, drag left out; null across a sharp edge of the water. */
  readonly eFoldingS: number | null;
  /** Of a stable one: period of a small oscillation, drag and damping left out; null across a sharp edge of the water. */
  readonly periodS: number | null;
}

/** Where a net force passes a level. */
export interface Crossing {
  readonly depthM: number;
  /** The net force falls below the level with depth. */
  readonly falls: boolean;
  /** dF/dz, N/m; infinite where water changes at a sharp edge. */
  readonly slopeNPerM: number;
}

/** Two crossings closer than this are one touch, and none, metres. */
const TOUCH_M = 1e-7;
/** To this a crossing is found, metres. */
const FOUND_M = 1e-10;
/** A larger difference between both sides of an edge is a jump, newtons. */
const JUMP_N = 1e-6;

/**
 * Every depth between floating (−0.6 m) and the bottom at which the net force is nothing, shallow first, to 1e-6 m: gas moles as
 * they are, lungs of an open airway at one volume throughout (on the loop they are part of the loop).
 * @throws {RangeError} when lungM3 is negative or not finite
 */
export function neutralDepths(rig: Rig, at: Instant, lungM3: number = at.lungM3): NeutralDepth[] {
  if (!(lungM3 >= 0 && lungM3 < Infinity))
    throw new RangeError(`neutralDepths: lungM3 must be finite and >= 0, got ${lungM3}`);
  const line = forceLine(rig, at, lungM3, FLOATING_M, rig.bottomM);
  // A neutral diver displaces his own mass.
  const inertia = inertiaKg(rig, at.pitchSin, line.massKg, line.massKg);
  return crossings(line, 0).map(({ depthM, falls, slopeNPerM }) => {
    const restoringS = Math.sqrt(inertia / Math.abs(slopeNPerM));
    const known = restoringS > 0 && restoringS < Infinity;
    return {
      depthM,
      stable: !falls,
      eFoldingS: known && falls ? restoringS : null,
      periodS: known && !falls ? 2 * Math.PI * restoringS : null,
    };
  });
}

/** Every depth of a line at which its net force passes a level, newtons, shallow first. */
export function crossings(line: ForceLine, levelN: number): Crossing[] {
  const found: Crossing[] = [];
  const { edgesM } = line;
  let above = NaN;
  for (let i = 0; i + 1 < edgesM.length; i++) {
    enter(i);
    const fromM = edgesM[i]!;
    const toM = edgesM[i + 1]!;
    look(fromM);
    const below = line.netN - levelN;
    // Both sides of an edge: water may jump there, and rounding may put the crossing of a corner between them.
    if (i > 0 && above >= 0 !== below >= 0) {
      const jumps = Math.abs(below - above) > JUMP_N;
      const slope = jumps ? (below > above ? Infinity : -Infinity) : line.slopeNPerM;
      found.push({ depthM: fromM, falls: below < 0, slopeNPerM: slope });
    }
    search(line, levelN, fromM, toM, found);
    look(toM);
    above = line.netN - levelN;
  }
  return found;
}

/**
 * Crossings of a smooth piece. Bounds of the slope over the piece say whether it can turn: where it cannot there is at most one,
 * where it can the piece is halved, unless the bounds keep the force away from the level. So no pair is missed.
 */
function search(line: ForceLine, levelN: number, fromM: number, toM: number, found: Crossing[]): void {
  look(fromM);
  const start = line.netN - levelN;
  const { densityKgPerM3: rhoA, displacedM3: volumeA, softM3PerPa: softA } = line;
  look(toM);
  const end = line.netN - levelN;
  const { densityKgPerM3: rhoB, displacedM3: volumeB, softM3PerPa: softB, gravityMps2: g } = line;
  const crosses = start >= 0 !== end >= 0;

  // dF/dz = g (s V − ρ g c − g ρ² S − ρ b): V and S lie between bounds that their parts have at the two ends.
  const s = line.inAir ? 0 : line.segment.slopeKgPerM4;
  const c = line.inAir ? 0 : line.breathKgPerPa * g;
  const b = line.emergedPerM;
  const outM3 = b * (toM - fromM);
  const least = volumeB + outM3;
  const most = volumeA - outM3;
  const rhoLeast = Math.min(rhoA, rhoB);
  const rhoMost = Math.max(rhoA, rhoB);
  const low = g * (Math.min(s * least, s * most) - rhoMost * (c + g * rhoMost * softA) - rhoLeast * b);
  const high = g * (Math.max(s * least, s * most) - rhoLeast * (c + g * rhoLeast * softB) - rhoMost * b);

  const turns = low < 0 && high > 0;
  const lengthM = toM - fromM;
  if (!turns || (crosses && lengthM < TOUCH_M)) {
    if (crosses) found.push(refined(line, levelN, fromM, toM, start, end));
    return;
  }
  if (!crosses && (lengthM < TOUCH_M || keepsAway(start, end, low, high, lengthM))) return;
  const middleM = (fromM + toM) / 2;
  search(line, levelN, fromM, middleM, found);
  search(line, levelN, middleM, toM, found);
}

/** Whether a force with a slope between two bounds, of one sign at both ends, cannot reach 0 between them. */
function keepsAway(start: number, end: number, low: number, high: number, lengthM: number): boolean {
  const [first, last, falling, rising] = start >= 0 ? [start, end, -low, high] : [-start, -end, high, -low];
  // From the first it can fall so fast, and to the last it must rise no faster: the lowest point is where both lines meet.
  const metM = (first - last + rising * lengthM) / (falling + rising);
  return first - falling * Math.min(Math.max(metM, 0), lengthM) > 0;
}

/** The one crossing between two depths on different sides: Newton's method, kept between its bounds by halving. */
function refined(line: ForceLine, levelN: number, fromM: number, toM: number, start: number, end: number): Crossing {
  const falls = start >= 0;
  let low = fromM;
  let high = toM;
  let depthM = fromM + ((toM - fromM) * start) / (start - end);
  for (let i = 0; i < 100; i++) {
    look(depthM);
    const off = line.netN - levelN;
    if (off >= 0 === falls) low = depthM;
    else high = depthM;
    const next = depthM - off / line.slopeNPerM;
    const step = next > low && next < high ? next : (low + high) / 2;
    const movedM = Math.abs(step - depthM);
    depthM = step;
    if (movedM < FOUND_M) break;
  }
  look(depthM);
  return { depthM, falls, slopeNPerM: line.slopeNPerM };
}
