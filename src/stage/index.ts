export type { Band, Flag, RateLimits, Ring, StageView } from './view.ts';
