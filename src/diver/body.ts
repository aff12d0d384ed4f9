/**
 * Density of the body without its gas, in kg/m³, by Siri's two-compartment equation solved for density:
 * %F = 495/D − 450, D in g/mL, lungs excluded.
 * @throws {RangeError} when bodyFatPercent is not between 0 and 80
 * @source Siri 1961, recalled
 */
export function tissueDensityKgPerM3(bodyFatPercent: number): number {
  if (!(bodyFatPercent >= 0 && bodyFatPercent <= 80))
    throw new RangeError(`tissueDensityKgPerM3: bodyFatPercent must lie between 0 and 80, got ${bodyFatPercent}`);
  return (1000 * 495) / (bodyFatPercent + 450);
}

/**
 * Body surface in m², Du Bois & Du Bois 1916: 0.007184·W^0.425·H^0.725 (kg, cm).
 * @source formula read in a university physiology page
 */
export function bodySurfaceM2(massKg: number, heightCm: number): number {
  return 0.007184 * Math.pow(massKg, 0.425) * Math.pow(heightCm, 0.725);
}

/** Static lung volumes out of the water, in litres. */
export interface LungVolumesL {
  readonly totalL: number;
  readonly functionalResidualL: number;
  readonly residualL: number;
  readonly expiratoryReserveL: number;
  readonly vitalL: number;
}

/**
 * Static lung volumes of a seated adult out of the water, litres, from the GLI-2021 reference equations with the spline term
 * left at 0 (within 6 % in mid-adult life). The quantities were fitted separately: total − residual is not exactly vital.
 * @throws {RangeError} when age or height lie outside 18…80 years, 130…210 cm
 * @source Hall et al. 2021, Eur Respir J 57:2000289, equations read
 */
export function dryLungVolumesL(sex: 'female' | 'male', ageYears: number, heightCm: number): LungVolumesL {
  if (!(ageYears >= 18 && ageYears <= 80))
    throw new RangeError(`dryLungVolumesL: ageYears must lie between 18 and 80, got ${ageYears}`);
  if (!(heightCm >= 130 && heightCm <= 210))
    throw new RangeError(`dryLungVolumesL: heightCm must lie between 130 and 210, got ${heightCm}`);
  const a = ageYears;
  const lnA = Math.log(ageYears);
  const h = heightCm;
  const lnH = Math.log(heightCm);
  if (sex === 'male')
    return {
      totalL: Math.exp(-10.5861 + 0.1433 * lnA + 2.3155 * lnH),
      functionalResidualL: Math.exp(-13.4898 + 0.1111 * lnA + 2.7634 * lnH),
      residualL: Math.exp(-2.37211 + 0.01346 * a + 0.01307 * h),
      expiratoryReserveL: Math.exp(-17.32865 - 0.006288 * a + 3.478116 * lnH),
      vitalL: Math.exp(-10.134371 - 0.003532 * a + 2.30798 * lnH),
    };
  return {
    totalL: Math.exp(-10.1128 + 0.1062 * lnA + 2.2259 * lnH),
    functionalResidualL: Math.exp(-12.7674 + 0.1251 * lnA + 2.6049 * lnH),
    residualL: Math.exp(-2.50593 + 0.01307 * a + 0.01379 * h),
    expiratoryReserveL: Math.exp(-14.145513 - 0.009573 * a + 2.871446 * lnH),
    vitalL: Math.exp(-9.2306 - 0.005517 * a + 2.116822 * lnH),
  };
}

/** Share that immersion to the neck leaves of total capacity. @source Girandola et al. 1977, abstract read */
export const IMMERSED_TOTAL_SHARE = 0.944;
/** Share that immersion to the neck leaves of residual volume. @source Girandola et al. 1977, abstract read */
export const IMMERSED_RESIDUAL_SHARE = 1.067;
/** Share that immersion leaves of the end-expiratory volume. Common practice, no source. */
export const IMMERSED_END_EXPIRATORY_SHARE = 0.81;
