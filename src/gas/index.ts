export { AIR_KG_PER_MOL, GAS_CONSTANT, molarMassKgPerMol } from './mixture.ts';
export { compressionFactor, vesselMol, vesselPressurePa } from './real-gas.ts';
