/**
 * Density of sea or fresh water at one atmosphere, in kg/m³: the EOS-80 polynomial in salinity and temperature.
 * Compressibility is left out (0.02 % at 40 m).
 * @param salinityPsu practical salinity, 0…42
 * @param temperatureC degrees Celsius, −2…40
 * @throws {RangeError} when an argument lies outside the range of the polynomial
 * @source Fofonoff & Millard 1983, UNESCO Tech. Pap. Mar. Sci. 44: pure-water polynomial read; salinity terms recalled and
 *   confirmed by the published check values (tests/water)
 */
export function waterDensityKgPerM3(salinityPsu: number, temperatureC: number): number {
  if (!(salinityPsu >= 0 && salinityPsu <= 42))
    throw new RangeError(`waterDensityKgPerM3: salinityPsu must lie between 0 and 42, got ${salinityPsu}`);
  if (!(temperatureC >= -2 && temperatureC <= 40))
    throw new RangeError(`waterDensityKgPerM3: temperatureC must lie between -2 and 40, got ${temperatureC}`);
  const s = salinityPsu;
  const t = temperatureC;
  const pure =
    999.842594 + t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
  const linear = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
  const root = -5.72466e-3 + t * (1.0227e-4 + t * -1.6546e-6);
  return pure + s * linear + s * Math.sqrt(s) * root + s * s * 4.8314e-4;
}
