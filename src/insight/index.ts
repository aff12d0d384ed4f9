export { FORECAST_S, Forecast, handsOff } from './forecast.ts';
export { USUAL_WEIGHING, neutralLeadKg, type WeighingAt } from './weigh.ts';
export { MEANS, USUAL_LUNGS, type LungRange, type Means, type Way } from './means.ts';
export type { MapAcross, MapBand, RecoveryMap } from './recovery-map.ts';
