import { STANDARD_GRAVITY_MPS2, atmospherePa, pressurePa, uniformColumn, waterDensityKgPerM3 } from '../water/index.ts';
import type { Command } from './command.ts';
import { DONE, printJson } from './io.ts';
import { DEEPEST_M } from './options.ts';

/** Density and pressure of still water. */
export const water: Command = {
  name: 'water',
  does: 'density of water, and the pressure in it at a depth',
  options: {
    salinity: { kind: 'number', least: 0, most: 42, says: 'practical salinity, psu', needed: true },
    temperature: { kind: 'number', least: -2, most: 40, says: 'degrees Celsius', needed: true },
    depth: { kind: 'number', least: 0, most: DEEPEST_M, says: 'metres', needed: true },
    altitude: { kind: 'number', least: -430, most: 6000, says: 'metres above the sea; left out: 0' },
  },
  things: '',
  least: 0,
  most: 0,
  more: `Result: { densityKgPerM3, surfacePressurePa, pressurePa }; pressures are absolute, gravity is ${STANDARD_GRAVITY_MPS2} m/s².`,
  run({ numbers }, io) {
    const densityKgPerM3 = waterDensityKgPerM3(numbers['salinity']!, numbers['temperature']!);
    const surfacePressurePa = atmospherePa(numbers['altitude'] ?? 0);
    const column = uniformColumn(densityKgPerM3, surfacePressurePa, STANDARD_GRAVITY_MPS2);
    printJson(io, { densityKgPerM3, surfacePressurePa, pressurePa: pressurePa(column, numbers['depth']!) });
    return DONE;
  },
};
