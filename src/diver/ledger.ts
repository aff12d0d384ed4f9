import { waterAt } from '../water/index.ts';
import type { Instant } from './instant.ts';
import {
  EMERGED_LEVEL_M,
  EMERGED_UPRIGHT_M,
  JACKET_GAS_SHIFT_M,
  PLACES,
  SUIT_GAS_SHIFT_M,
  type Place,
} from './places.ts';
import type { Rig } from './rig.ts';
import { emergedM3 } from './surface.ts';
import { foamM3, gutM3, jacketM3, loopM3, suitGasM3 } from './volumes.ts';

/** One line of the force ledger. Forces are >= 0 except that of the volume above the waterline, whose displacement is < 0. */
export interface ForcePart extends Place {
  readonly part: string;
  readonly massKg: number;
  readonly volumeM3: number;
  readonly weightN: number;
  readonly buoyancyN: number;
}

/**
 * The force ledger: every part with its weight and buoyancy in newtons at one moment, in a fixed order: tissue, gut, lungs,
 * suit, suit-gas, jacket, jacket-gas, cylinders (shell and content together), lead, loop, other gear, above-water.
 * The sum of buoyancy − weight is the net force of the step (to 1e-9 N).
 */
export function ledger(rig: Rig, at: Instant): ForcePart[] {
  const { densityKgPerM3, pressurePa } = waterAt(rig.column, at.depthM, { densityKgPerM3: 0, pressurePa: 0 });
  const gravity = rig.column.gravityMps2;
  const parts: ForcePart[] = [];
  const add = (part: string, massKg: number, volumeM3: number, place: Place) =>
    parts.push({
      part,
      massKg,
      volumeM3,
      weightN: massKg * gravity,
      buoyancyN: volumeM3 * densityKgPerM3 * gravity,
      headwardM: place.headwardM,
      backwardM: place.backwardM,
    });
  const shifted = (place: Place, shiftM: number): Place => ({
    headwardM: place.headwardM + shiftM * at.pitchSin,
    backwardM: place.backwardM,
  });

  for (const solid of rig.solids) {
    const cylinder = cylinderIndex(solid.part);
    const vessel = cylinder === undefined ? undefined : rig.vessels[cylinder];
    if (vessel && cylinder !== undefined)
      add(solid.part, solid.massKg + at.cylinderMol[cylinder]! * rig.kgPerMol, solid.volumeM3, solid);
    else if (solid.part === 'suit') {
      add('suit', solid.massKg, foamM3(rig.foam, pressurePa), solid);
      if (rig.drysuit)
        add(
          'suit-gas',
          at.suitMol * rig.kgPerMol,
          suitGasM3(rig, at.suitMol, pressurePa),
          shifted(PLACES.suit, SUIT_GAS_SHIFT_M),
        );
    } else if (solid.part === 'loop')
      add(
        'loop',
        solid.massKg + at.loopMol * rig.kgPerMol,
        solid.volumeM3 + loopM3(rig, at.loopMol, pressurePa),
        solid,
      );
    else add(solid.part, solid.massKg, solid.volumeM3, solid);
    if (solid.part === 'tissue') {
      add('gut', 0, gutM3(rig, pressurePa), PLACES.tissue);
      if (rig.lungs.open) add('lungs', at.lungMol * rig.kgPerMol, at.lungM3, PLACES.lungs);
    }
    if (solid.part === 'jacket')
      add(
        'jacket-gas',
        at.jacketMol * rig.kgPerMol,
        jacketM3(rig, at.jacketMol, pressurePa),
        shifted(PLACES.jacket, JACKET_GAS_SHIFT_M),
      );
  }
  rig.lead.forEach((piece, i) => {
    if ((at.releasedMask & (1 << i)) === 0) add(piece.part, piece.massKg, piece.volumeM3, piece);
  });
  const whole = parts.reduce((sum, part) => sum + part.volumeM3, 0);
  const emerged = Math.min(emergedM3(at.depthM, at.pitchSin), whole);
  if (emerged > 0)
    add('above-water', 0, -emerged, {
      headwardM: EMERGED_UPRIGHT_M * at.pitchSin,
      backwardM: EMERGED_LEVEL_M * at.pitchCos,
    });
  return parts;
}

/** Sum of a ledger, newtons, up positive. */
export function netOf(parts: readonly ForcePart[]): number {
  let sum = 0;
  for (const part of parts) sum += part.buoyancyN - part.weightN;
  return sum;
}

function cylinderIndex(part: string): number | undefined {
  return part.startsWith('cylinder-') ? Number(part.slice('cylinder-'.length)) - 1 : undefined;
}
