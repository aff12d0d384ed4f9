export { Stage, type StageOptions } from './stage.ts';
export type { RendererKind } from './renderer.ts';
export type { Band, Flag, RateLimits, Ring, StageView } from './view.ts';
