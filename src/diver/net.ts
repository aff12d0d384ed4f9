import { waterAt, type WaterAt } from '../water/index.ts';
import type { Instant } from './instant.ts';
import type { Rig } from './rig.ts';
import { emergedM3 } from './surface.ts';
import { foamM3, gutM3, jacketM3, loopM3, suitGasM3 } from './volumes.ts';

const water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };

/**
 * Net force at one moment, newtons, up positive: (ρ V − m) g with all parts summed as plain numbers. The same as the sum of
 * the force ledger, without the list: for roots over the column and for recordings.
 */
export function netForceN(rig: Rig, at: Instant): number {
  const { densityKgPerM3, pressurePa } = waterAt(rig.column, at.depthM, water);
  let massKg = rig.bareKg;
  let solidM3 = rig.bareM3;
  for (let i = 0; i < rig.lead.length; i++)
    if ((at.releasedMask & (1 << i)) === 0) {
      massKg += rig.lead[i]!.massKg;
      solidM3 += rig.lead[i]!.volumeM3;
    }
  let gasMol = at.lungMol + at.jacketMol + at.suitMol + at.loopMol;
  for (let i = 0; i < rig.vessels.length; i++) gasMol += at.cylinderMol[i]!;
  massKg += gasMol * rig.kgPerMol;
  const gasM3 =
    gutM3(rig, pressurePa) +
    at.lungM3 +
    jacketM3(rig, at.jacketMol, pressurePa) +
    suitGasM3(rig, at.suitMol, pressurePa) +
    loopM3(rig, at.loopMol, pressurePa);
  const wholeM3 = solidM3 + foamM3(rig.foam, pressurePa) + gasM3;
  const displacedM3 = wholeM3 - Math.min(emergedM3(at.depthM, at.pitchSin), wholeM3);
  return (displacedM3 * densityKgPerM3 - massKg) * rig.column.gravityMps2;
}
