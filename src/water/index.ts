export { waterDensityKgPerM3 } from './seawater.ts';
export { STANDARD_GRAVITY_MPS2, STANDARD_PRESSURE_PA, atmospherePa } from './atmosphere.ts';
export {
  layeredColumn,
  pressurePa,
  uniformColumn,
  waterAt,
  type Column,
  type Layer,
  type WaterAt,
  type WaterSegment,
} from './column.ts';
