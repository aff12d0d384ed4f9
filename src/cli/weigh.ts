import { rigOf, type Rig, type Setup } from '../diver/index.ts';
import {
  USUAL_WEIGHING,
  leadChanges,
  neutralLeadKg,
  surfaceCheck,
  swingBudget,
  type WeighingAt,
} from '../insight/index.ts';
import { STANDARD_GRAVITY_MPS2, waterAt } from '../water/index.ts';
import type { Command } from './command.ts';
import { setupAt } from './files.ts';
import { CAUTION, DONE, printJson } from './io.ts';
import { DEEPEST_M, LUNGS, litres, lungsM3, lungsShownL } from './options.ts';
import { UsageError, type Asked } from './usage.ts';

const BREATH_CAUTION =
  'Never hold your breath on scuba: gas expanding in the lungs can injure within about a metre of ascent.';
const ALTITUDE_CAUTION = 'Altitude and other worlds are a thought experiment.';

/** The lead that makes a setup neutral, and what that depends on. */
export const weigh: Command = {
  name: 'weigh',
  does: 'the lead that makes a setup neutral, and what changes it',
  options: {
    at: { kind: 'number', least: 0, most: DEEPEST_M, says: `metres; left out: ${USUAL_WEIGHING.depthM}` },
    reserve: { kind: 'number', least: 0, most: 328, says: `bar (gauge) left; left out: ${USUAL_WEIGHING.reserveBar}` },
    lungs: LUNGS,
    changes: { kind: 'flag', says: 'also the lead after each of the usual changes, one at a time' },
    check: { kind: 'flag', says: 'also how the diver floats at the surface, jacket empty, with the lead of the setup' },
    swing: { kind: 'flag', says: 'also what suit and cylinder lose, and the jacket gas that makes up for it' },
    cylinder: {
      kind: 'number',
      least: 0,
      most: 328,
      says: 'with --swing: bar (gauge) in every cylinder for the jacket gas; left out: as filled',
    },
  },
  things: 'SETUP',
  least: 1,
  most: 1,
  more: `Result: { leadKg, ownLeadKg, surplusKg, depthM, reserveBar, lungsL, densityKgPerM3, caution }; leadKg is below 0 where
the setup is too heavy without any. The setup's own lead is ignored, the jacket empty, a drysuit at its least loft, a loop at
its least volume; wholly submerged, also at the surface.
--changes adds changes: [{ change, leadKg, deltaKg }]: the model's numbers, no advice.
--check adds check: [{ cylinder, breath, lungsL, floats, waterlineM, word, coveredKgf, atEyesKgf }], upright, cylinder full
and at the reserve. waterlineM is below the top of the head, null for who goes under; the forces, up positive, are those with
the head just covered and with the waterline at the eyes, 0.12 m down.
--swing adds swing: { cylinderLossKgf, depths: [{ depthM, suitLossKgf, jacketL, jacketSurfaceL, leftKgf, ventPerMetreL,
ventPerMetreSurfaceL }] }: cylinder from full to the reserve; suit since the surface; jacket gas for neutral at mid-breath, at
that depth and at one atmosphere; what no jacket takes off; and the gas, a drysuit's too, to let out per metre on the way up.
--at and --lungs are for the lead alone, with and without --changes.`,
  run(asked, io) {
    if (asked.numbers['cylinder'] !== undefined && !asked.flags.has('swing'))
      throw new UsageError('--cylinder: only with --swing; the lead is reckoned with --reserve');
    const setup = setupAt(asked.things[0]);
    const rig = rigOf(setup);
    const lungM3 = lungsM3(asked, rig);
    const at: WeighingAt = {
      depthM: asked.numbers['at'] ?? USUAL_WEIGHING.depthM,
      reserveBar: asked.numbers['reserve'] ?? USUAL_WEIGHING.reserveBar,
      ...(lungM3 === undefined ? {} : { lungM3 }),
    };
    const leadKg = neutralLeadKg(rig, at);
    const ownLeadKg = rig.lead.reduce((kg, piece) => kg + piece.massKg, 0);
    printJson(io, {
      leadKg,
      ownLeadKg,
      surplusKg: ownLeadKg - leadKg,
      depthM: at.depthM,
      reserveBar: at.reserveBar,
      lungsL: lungsShownL(rig, lungM3),
      densityKgPerM3: waterAt(rig.column, at.depthM, { densityKgPerM3: NaN, pressurePa: NaN }).densityKgPerM3,
      ...(asked.flags.has('changes') ? { changes: changesOf(setup, at) } : {}),
      ...(asked.flags.has('check') ? { check: checkOf(rig, at.reserveBar) } : {}),
      ...(asked.flags.has('swing') ? { swing: swingOf(rig, at.reserveBar, asked) } : {}),
      caution: [
        CAUTION,
        ...(asked.flags.has('check') ? [BREATH_CAUTION] : []),
        ...(asked.flags.has('changes') ? [ALTITUDE_CAUTION] : []),
      ].join(' '),
    });
    return DONE;
  },
};

function changesOf(setup: Setup, at: WeighingAt) {
  return leadChanges(setup, at).map(({ change, leadKg, deltaKg }) => ({ change, leadKg, deltaKg }));
}

function checkOf(rig: Rig, reserveBar: number) {
  return surfaceCheck(rig, reserveBar).map(({ lungM3, coveredN, atEyesN, cylinder, breath, floats, ...line }) => ({
    cylinder,
    breath,
    lungsL: lungM3 === null ? null : litres(lungM3),
    floats,
    ...line,
    coveredKgf: coveredN / STANDARD_GRAVITY_MPS2,
    atEyesKgf: atEyesN / STANDARD_GRAVITY_MPS2,
  }));
}

function swingOf(rig: Rig, reserveBar: number, { numbers: { cylinder } }: Asked) {
  const filling = cylinder === undefined ? {} : { cylinderBar: cylinder };
  const { cylinderLossN, depths } = swingBudget(rig, undefined, { reserveBar, ...filling });
  return {
    cylinderLossKgf: cylinderLossN / STANDARD_GRAVITY_MPS2,
    depths: depths.map((one) => ({
      depthM: one.depthM,
      suitLossKgf: one.suitLossN / STANDARD_GRAVITY_MPS2,
      jacketL: litres(one.jacketM3),
      jacketSurfaceL: litres(one.jacketSurfaceM3),
      leftKgf: one.leftN / STANDARD_GRAVITY_MPS2,
      ventPerMetreL: litres(one.ventPerMetreM3),
      ventPerMetreSurfaceL: litres(one.ventPerMetreSurfaceM3),
    })),
  };
}
