export { bodySurfaceM2, dryLungVolumesL, tissueDensityKgPerM3, type LungVolumesL } from './body.ts';
export { instantOf, type Instant, type InstantWish } from './instant.ts';
export { ledger, netOf, type ForcePart } from './ledger.ts';
export { netForceN } from './net.ts';
export {
  EMERGED_LEVEL_M,
  EMERGED_UPRIGHT_M,
  JACKET_GAS_SHIFT_M,
  LEAD_PLACES,
  PLACES,
  SUIT_GAS_SHIFT_M,
  type Place,
} from './places.ts';
export type { Problem } from './problems.ts';
export { READY_SETUPS, type ReadySetup } from './ready-setups.ts';
export {
  LEAD_KG_PER_M3,
  LUNG_K,
  LUNG_VAPOUR_PA,
  MOST_CYLINDERS,
  MOST_LEAD_PIECES,
  midBreathM3,
  rigOf,
  type Foam,
  type LeadPart,
  type Rig,
  type SolidPart,
  type Vessel,
} from './rig.ts';
export type {
  BodySetup,
  CylinderSetup,
  DrysuitSetup,
  FoamSuitSetup,
  GearSetup,
  HydrodynamicsSetup,
  JacketSetup,
  LayerSetup,
  LeadPlace,
  LeadSetup,
  LoopSetup,
  Setup,
  SuitSetup,
  WaterSetup,
} from './setup.ts';
export { HEAD_CLEAR_M, HEAD_OUT_M, TOP_LEVEL_M, TOP_UPRIGHT_M, emergedM3, mouthClearM } from './surface.ts';
export { foamM3, gutM3, jacketM3, loopM3, lungMol, lungOverpressurePa, suitGasM3, suitSqueezePa } from './volumes.ts';
