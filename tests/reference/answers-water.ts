import { atmospherePa, pressurePa, uniformColumn, waterDensityKgPerM3 } from '../../src/water/index.ts';
import { input, rowOf } from './rows.ts';

/** An answer of the model to a row, in the row's unit. */
export type Answers = Readonly<Record<string, () => number>>;

const POUND_KG = 0.45359237;
const FOOT_M = 0.3048;
const PSI_PA = (POUND_KG * 9.80665) / 0.0254 ** 2;
/** Pounds per cubic foot in kg/m³. */
export const LB_PER_FT3 = POUND_KG / FOOT_M ** 3;
const EARTH_RADIUS_M = 6356766;

/** The name of the first input that the row has. */
const either = (id: string, ...names: string[]) =>
  input(
    id,
    names.find((name) => name in rowOf(id).inputs)!,
  );

const density = (id: string) => () =>
  waterDensityKgPerM3(either(id, 'S_psu', 'S'), either(id, 'T_degC_IPTS68', 'T_degC', 'T'));
const fresh = (id: string) => () => waterDensityKgPerM3(0, input(id, 'T_degC'));
const atmosphere = (id: string) => () => atmospherePa(input(id, 'geometric_altitude_m'));
/** Gravity at 45° of latitude, where these rows stand: g is a value of the setup. */
const G_45 = 9.8062;
const gaugeKPa = (id: string) => () => {
  const column = uniformColumn(waterDensityKgPerM3(input(id, 'S'), input(id, 'T')), 101325, G_45);
  return (pressurePa(column, input(id, 'depth_m')) - 101325) / 1000;
};
/** The manuals' sea water of 64 lb/ft³ under standard gravity. */
const gaugePsi = (feet: number) =>
  (pressurePa(uniformColumn(64 * LB_PER_FT3, 101325, 9.80665), feet * FOOT_M) - 101325) / PSI_PA;

const each = (ids: string, make: (id: string) => () => number) =>
  Object.fromEntries(ids.split(' ').map((id) => [id, make(id)]));

/** Answers of the water room. */
export const WATER: Answers = {
  ...each('eos80-rho-1 eos80-rho-3 eos80-rho-7 sw-rho-35-10 sw-rho-35-20 sw-rho-20-15 sw-rho-38-20', density),
  ...each('fw-rho-0 fw-rho-10 fw-rho-15 fw-rho-25 fw-rho-30', fresh),
  'sw-ratio': () => waterDensityKgPerM3(35, 15) / waterDensityKgPerM3(0, 15),
  ...each('atm-5000 atm-300 atm-500 atm-1500 atm-2000 atm-3000 atm-3500', atmosphere),
  'atm-geopot-3000': () => {
    const geopotentialM = input('atm-geopot-3000', 'geopotential_altitude_m');
    return atmospherePa((EARTH_RADIUS_M * geopotentialM) / (EARTH_RADIUS_M - geopotentialM));
  },
  ...each('hydro-sea-10 hydro-sea-30 hydro-sea-40 hydro-fresh-20 hydro-fresh-30', gaugeKPa),
  'usn-psi-per-ft': () => gaugePsi(1),
  'usn-dc-9': () => gaugePsi(input('usn-dc-9', 'depth_ft')),
  'usn-dc-20': () => gaugePsi(input('usn-dc-20', 'depth_ft')),
};
