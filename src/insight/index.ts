export { FORECAST_S, Forecast, handsOff } from './forecast.ts';
export { USUAL_WEIGHING, neutralLeadKg, type WeighingAt } from './weigh.ts';
