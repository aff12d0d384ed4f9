import {
  bodySurfaceM2,
  dryLungVolumesL,
  foamM3,
  instantOf,
  jacketM3,
  ledger,
  lungMol,
  lungOverpressurePa,
  rigOf,
  tissueDensityKgPerM3,
  type LungVolumesL,
} from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { LB_PER_FT3, type Answers } from './answers-water.ts';
import { EXAMPLE, changed, withLeadKg } from './rigs.ts';
import { input, ROWS } from './rows.ts';

const G = 9.80665;
const POUND_KG = 0.45359237;
const MMHG_PA = 133.322;

const named = (prefix: string, make: (id: string) => () => number): Answers =>
  Object.fromEntries(ROWS.filter((row) => row.id.startsWith(prefix)).map((row) => [row.id, make(row.id)]));

const waterOf = (densityKgPerM3: number, gravityMps2 = G) =>
  changed(EXAMPLE, { water: { densityKgPerM3, gravityMps2 } });

/** The ledger's line for a diver and gear written down as one thing, well under water. */
function lineOf(massKg: number, volumeL: number, densityKgPerM3: number, gravityMps2 = G) {
  const thing = { name: 'thing', massKg, volumeL, headwardM: 0, backwardM: 0 };
  const rig = rigOf({ ...waterOf(densityKgPerM3, gravityMps2), other: [thing] });
  return ledger(rig, instantOf(rig, { depthM: 5 })).find(({ part }) => part === 'thing')!;
}

const exercise = (id: string) => () =>
  lineOf(input(id, 'mass_kg'), input(id, 'volume_L'), input(id, 'rho'), input(id, 'g')).buoyancyN;
const archimedesLb = (lbPerFt3: number) => () => {
  const line = lineOf(200 * POUND_KG, 3 * 0.3048 ** 3 * 1e3, lbPerFt3 * LB_PER_FT3);
  return (line.buoyancyN - line.weightN) / G / POUND_KG;
};

const QUANTITIES: Readonly<Record<string, keyof LungVolumesL>> = {
  TLC: 'totalL',
  RV: 'residualL',
  ERV: 'expiratoryReserveL',
  VC: 'vitalL',
};
const lungsL = (id: string) => () => {
  const sex = id.startsWith('gli-m') ? 'male' : 'female';
  return dryLungVolumesL(sex, input(id, 'age_y'), input(id, 'height_cm'))[QUANTITIES[id.split('-')[2]!]!];
};

/** Volume of foam at a depth of the sea as a share of its volume at the surface. */
const foamShare = (id: string) => () => {
  const { column } = rigOf(waterOf(1025));
  const gasM3 = input(id, 'gas_fraction');
  return foamM3({ solidM3: 1 - gasM3, gasM3, softness: 1 }, pressurePa(column, input(id, 'depth_m')));
};

/** Answers of the diver room. */
export const DIVER: Answers = {
  ...named('gli-', lungsL),
  ...named('foam-0', foamShare),
  'imm-TLC': () => {
    const setup = changed(EXAMPLE, { diver: { sex: 'male', ageYears: 30, heightCm: 178 } });
    return (rigOf(setup).lungs.totalM3 / (dryLungVolumesL('male', 30, 178).totalL * 1e-3) - 1) * 100;
  },
  dubois: () => bodySurfaceM2(input('dubois', 'mass_kg'), input('dubois', 'height_cm')),
  siri: () => {
    let leaner = 0;
    let fatter = 80;
    for (let i = 0; i < 60; i++) {
      const middle = (leaner + fatter) / 2;
      if (tissueDensityKgPerM3(middle) > 1050) leaner = middle;
      else fatter = middle;
    }
    return leaner;
  },
  lead: () => {
    const rig = withLeadKg(waterOf(input('lead', 'rho_sea')), 1);
    const piece = ledger(rig, instantOf(rig, { depthM: 5 })).find(({ part }) => part === 'lead-1')!;
    return (piece.weightN - piece.buoyancyN) / G;
  },
  'giancoli-65': exercise('giancoli-65'),
  'giancoli-70': exercise('giancoli-70'),
  'noaa-arch-sea': archimedesLb(64),
  'noaa-arch-fresh': archimedesLb(62.4),
  'msd-33ft': () => {
    const rig = rigOf(EXAMPLE);
    const mol = instantOf(rig, { depthM: 0, jacketM3: 0.01 }).jacketMol;
    return jacketM3(rig, mol, pressurePa(rig.column, input('msd-33ft', 'depth_m'))) / 0.01;
  },
  'overp-1.2m': () => {
    const rig = rigOf(waterOf(1025));
    const full = rig.lungs.totalM3;
    const held = lungMol(rig, full, pressurePa(rig.column, 5));
    return (
      lungOverpressurePa(rig, held, full, pressurePa(rig.column, 5 - input('overp-1.2m', 'depth_change_m'))) / MMHG_PA
    );
  },
};
