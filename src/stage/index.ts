export { drawRunSheet } from './run-sheet.ts';
export { ringsOn } from './run-sheet-rings.ts';
export type { Sheet, SheetOptions } from './run-sheet-layout.ts';
export { Stage, type FrameCost, type StageOptions } from './stage.ts';
export { metresFor } from './asked-room.ts';
export { lookedAt } from './second-looked.ts';
export type { RendererKind } from './renderer.ts';
export type {
  AcrossTick,
  Asked,
  Band,
  BranchLine,
  DepthForce,
  Ledge,
  LimitsFrom,
  NeutralMark,
  PullBar,
  RateLimits,
  Ring,
  Said,
  SecondView,
  StageOverlay,
  StageView,
  StoreBar,
} from './view.ts';
