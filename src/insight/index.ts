export { FORECAST_S, Forecast, handsOff } from './forecast.ts';
export { USUAL_WEIGHING, neutralLeadKg, type WeighingAt } from './weigh.ts';
export { leadChanges, type LeadChange } from './changes.ts';
export { EYES_M, surfaceCheck, type SurfaceCheck } from './surface-check.ts';
export { swingBudget, type SwingAt, type SwingBudget, type SwingWith } from './swing.ts';
export { MEANS, USUAL_LUNGS, type LungRange, type Means, type Way } from './means.ts';
export type { MapAcross, MapBand, RecoveryMap } from './recovery-map.ts';
