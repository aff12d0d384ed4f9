export { Sinking, terminalMps, type Drop, type FallWater, type Pose } from './sinking.ts';
export { areaOf, below, placed, polarSecondMomentM4, waterline, wetAreaM2, type Area, type Point } from './section.ts';
export { floatingAt, metacentricHeightM, restingAngles, rightingNm, type Floater, type Floating } from './afloat.ts';
export {
  PUTTY_BALL,
  PUTTY_BOAT,
  PUTTY_RANGES,
  PUTTY_TRAY,
  puttySection,
  type PuttySection,
  type PuttyShape,
} from './putty.ts';
export { MATERIALS, materialOf, type Material, type MaterialId } from './materials.ts';
export { balanceN, weighed, type Hung, type Weighed } from './balance.ts';
export {
  criticalPa,
  gasM3,
  gasNeutralAtJ,
  hillJ,
  netAtN,
  noReturnM,
  pressureAt,
  type GasBody,
  type Under,
} from './squeezed.ts';
export { runOver, surfaceYM, type Tank } from './tank.ts';
export { LENGTH_M, thingOf, type Thing, type ThingSpec } from './thing.ts';
export type { BenchWater } from './forces.ts';
export { AIR_M, Bench, STEPS_PER_S } from './bench.ts';
export type { Placed } from './placed.ts';
export { ballDragM2, plunge, type Plunging, type Shaft } from './plunge.ts';
export type { BenchAsk, BenchDial, BenchMode, BenchSet, BenchWaterName, DeepBody, DeepView, TankView } from './desk.ts';
export { COLUMNS, TANK_SETS, benchWater, columnBody, underIn, type ColumnId } from './scenes.ts';
export { changedSpec, type ThingAsk } from './dials.ts';
export { DeepDesk } from './deep-desk.ts';
export { TankDesk } from './tank-desk.ts';
