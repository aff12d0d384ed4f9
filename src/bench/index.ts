export { Sinking, terminalMps, type Drop, type FallWater, type Pose } from './sinking.ts';
