export { degreesOf, direction, type Direction } from './attitude.ts';
export { midBreathCl, phaseTicks } from './breath.ts';
export {
  CONTROL_NAMES,
  CONTROL_RANGES,
  STEP_S,
  TICKS_PER_CHANGE,
  TICKS_PER_S,
  firstControls,
  quantised,
  restingControls,
  type Controls,
} from './controls.ts';
export { FLAG, LUNG_CRITICAL_PA, LUNG_WARN_PA, SQUEEZE_PA, type DiveEvent, type EventKind } from './events.ts';
export { SUSTAINED_N } from './fins.ts';
export {
  REAR_BELOW_SIN,
  SHOULDER_ABOVE_SIN,
  noFlows,
  regulatorGives,
  suitExhaustPa,
  supplyPa,
  ventFor,
  writeFlows,
  type Flows,
  type ValveState,
} from './flows.ts';
export { addedShare, boylePaM3, displacedKg, dragAreaM2, fallMps2, waterDownMps } from './balance.ts';
export {
  copyState,
  floatingDepthM,
  mouthIsClear,
  overwriteState,
  solidSums,
  startState,
  totalMol,
  type DiveState,
  type Start,
} from './state.ts';
export { pieceAtHand } from './hand-lead.ts';
export { advance } from './step.ts';
export { breatheAndKick, glide } from './glide.ts';
export { floorDepthM } from './aftermath.ts';
export { MISHAP_RANGES, withMishaps, type Mishap } from './mishaps.ts';
export { hashOf } from './hash.ts';
export { RECORDED, Recording, TICKS_PER_ROW, rowOf, type Recorded, type Row } from './recording.ts';
export { commonTick, diveAt, momentAt, type Moment } from './rewind.ts';
export { Dive, replay, type ControlChange, type Run } from './run.ts';
export { changesOf, columnsOf, type ChangeColumns } from './run-columns.ts';
