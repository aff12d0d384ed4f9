import { STANDARD_PRESSURE_PA } from '../water/index.ts';
import { LUNG_VAPOUR_PA, type Foam, type Rig } from './rig.ts';

/** Volume of gut gas at an absolute pressure, m³: Boyle's law from one standard atmosphere. */
export function gutM3(rig: Rig, pressurePa: number): number {
  return (rig.gutM3 * STANDARD_PRESSURE_PA) / pressurePa;
}

/**
 * Volume of foam at an absolute pressure, m³: V = solid + gas · p_ref/(p_ref + softness·(p − p_ref)), p_ref one standard
 * atmosphere; softness 1 is the Boyle limit. Derived: two phases, the solid one incompressible.
 */
export function foamM3(foam: Foam, pressurePa: number): number {
  return (
    foam.solidM3 +
    (foam.gasM3 * STANDARD_PRESSURE_PA) / (STANDARD_PRESSURE_PA + foam.softness * (pressurePa - STANDARD_PRESSURE_PA))
  );
}

/** Volume of jacket gas, m³: n R T / p, never above capacity, where the over-pressure rises instead. */
export function jacketM3(rig: Rig, jacketMol: number, pressurePa: number): number {
  return Math.min((jacketMol * rig.gasJPerMol) / pressurePa, rig.jacket.capacityM3);
}

/** Volume of drysuit gas, m³: n R T / p between the least loft, where the suit squeezes, and capacity; 0 without a drysuit. */
export function suitGasM3(rig: Rig, suitMol: number, pressurePa: number): number {
  const suit = rig.drysuit;
  if (!suit) return 0;
  return Math.min(Math.max((suitMol * rig.gasJPerMol) / pressurePa, suit.minimumM3), suit.capacityM3);
}

/** Volume of loop gas, lungs and counterlung together, m³: n R T / p; 0 on open circuit. */
export function loopM3(rig: Rig, loopMol: number, pressurePa: number): number {
  return rig.loop ? Math.min((loopMol * rig.gasJPerMol) / pressurePa, rig.loop.capacityM3) : 0;
}

/** Dry gas in open-circuit lungs, moles: (p − 6270 Pa)·V/(R·310.15 K). */
export function lungMol(rig: Rig, lungM3: number, pressurePa: number): number {
  return ((pressurePa - LUNG_VAPOUR_PA) * lungM3) / rig.lungJPerMol;
}

/** Squeeze of a drysuit, pascals: ambient less the pressure of gas that fills the least loft; 0 while it has its loft. */
export function suitSqueezePa(rig: Rig, suitMol: number, pressurePa: number): number {
  return rig.drysuit ? Math.max(0, pressurePa - (suitMol * rig.gasJPerMol) / rig.drysuit.minimumM3) : 0;
}

/** Over-pressure of gas trapped in the lungs, pascals; below 0 when they are squeezed under the volume they hold. */
export function lungOverpressurePa(rig: Rig, molInLungs: number, lungM3: number, pressurePa: number): number {
  return (molInLungs * rig.lungJPerMol) / lungM3 + LUNG_VAPOUR_PA - pressurePa;
}
