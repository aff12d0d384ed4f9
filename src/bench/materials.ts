/** Where a density comes from. */
export type Grade = 'read' | 'recalled' | 'practice' | 'derived';

/** What something on the bench is made of. */
export interface Material {
  readonly id: string;
  readonly densityKgPerM3: number;
  readonly grade: Grade;
  /** Where to look it up. */
  readonly source: string;
}

/**
 * Materials of the bench, from light to heavy. Densities are from memory; the sources named print them as ranges or to a few
 * per cent, which is more than a class can tell.
 */
export const MATERIALS = [
  { id: 'cork', densityKgPerM3: 240, grade: 'recalled', source: 'handbooks of physics, 220 to 260' },
  { id: 'pine', densityKgPerM3: 500, grade: 'recalled', source: 'handbooks of wood, air-dry, 350 to 600' },
  { id: 'ice', densityKgPerM3: 917, grade: 'recalled', source: 'CRC Handbook of Chemistry and Physics, ice at 0 °C' },
  { id: 'beeswax', densityKgPerM3: 960, grade: 'recalled', source: 'handbooks of physics, 950 to 970' },
  { id: 'polystyrene', densityKgPerM3: 1050, grade: 'recalled', source: 'makers of plastics, solid, 1040 to 1060' },
  { id: 'rubber', densityKgPerM3: 1150, grade: 'recalled', source: 'handbooks of physics, filled, 1100 to 1200' },
  { id: 'putty', densityKgPerM3: 1750, grade: 'practice', source: 'weighed lumps of modelling clay, 1600 to 1900' },
  { id: 'glass', densityKgPerM3: 2500, grade: 'recalled', source: 'soda-lime glass, makers of float glass' },
  { id: 'granite', densityKgPerM3: 2650, grade: 'recalled', source: 'handbooks of rocks, 2600 to 2700' },
  { id: 'aluminium', densityKgPerM3: 2700, grade: 'recalled', source: 'CRC Handbook of Chemistry and Physics' },
  { id: 'steel', densityKgPerM3: 7850, grade: 'recalled', source: 'EN 1991-1-1 Annex A, structural steel' },
  { id: 'lead', densityKgPerM3: 11340, grade: 'recalled', source: 'CRC Handbook of Chemistry and Physics' },
] as const satisfies readonly Material[];

/** Id of a material of the bench. */
export type MaterialId = (typeof MATERIALS)[number]['id'];

/** A material by its id. @throws {RangeError} when there is none */
export function materialOf(id: MaterialId): Material {
  const material = MATERIALS.find((one) => one.id === id);
  if (!material)
    throw new RangeError(`materialOf: there is no ${id}; there are ${MATERIALS.map((one) => one.id).join(', ')}`);
  return material;
}
