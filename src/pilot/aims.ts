import type { Chance } from './chance.ts';
import { DECISIONS_PER_S } from './eye.ts';
import type { Task } from './task.ts';

/** What a pilot makes of what he is told to do. Metres and seconds. */
export type Aim =
  | { readonly kind: 'off'; readonly byM: number }
  | { readonly kind: 'stays-down' }
  | { readonly kind: 'bottom' }
  | { readonly kind: 'leaves-stop'; readonly afterS: number }
  | { readonly kind: 'pauses'; readonly beforeM: number; readonly forS: number };

/** Below anything that a dive can reach, metres. */
const BELOW_ALL_M = 200;
/** So close to where he waits, metres, he waits. */
const NEARLY_M = 0.4;

/** Hears a task, for how many seconds it has been the task, and the depth that is seen; gives the task that is flown. */
export type Aiming = (task: Task, taskS: number, depthM: number) => Task;

/** What an aim makes of each task. */
export function aimOf(aim: Aim, chance: Chance): Aiming {
  switch (aim.kind) {
    case 'off': {
      const byM = chance.uniform() < 0.5 ? -aim.byM : aim.byM;
      return (task) =>
        task.kind === 'travel' || task.kind === 'hold' ? { ...task, depthM: Math.max(1, task.depthM + byM) } : task;
    }
    case 'stays-down': {
      let before = 5;
      return (task) => {
        if (task.kind === 'travel' || task.kind === 'hold') before = task.depthM;
        return task.kind === 'surface' ? { kind: 'hold', depthM: before } : task;
      };
    }
    case 'bottom':
      return (task) =>
        task.kind === 'travel' || task.kind === 'hold' ? { kind: 'travel', depthM: BELOW_ALL_M } : task;
    case 'pauses': {
      let there = 0;
      return (task, taskS, depthM) => {
        if (task.kind !== 'travel') return task;
        if (taskS === 0) there = 0;
        const way = task.depthM > depthM ? 1 : -1;
        const pauseM = task.depthM - way * aim.beforeM;
        if (Math.abs(depthM - pauseM) < NEARLY_M) there++;
        return there >= aim.forS * DECISIONS_PER_S ? task : { ...task, depthM: pauseM };
      };
    }
    case 'leaves-stop': {
      let cameUp = false;
      return (task, taskS, depthM) => {
        if (task.kind === 'travel' && taskS === 0) cameUp = task.depthM < depthM;
        return task.kind === 'hold' && cameUp && taskS > aim.afterS ? { kind: 'surface' } : task;
      };
    }
  }
}
