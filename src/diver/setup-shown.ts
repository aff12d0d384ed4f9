import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import type {
  BodySetup,
  CylinderSetup,
  DrysuitSetup,
  FoamSuitSetup,
  HydrodynamicsSetup,
  JacketSetup,
  LoopSetup,
  WaterSetup,
} from './setup.ts';

/*
 * The value of every key that a setup file leaves out: a diver of middle size in temperate sea water with a 5 mm suit.
 * Common practice, no source, except where a line says so. The tests hold them against the documented example file.
 */

/** Sea water; gravity is the standard value. @source ISO 80000-3 standard acceleration of free fall, recalled */
export const SHOWN_WATER = {
  salinityPsu: 35,
  temperatureC: 15,
  bottomM: 40,
  altitudeM: 0,
  gravityMps2: STANDARD_GRAVITY_MPS2,
  currentDownMps: 0,
  line: false,
} as const satisfies WaterSetup;

export const SHOWN_BODY = {
  massKg: 80,
  bodyFatPercent: 25,
  heightCm: 178,
  residualL: 1.5,
  totalLungL: 6.3,
  endExpiratoryL: 2.7,
  tidalL: 1,
  breathPeriodS: 6,
} as const satisfies BodySetup;

/** A foam suit; cut and area follow from the file and the body. */
export const FOAM_SUIT = {
  thicknessMm: 5,
  foamDensityKgPerM3: 300,
  gasFraction: 0.65,
  softness: 1,
} as const satisfies Partial<FoamSuitSetup>;

/** A drysuit, whatever its shell. */
export const DRYSUIT = {
  undergarmentL: 6,
  minimumLoftL: 4,
  gasL: 8,
  capacityL: 40,
  inletLps: 2,
  exhaustLps: 2,
  crackKPa: 1,
  massKg: 4,
  volumeL: 3,
} as const satisfies Partial<DrysuitSetup>;

/** What the shell of a drysuit adds; a membrane has no foam, and its foam values mean nothing at thickness 0. */
export const DRYSUIT_SHELLS = {
  membrane: { thicknessMm: 0, foamDensityKgPerM3: 300, gasFraction: 0.65, softness: 1 },
  foam: { thicknessMm: 6, foamDensityKgPerM3: 300, gasFraction: 0.65, softness: 1 },
  'compressed-foam': { thicknessMm: 4, foamDensityKgPerM3: 500, gasFraction: 0.35, softness: 0.8 },
} as const satisfies Record<DrysuitSetup['shell'], Partial<DrysuitSetup>>;

export const SHOWN_JACKET = {
  capacityL: 18,
  residualL: 0,
  gasL: 0,
  inflatorLps: 2.5,
  ventLps: 3,
  oralLps: 0.4,
  reliefBar: 0.14,
  massKg: 3.5,
  volumeL: 3.5,
} as const satisfies JacketSetup;

/** A cylinder by its material: 12 L of steel, 11.1 L of aluminium. */
export const SHOWN_CYLINDER = {
  steel: { waterL: 12, emptyKg: 14.9, externalL: 13.9, workingBar: 232, fillBar: 200, o2Percent: 21 },
  aluminium: { waterL: 11.1, emptyKg: 15.1, externalL: 16.5, workingBar: 207, fillBar: 200, o2Percent: 21 },
} as const satisfies Record<CylinderSetup['material'], Omit<CylinderSetup, 'material'>>;

export const SHOWN_LOOP = {
  capacityL: 8,
  minimumL: 4,
  gasL: 6,
  diluentLps: 2,
  noseVentLps: 1,
  massKg: 12,
  volumeL: 11,
} as const satisfies LoopSetup;

/** Drag area level is derived from the laws of motion; the rest as above. */
export const SHOWN_HYDRODYNAMICS = {
  dragAreaLevelM2: 0.6,
  dragAreaUprightM2: 0.25,
  addedMassLevel: 0.87,
  addedMassUpright: 0.07,
} as const satisfies HydrodynamicsSetup;
