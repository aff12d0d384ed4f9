import { LUNG_VAPOUR_PA, emergedM3, type Instant, type Rig } from '../diver/index.ts';
import { STANDARD_PRESSURE_PA, type WaterSegment } from '../water/index.ts';
import { emergedPerM, segmentAt, writeCorners } from './corners.ts';

/** Depth at which a diver floats as high as a dive may begin, metres: the upper end of every search over the column. */
export const FLOATING_M = -0.6;

/**
 * The net force along the column as a function of depth alone, gas moles and lung volume as given: cut at its corners into
 * pieces in which it is smooth. Within a piece the displaced volume is what is fixed, plus gas by Boyle's law, plus foam gas on a
 * hyperbola of its own, less what is out of the water: V = A + B/p + D/(p + shift) − (a + b·z).
 */
export interface ForceLine {
  rig: Rig;
  /** Corners from the top down, both ends included. */
  readonly edgesM: number[];
  gravityMps2: number;
  /** What never changes with depth. */
  massKg: number;
  wornM3: number;
  /** Gas that open lungs hold more for each pascal, kg; 0 where all moles are kept. */
  breathKgPerPa: number;
  jacketPaM3: number;
  suitPaM3: number;
  loopPaM3: number;
  pitchSin: number;
  /** The piece that {@link enter} chose. */
  segment: WaterSegment;
  fromM: number;
  inAir: boolean;
  fixedM3: number;
  boylePaM3: number;
  foamPaM3: number;
  shiftPa: number;
  emergedM3: number;
  emergedPerM: number;
  /** What {@link look} found: forces up positive, the slope dF/dz. */
  densityKgPerM3: number;
  pressurePa: number;
  displacedM3: number;
  /** −dV/dp of all gas, m³/Pa. */
  softM3PerPa: number;
  netN: number;
  slopeNPerM: number;
}

// One line for the whole room: filled by each question anew, so that asking often allocates nothing.
const line: ForceLine = {
  rig: undefined as never,
  edgesM: [],
  gravityMps2: NaN,
  massKg: NaN,
  wornM3: NaN,
  breathKgPerPa: NaN,
  jacketPaM3: NaN,
  suitPaM3: NaN,
  loopPaM3: NaN,
  pitchSin: NaN,
  segment: undefined as never,
  fromM: NaN,
  inAir: false,
  fixedM3: NaN,
  boylePaM3: NaN,
  foamPaM3: NaN,
  shiftPa: NaN,
  emergedM3: NaN,
  emergedPerM: NaN,
  densityKgPerM3: NaN,
  pressurePa: NaN,
  displacedM3: NaN,
  softM3PerPa: NaN,
  netN: NaN,
  slopeNPerM: NaN,
};

/**
 * The line of a diver between two depths; valid until the next call. Lungs count only where the circuit is open.
 * @param breathed lungs hold gas of each depth, as after a breath there, and the cylinders stand as they do; otherwise all moles
 *   are kept
 */
export function forceLine(
  rig: Rig,
  at: Instant,
  lungM3: number,
  topM: number,
  bottomM: number,
  breathed = false,
): ForceLine {
  let wornM3 = rig.bareM3 + rig.foam.solidM3 + (rig.lungs.open ? lungM3 : 0);
  for (let i = 0; i < rig.lead.length; i++) if ((at.releasedMask & (1 << i)) === 0) wornM3 += rig.lead[i]!.volumeM3;
  line.rig = rig;
  line.gravityMps2 = rig.column.gravityMps2;
  line.massKg = massKg(rig, at);
  line.breathKgPerPa = 0;
  if (breathed && rig.lungs.open) {
    line.breathKgPerPa = (lungM3 / rig.lungJPerMol) * rig.kgPerMol;
    line.massKg -= at.lungMol * rig.kgPerMol + LUNG_VAPOUR_PA * line.breathKgPerPa;
  }
  line.wornM3 = wornM3;
  line.jacketPaM3 = at.jacketMol * rig.gasJPerMol;
  line.suitPaM3 = at.suitMol * rig.gasJPerMol;
  line.loopPaM3 = at.loopMol * rig.gasJPerMol;
  line.pitchSin = at.pitchSin;
  writeCorners(rig, at, topM, bottomM, line.edgesM);
  return line;
}

/** Mass of diver, gear, lead still worn and all gas carried, kilograms. */
export function massKg(rig: Rig, at: Instant): number {
  let kg = rig.bareKg;
  for (let i = 0; i < rig.lead.length; i++) if ((at.releasedMask & (1 << i)) === 0) kg += rig.lead[i]!.massKg;
  let mol = at.lungMol + at.jacketMol + at.suitMol + at.loopMol;
  for (let i = 0; i < rig.vessels.length; i++) mol += at.cylinderMol[i]!;
  return kg + mol * rig.kgPerMol;
}

/** Chooses the piece below the i-th edge for {@link look}. */
export function enter(i: number): void {
  const { rig, edgesM, jacketPaM3, suitPaM3, loopPaM3 } = line;
  const fromM = edgesM[i]!;
  const middleM = (fromM + edgesM[i + 1]!) / 2;
  line.segment = segmentAt(rig.column, middleM);
  line.fromM = fromM;
  line.inAir = middleM < 0;
  const middlePa = pressureAt(middleM);
  const { foam, jacket, drysuit, loop } = rig;
  let fixedM3 = line.wornM3;
  let boylePaM3 = rig.gutM3 * STANDARD_PRESSURE_PA;
  if (jacketPaM3 > jacket.capacityM3 * middlePa) fixedM3 += jacket.capacityM3;
  else boylePaM3 += jacketPaM3;
  if (drysuit) {
    if (suitPaM3 > drysuit.capacityM3 * middlePa) fixedM3 += drysuit.capacityM3;
    else if (suitPaM3 < drysuit.minimumM3 * middlePa) fixedM3 += drysuit.minimumM3;
    else boylePaM3 += suitPaM3;
  }
  if (loop) {
    if (loopPaM3 > loop.capacityM3 * middlePa) fixedM3 += loop.capacityM3;
    else boylePaM3 += loopPaM3;
  }
  const stiff = foam.softness === 0;
  if (stiff) fixedM3 += foam.gasM3;
  line.fixedM3 = fixedM3;
  line.boylePaM3 = boylePaM3;
  line.foamPaM3 = stiff ? 0 : (foam.gasM3 * STANDARD_PRESSURE_PA) / foam.softness;
  line.shiftPa = stiff ? 0 : (STANDARD_PRESSURE_PA * (1 - foam.softness)) / foam.softness;
  line.emergedM3 = emergedM3(fromM, line.pitchSin);
  line.emergedPerM = emergedPerM(middleM, line.pitchSin);
}

function pressureAt(depthM: number): number {
  const { fromM, densityKgPerM3, slopeKgPerM4, pressurePa } = line.segment;
  const below = (line.inAir ? 0 : depthM) - fromM;
  return pressurePa + line.gravityMps2 * below * (densityKgPerM3 + 0.5 * slopeKgPerM4 * below);
}

/**
 * Looks at a depth of the piece entered. High out of the water the displaced volume comes out below 0 instead of 0: the force
 * stays downward, and the piece stays smooth.
 */
export function look(depthM: number): void {
  const { segment, gravityMps2: g, inAir, boylePaM3, foamPaM3, emergedPerM } = line;
  const p = pressureAt(depthM);
  const rho = segment.densityKgPerM3 + (inAir ? 0 : segment.slopeKgPerM4 * (depthM - segment.fromM));
  const boyle = boylePaM3 / p;
  const shifted = p + line.shiftPa;
  const foam = foamPaM3 / shifted;
  const displaced = line.fixedM3 + boyle + foam - (line.emergedM3 + emergedPerM * (depthM - line.fromM));
  const soft = inAir ? 0 : boyle / p + foam / shifted;
  line.densityKgPerM3 = rho;
  line.pressurePa = p;
  line.displacedM3 = displaced;
  line.softM3PerPa = soft;
  line.netN = (rho * displaced - line.massKg - line.breathKgPerPa * p) * g;
  const layered = inAir ? 0 : segment.slopeKgPerM4 * displaced - line.breathKgPerPa * rho * g;
  line.slopeNPerM = g * (layered - rho * (rho * g * soft + emergedPerM));
}
