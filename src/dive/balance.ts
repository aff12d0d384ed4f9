import type { Rig } from '../diver/index.ts';
import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import type { Controls } from './controls.ts';

/**
 * The balance of one stage of a tick, in the two lines that every path of the step shares. Written so that an engine can
 * compile them into the loop: numbers in, one number out.
 */

/** Mass of displaced water, kg: ρ · (what never changes + lungs + all gas that follows 1/p − what is out of the water). */
export function displacedKg(
  densityKgPerM3: number,
  fixedM3: number,
  lungM3: number,
  gasPaM3: number,
  perPa: number,
  emergedM3: number,
): number {
  return densityKgPerM3 * (fixedM3 + lungM3 + gasPaM3 * perPa - emergedM3);
}

/**
 * Downward acceleration, m/s²: (m g − ρ g V − ½ ρ CdA |w| w + other forces down) / (m + added mass), w the speed through
 * the water.
 * @param dragKgPerM ½ ρ CdA
 * @param addedShare added mass as a share of displaced mass
 */
export function fallMps2(
  massKg: number,
  displaced: number,
  gravityMps2: number,
  dragKgPerM: number,
  addedShare: number,
  throughWaterMps: number,
  otherDownN: number,
): number {
  return (
    ((massKg - displaced) * gravityMps2 - dragKgPerM * Math.abs(throughWaterMps) * throughWaterMps + otherDownN) /
    (massKg + addedShare * displaced)
  );
}

/** Speed of the water, m/s, down positive: that of the setup and what has set in. */
export function waterDownMps(rig: Rig, c: Controls): number {
  return rig.currentDownMps + c.waterDownMmps * 1e-3;
}

/**
 * Force down on a diver whom something disturbs, newtons: water that gains speed carries what it surrounds along, by the
 * weight of water displaced and by the added mass; a nudge pushes. With nothing else a neutral diver goes exactly as the water.
 * @source added mass in accelerating flow, C_M = 1 + C_a: derived from the law of motion on the page of physics
 */
export function disturbedN(c: Controls, displaced: number, addedShare: number): number {
  return (displaced + addedShare * displaced) * (c.waterDownMmps2 * 1e-3) - c.nudgeUpN;
}

/** Whether something disturbs the diver beyond water that moves steadily. */
export function isDisturbed(c: Controls): boolean {
  return (c.waterDownMmps2 | c.nudgeUpN) !== 0;
}

/** Pressure × volume of all gas that always follows Boyle's law: in the gut, and in foam whose walls carry nothing. */
export function boylePaM3(rig: Rig): number {
  const foamM3 = rig.foam.softness === 1 ? rig.foam.gasM3 : 0;
  return (rig.gutM3 + foamM3) * STANDARD_PRESSURE_PA;
}

/** Drag area at an attitude, m²: from level to upright by sin² of pitch. */
export function dragAreaM2(rig: Rig, pitchSin: number): number {
  return rig.dragAreaLevelM2 + (rig.dragAreaUprightM2 - rig.dragAreaLevelM2) * (pitchSin * pitchSin);
}

/** Added mass at an attitude, as a share of displaced mass: from level to upright by sin² of pitch. */
export function addedShare(rig: Rig, pitchSin: number): number {
  return rig.addedMassLevel + (rig.addedMassUpright - rig.addedMassLevel) * (pitchSin * pitchSin);
}
