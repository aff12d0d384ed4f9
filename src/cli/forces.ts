import { instantOf, ledger, netOf, type InstantWish, type Rig } from '../diver/index.ts';
import { STANDARD_GRAVITY_MPS2, waterAt } from '../water/index.ts';
import type { Command } from './command.ts';
import { rigAt } from './files.ts';
import { DONE, printJson } from './io.ts';
import { DEEPEST_M, LUNGS, litres, lungsM3 } from './options.ts';
import { UsageError, within, type Asked } from './usage.ts';

/** The force ledger of one moment. */
export const forces: Command = {
  name: 'forces',
  does: 'what every part of diver and kit weighs and displaces at a depth, and the sum',
  options: {
    depth: { kind: 'number', least: 0, most: DEEPEST_M, says: 'metres', needed: true },
    lungs: LUNGS,
    jacket: {
      kind: 'number',
      least: 0,
      most: 60,
      says: 'litres in the jacket at that depth; left out: as in the setup',
    },
    'suit-gas': {
      kind: 'number',
      least: 0,
      most: 100,
      says: 'litres in the drysuit at that depth; left out: as in the setup',
    },
    cylinder: { kind: 'number', least: 0, most: 328, says: 'bar (gauge) in every cylinder; left out: as filled' },
  },
  things: 'SETUP',
  least: 1,
  most: 1,
  more: `Result: { depthM, pressurePa, densityKgPerM3, parts: [{ part, massKg, volumeL, weightN, buoyancyN }], netN, netKgf }.
Forces are up positive: net = buoyancy - weight. The diver is level and counts as wholly submerged, also at the surface.
A drysuit displaces its least loft at least, whatever gas is in it.`,
  run(asked, io) {
    const rig = rigAt(asked.things[0]);
    const at = instantOf(rig, wishOf(asked, rig));
    // Wholly submerged is what is asked: near the surface the part above the water is left out.
    const parts = ledger(rig, at).filter(({ part }) => part !== 'above-water');
    const netN = netOf(parts);
    const { densityKgPerM3, pressurePa } = waterAt(rig.column, at.depthM, { densityKgPerM3: NaN, pressurePa: NaN });
    printJson(io, {
      depthM: at.depthM,
      pressurePa,
      densityKgPerM3,
      parts: parts.map(({ part, massKg, volumeM3, weightN, buoyancyN }) => ({
        part,
        massKg,
        volumeL: litres(volumeM3),
        weightN,
        buoyancyN,
      })),
      netN,
      netKgf: netN / STANDARD_GRAVITY_MPS2,
    });
    return DONE;
  },
};

function wishOf(asked: Asked, rig: Rig): InstantWish {
  const { depth, jacket, 'suit-gas': suitGas, cylinder } = asked.numbers;
  const lungM3 = lungsM3(asked, rig);
  if (suitGas !== undefined && !rig.drysuit)
    throw new UsageError('--suit-gas: this setup has no drysuit; leave it out');
  if (jacket !== undefined) within('--jacket', jacket, 0, litres(rig.jacket.capacityM3), 'what the jacket holds');
  if (suitGas !== undefined && rig.drysuit)
    within('--suit-gas', suitGas, 0, litres(rig.drysuit.capacityM3), 'what the suit holds');
  return {
    depthM: depth!,
    ...(lungM3 === undefined ? {} : { lungM3 }),
    ...(jacket === undefined ? {} : { jacketM3: jacket * 1e-3 }),
    ...(suitGas === undefined ? {} : { suitGasM3: suitGas * 1e-3 }),
    ...(cylinder === undefined ? {} : { cylinderBar: cylinder }),
  };
}
