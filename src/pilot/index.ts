export { chanceOf, type Chance } from './chance.ts';
export { DECISIONS_PER_S } from './eye.ts';
export { PILOTS, PILOT_NAMES, pilotOf, type PilotName, type PilotSort } from './pilots.ts';
export { divePosture } from './posture.ts';
export type { Pilot, Task } from './task.ts';
