/** Molar gas constant, J/(mol K). @source CODATA 2018, exact, recalled */
export const GAS_CONSTANT = 8.314462618;

/** Molar mass of dry air, kg/mol. Derived from the composition of @source Lemmon et al. 2000 and U.S. Standard Atmosphere 1976, read */
export const AIR_KG_PER_MOL = 28.9647e-3;

/**
 * Molar mass of air enriched with oxygen, in kg/mol: M = 28.9647 + (o2Percent − 20.95)·0.0384 g/mol; 20.9–21.0 % is air.
 * @throws {RangeError} outside 0…100 %
 * @source derived from the molar masses of oxygen, nitrogen and air (read)
 */
export function molarMassKgPerMol(o2Percent: number): number {
  if (!(o2Percent >= 0 && o2Percent <= 100))
    throw new RangeError(`molarMassKgPerMol: o2Percent must lie between 0 and 100, got ${o2Percent}`);
  if (o2Percent >= 20.9 && o2Percent <= 21) return AIR_KG_PER_MOL;
  return AIR_KG_PER_MOL + (o2Percent - 20.95) * 0.0384e-3;
}
