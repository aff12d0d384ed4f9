/** A body on a spring balance. */
export interface Hung {
  readonly massKg: number;
  /** Of it under water, m³. */
  readonly submergedM3: number;
}

/** What a spring balance that holds a body shows, newtons: F = (m − ρV)g. Less than nothing where it would float. */
export function balanceN({ massKg, submergedM3 }: Hung, densityKgPerM3: number, gravityMps2: number): number {
  return (massKg - densityKgPerM3 * submergedM3) * gravityMps2;
}

/** What two weighings tell of a body. */
export interface Weighed {
  readonly massKg: number;
  readonly volumeM3: number;
  readonly densityKgPerM3: number;
}

/**
 * Mass, volume and density of a body from its reading in air and wholly under water (Archimedes): the water takes off what the
 * displaced water weighs. Air lifts by a thousandth of that and is left out.
 * @throws {RangeError} when it weighs as much in water as in air, or more: then it has no volume
 */
export function weighed(airN: number, waterN: number, densityKgPerM3: number, gravityMps2: number): Weighed {
  if (!(airN > waterN))
    throw new RangeError(`weighed: ${airN} N in air and ${waterN} N in water; a body weighs less in water`);
  const massKg = airN / gravityMps2;
  const volumeM3 = (airN - waterN) / (densityKgPerM3 * gravityMps2);
  return { massKg, volumeM3, densityKgPerM3: massKg / volumeM3 };
}
