export { drawRunSheet } from './run-sheet.ts';
export type { Sheet, SheetOptions } from './run-sheet-layout.ts';
export { Stage, type FrameCost, type StageOptions } from './stage.ts';
export type { RendererKind } from './renderer.ts';
export type { Band, Flag, LimitsFrom, RateLimits, Ring, StageView } from './view.ts';
