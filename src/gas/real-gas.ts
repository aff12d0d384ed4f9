import { AIR_KG_PER_MOL } from './mixture.ts';

/** Specific gas constant that the fit below belongs to, J/(kg K), for air. */
const AIR_SPECIFIC_GAS_CONSTANT = 287.049;

/**
 * Compression factor Z of air or nitrox from its density, without dimension.
 * x = ρ·(28.9647/M)/100, t = T°C − 20: Z = 1 − 0.027677x + 0.00065855x·t + 0.0118834x² + 0.00204003x³.
 * Valid 0…40 °C, 1…330 bar; at most 0.22 % off.
 * @param airDensityKgPerM3 the density that air of the same molar density would have: ρ·28.9647/M
 * @source fitted to Lemmon, Jacobsen, Penoncello & Friend 2000, J. Phys. Chem. Ref. Data 29:331 (coefficients read, evaluated)
 */
export function compressionFactor(airDensityKgPerM3: number, temperatureK: number): number {
  const x = airDensityKgPerM3 / 100;
  const t = temperatureK - 293.15;
  return 1 + x * (-0.027677 + 0.00065855 * t + x * (0.0118834 + x * 0.00204003));
}

/**
 * Absolute pressure of a real gas in a rigid vessel, in pascals: p = ρ R T Z, written in moles.
 * @param mol amount in the vessel, >= 0
 * @source as {@link compressionFactor}
 */
export function vesselPressurePa(mol: number, volumeM3: number, temperatureK: number): number {
  const airDensity = (mol * AIR_KG_PER_MOL) / volumeM3;
  return airDensity * AIR_SPECIFIC_GAS_CONSTANT * temperatureK * compressionFactor(airDensity, temperatureK);
}

/**
 * Amount of gas that fills a rigid vessel to an absolute pressure, in moles: the inverse of {@link vesselPressurePa}.
 * @throws {RangeError} when the pressure is negative, not finite, or above 500 bar, where the fit does not hold
 */
export function vesselMol(pressurePa: number, volumeM3: number, temperatureK: number): number {
  if (!(pressurePa >= 0 && pressurePa <= 5e7))
    throw new RangeError(`vesselMol: pressurePa must lie between 0 and 5e7, got ${pressurePa}`);
  let low = 0;
  let high = ((pressurePa * 2) / (AIR_SPECIFIC_GAS_CONSTANT * temperatureK)) * (volumeM3 / AIR_KG_PER_MOL) + 1;
  // Halving to the last bit: pressure rises with the amount everywhere in the fitted range, and this runs once per setup.
  for (let i = 0; i < 200 && low < high; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (vesselPressurePa(middle, volumeM3, temperatureK) < pressurePa) low = middle;
    else high = middle;
  }
  return high;
}
