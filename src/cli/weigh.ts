import { USUAL_WEIGHING, neutralLeadKg } from '../insight/index.ts';
import { waterAt } from '../water/index.ts';
import type { Command } from './command.ts';
import { rigAt } from './files.ts';
import { DONE, printJson } from './io.ts';
import { DEEPEST_M, LUNGS, lungsM3, lungsShownL } from './options.ts';

/** The lead that makes a setup neutral. */
export const weigh: Command = {
  name: 'weigh',
  does: 'the lead that makes a setup neutral',
  options: {
    at: { kind: 'number', least: 0, most: DEEPEST_M, says: `metres; left out: ${USUAL_WEIGHING.depthM}` },
    reserve: { kind: 'number', least: 0, most: 328, says: `bar (gauge) left; left out: ${USUAL_WEIGHING.reserveBar}` },
    lungs: LUNGS,
  },
  things: 'SETUP',
  least: 1,
  most: 1,
  more: `Result: { leadKg, ownLeadKg, surplusKg, depthM, reserveBar, lungsL, densityKgPerM3, caution }; leadKg is below 0 where
the setup is too heavy without any. The setup's own lead is ignored, the jacket empty, a drysuit at its least loft, a loop at
its least volume.`,
  run(asked, io) {
    const rig = rigAt(asked.things[0]);
    const depthM = asked.numbers['at'] ?? USUAL_WEIGHING.depthM;
    const reserveBar = asked.numbers['reserve'] ?? USUAL_WEIGHING.reserveBar;
    const lungM3 = lungsM3(asked, rig);
    const leadKg = neutralLeadKg(rig, { depthM, reserveBar, ...(lungM3 === undefined ? {} : { lungM3 }) });
    const ownLeadKg = rig.lead.reduce((kg, piece) => kg + piece.massKg, 0);
    printJson(io, {
      leadKg,
      ownLeadKg,
      surplusKg: ownLeadKg - leadKg,
      depthM,
      reserveBar,
      lungsL: lungsShownL(rig, lungM3),
      densityKgPerM3: waterAt(rig.column, depthM, { densityKgPerM3: NaN, pressurePa: NaN }).densityKgPerM3,
      caution:
        'A teaching model. Not for planning dives, choosing lead or handling emergencies. Your body and kit differ.',
    });
    return DONE;
  },
};
