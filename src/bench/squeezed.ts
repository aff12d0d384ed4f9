/**
 * Something that holds gas at the pressure round it, beside what does not give way: a sealed bag, or an open bottle with a
 * bubble. Temperature stays, so that pressure times volume does (Boyle).
 */
export interface GasBody {
  readonly massKg: number;
  /** Of what does not give way: skin, glass, weights. 0 or more. */
  readonly firmM3: number;
  /** Pressure times volume of the gas, joules. */
  readonly gasJ: number;
  /** The most the gas can take up: a bag's skin, a bottle's inside. */
  readonly mostM3: number;
}

/** Still water of one density under some pressure: that of the air, and of a hand on a closed flask. */
export interface Under {
  readonly densityKgPerM3: number;
  readonly gravityMps2: number;
  /** At the surface, pascals. */
  readonly surfacePa: number;
}

/** Pressure at a depth, pascals. */
export function pressureAt({ densityKgPerM3, gravityMps2, surfacePa }: Under, depthM: number): number {
  return surfacePa + densityKgPerM3 * gravityMps2 * Math.max(0, depthM);
}

/** Volume of the gas at a pressure, m³. */
export function gasM3({ gasJ, mostM3 }: GasBody, pressurePa: number): number {
  return Math.min(gasJ / pressurePa, mostM3);
}

/** Net force at a depth, newtons, up positive. */
export function netAtN(body: GasBody, under: Under, depthM: number): number {
  const displacedM3 = body.firmM3 + gasM3(body, pressureAt(under, depthM));
  return (under.densityKgPerM3 * displacedM3 - body.massKg) * under.gravityMps2;
}

/** Gas that makes a body neutral at a depth, as pressure times volume, joules; ≤ 0 where it floats without any. */
export function gasNeutralAtJ(body: Pick<GasBody, 'massKg' | 'firmM3'>, under: Under, depthM: number): number {
  return (body.massKg / under.densityKgPerM3 - body.firmM3) * pressureAt(under, depthM);
}

/**
 * The pressure at which a body neither rises nor sinks, pascals: p = (pV) / (m/ρ − V of what is firm). Above it the body sinks.
 * @returns null where gas does not decide: it floats without any, or sinks with all that it can hold
 */
export function criticalPa(body: GasBody, densityKgPerM3: number): number | null {
  const wantedM3 = body.massKg / densityKgPerM3 - body.firmM3;
  return wantedM3 > 0 && wantedM3 <= body.mostM3 ? body.gasJ / wantedM3 : null;
}

/**
 * The depth below which a body does not come up by itself any more, metres: its point of no return, neutral and unstable.
 * Negative: it sinks from the surface on. @returns null where gas does not decide
 */
export function noReturnM(body: GasBody, under: Under): number | null {
  const pa = criticalPa(body, under.densityKgPerM3);
  return pa === null ? null : (pa - under.surfacePa) / (under.densityKgPerM3 * under.gravityMps2);
}

/**
 * Potential energy at a depth against that at the surface, joules: E(z) = ∫ F dz, a hilltop at the point of no return. In closed
 * form: ρ g V z for what is firm, gas at its most down to where it gives way, p V ln(p/p₁) below.
 */
export function hillJ(body: GasBody, under: Under, depthM: number): number {
  const { densityKgPerM3: rho, gravityMps2: g, surfacePa } = under;
  const z = Math.max(0, depthM);
  const fullToPa = body.mostM3 > 0 ? body.gasJ / body.mostM3 : Infinity;
  const fullToM = Math.min(Math.max(0, (fullToPa - surfacePa) / (rho * g)), z);
  const softPa = pressureAt(under, fullToM);
  const gas = body.mostM3 * rho * g * fullToM + (z > fullToM ? body.gasJ * Math.log(pressureAt(under, z) / softPa) : 0);
  return (rho * body.firmM3 - body.massKg) * g * z + gas;
}
