/** Pressure of the standard atmosphere at sea level, pascals; the reference of all rated flows and of gauge pressure. */
export const STANDARD_PRESSURE_PA = 101325;
/** Standard acceleration of free fall, m/s²: newtons that one kilogram of pull is. @source CGPM 1901, ISO 80000-3, recalled */
export const STANDARD_GRAVITY_MPS2 = 9.80665;

const EARTH_RADIUS_M = 6356766;
const LAPSE_K_PER_M = 0.0065;
const SEA_LEVEL_K = 288.15;
const EXPONENT = 5.25588;

/**
 * Pressure of the standard atmosphere at a geometric altitude, in pascals: p = p0 (1 − L H / T0)^5.25588, H geopotential.
 * @param altitudeM geometric metres above sea level, −500…11 000
 * @throws {RangeError} outside the troposphere
 * @source ISO 2533:1975 = U.S. Standard Atmosphere 1976 below 32 km; constants read in a public transcription
 */
export function atmospherePa(altitudeM: number): number {
  if (!(altitudeM >= -500 && altitudeM <= 11000))
    throw new RangeError(`atmospherePa: altitudeM must lie between -500 and 11000, got ${altitudeM}`);
  const geopotentialM = (EARTH_RADIUS_M * altitudeM) / (EARTH_RADIUS_M + altitudeM);
  return STANDARD_PRESSURE_PA * Math.pow(1 - (LAPSE_K_PER_M * geopotentialM) / SEA_LEVEL_K, EXPONENT);
}
