import {
  AIR_KG_PER_MOL,
  compressionFactor,
  molarMassKgPerMol,
  vesselMol,
  vesselPressurePa,
} from '../../src/gas/index.ts';
import { LUNG_VAPOUR_PA, instantOf, jacketM3, ledger, rigOf } from '../../src/diver/index.ts';
import { LB_PER_FT3, type Answers } from './answers-water.ts';
import { EXAMPLE, changed } from './rigs.ts';
import { input, ROWS } from './rows.ts';

const POUND_KG = 0.45359237;
const CUBIC_INCH_M3 = 0.0254 ** 3;
const PSI_PA = (POUND_KG * 9.80665) / 0.0254 ** 2;
const ATM_PA = 101325;
const G = 9.80665;

const named = (prefix: string, make: (id: string) => () => number): Answers =>
  Object.fromEntries(ROWS.filter((row) => row.id.startsWith(prefix)).map((row) => [row.id, make(row.id)]));

/** Z at a temperature and pressure: the amount that fills a cubic metre, and what the fit says of it. */
const compression = (id: string) => () => {
  const mol = vesselMol(input(id, 'p_bar_abs') * 1e5, 1, input(id, 'T_K'));
  return compressionFactor(mol * AIR_KG_PER_MOL, input(id, 'T_K'));
};
const airDensity = (id: string) => () => vesselMol(input(id, 'p_bar_abs') * 1e5, 1, input(id, 'T_K')) * AIR_KG_PER_MOL;
const kelvin = (celsius: number) => celsius + 273.15;
const fitBar = (id: string) => () =>
  vesselPressurePa(input(id, 'rho_kg_m3') / AIR_KG_PER_MOL, 1, kelvin(input(id, 'T_degC'))) / 1e5;
const fillKg = (id: string) => () =>
  vesselMol(input(id, 'gauge_bar') * 1e5 + ATM_PA, input(id, 'water_capacity_L') * 1e-3, kelvin(input(id, 'T_degC'))) *
  AIR_KG_PER_MOL;

/** Pounds by which the force ledger's cylinder gets lighter from full to empty, at 20 °C in the tables' sea water. */
const swingLb = (id: string) => () => {
  const waterL = input(id, 'internal_in3') * CUBIC_INCH_M3 * 1e3;
  const fillBar = (input(id, 'pressure_psi') * PSI_PA) / 1e5;
  const at = (bar: number) =>
    cylinderPullLb({ waterL, emptyKg: input(id, 'empty_mass_lb') * POUND_KG, externalL: 14, fillBar }, bar);
  return at(0) - at(fillBar);
};

interface Cylinder {
  readonly waterL: number;
  readonly emptyKg: number;
  readonly externalL: number;
  readonly fillBar: number;
}

function cylinderPullLb(cylinder: Cylinder, cylinderBar: number): number {
  const setup = changed(EXAMPLE, {
    water: { temperatureC: 20, densityKgPerM3: 64 * LB_PER_FT3 },
    cylinders: [{ ...EXAMPLE.cylinders[0]!, ...cylinder }],
  });
  const rig = rigOf(setup);
  const part = ledger(rig, instantOf(rig, { depthM: 5, cylinderBar })).find(({ part }) => part === 'cylinder-1')!;
  return (part.buoyancyN - part.weightN) / G / POUND_KG;
}

/** External litres with which the ledger's empty cylinder pulls what the row says: the pull is linear in the volume. */
const externalL = (id: string) => () => {
  const at = (litres: number) =>
    cylinderPullLb(
      { waterL: 11.03, emptyKg: input(id, 'empty_mass_lb') * POUND_KG, externalL: litres, fillBar: 200 },
      0,
    );
  const wanted = input(id, 'empty_buoyancy_lb');
  return 14 + ((wanted - at(14)) * 4) / (at(18) - at(14));
};

/** Cubic feet of bell air, one taken as a litre of jacket gas; of the manuals' feet of sea water 33 are an atmosphere. */
const bellFt3 = (id: string, warmF = 59, coldF = 59) => {
  const rigAt = (fahrenheit: number) =>
    rigOf(changed(EXAMPLE, { water: { temperatureC: (fahrenheit - 32) / 1.8 }, jacket: { capacityL: 30 } }));
  const full = rigAt(warmF);
  const litres = input(id, id === 'usn-bell-T' ? 'V1_ft3' : 'V_surface_ft3');
  const mol = instantOf(full, { depthM: 0, jacketM3: litres * 1e-3 }).jacketMol;
  return jacketM3(rigAt(coldF), mol, ATM_PA * (1 + input(id, 'depth_fsw') / 33)) * 1e3;
};

/** Answers of the gas room, and of gas in the diver's bags. */
export const GAS: Answers = {
  ...named('airZ-', compression),
  ...named('perry-', compression),
  'ean32-100': compression('ean32-100'),
  ...named('airrho-', airDensity),
  ...named('fitr-', fitBar),
  ...named('gas-', fillKg),
  ...Object.fromEntries(
    ['cyl-Al-80-673', 'cyl-steel-71.2-730', 'cyl-steel-75.8-730', 'cyl-steel-94.6-730'].map((id) => [id, swingLb(id)]),
  ),
  'cyl-al80-ext': externalL('cyl-al80-ext'),
  'm-air': () => molarMassKgPerMol(20.95) * 1e3,
  'ph2o-37': () => LUNG_VAPOUR_PA / 1e3,
  'usn-bell-33': () => bellFt3('usn-bell-33'),
  'usn-bell-99': () => bellFt3('usn-bell-99'),
  'usn-bell-T': () => bellFt3('usn-bell-T', input('usn-bell-T', 'T1_F'), input('usn-bell-T', 'T2_F')),
};
