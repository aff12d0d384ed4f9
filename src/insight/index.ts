export { FORECAST_S, Forecast, handsOff } from './forecast.ts';
export { USUAL_WEIGHING, neutralLeadKg, type WeighingAt } from './weigh.ts';
export { leadChanges, type LeadChange } from './changes.ts';
export { EYES_M, surfaceCheck, type SurfaceCheck } from './surface-check.ts';
export { swingBudget, type SwingAt, type SwingBudget, type SwingWith } from './swing.ts';
export {
  MEANS,
  USUAL_LUNGS,
  actionOf,
  type Action,
  type LungRange,
  type Means,
  type Uses,
  type Way,
} from './means.ts';
export {
  USUAL_ASK,
  stopping,
  wayOf,
  type Floor,
  type Stopping,
  type StoppingAsk,
  type StoppingForecast,
} from './stopping.ts';
export {
  placedAcross,
  recoveryMap,
  recovers,
  type MapAcross,
  type MapBand,
  type MapWish,
  type Reach,
  type RecoveryMap,
} from './recovery-map.ts';
export { withMoreLead } from './surplus.ts';
export { neutralDepths, type NeutralDepth } from './neutral.ts';
export { steepnessAt, type Shares, type Steepness } from './steepness.ts';
export { hilltop, type Hilltop } from './hilltop.ts';
export { breathReach, breathReachAt } from './reach.ts';
export { insightOf, type Insight } from './insight.ts';
