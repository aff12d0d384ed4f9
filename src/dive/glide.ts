import type { Rig } from '../diver/index.ts';
import { letGo } from './aftermath.ts';
import { direction } from './attitude.ts';
import { planBreath, type BreathPlan } from './breath.ts';
import { STEP_S, type Controls } from './controls.ts';
import { kick } from './fins.ts';
import { fullTick } from './full-tick.ts';
import type { DiveState } from './state.ts';

const plan: BreathPlan = { oralM3ps: 0, middleM3: NaN, endM3: NaN };

/**
 * Moves a state on by whole ticks under unchanging controls like `advance`, in steps of up to `longest` ticks: the same
 * laws and the same order, some ten times cheaper, for looking ahead. A step ends where a phase of the breath ends.
 * Within millimetres of `advance` at 12 ticks a step; what comes out is for saying, never for a recorded dive.
 */
export function glide(rig: Rig, s: DiveState, c: Controls, ticks: number, longest: number): void {
  letGo(rig, s, c, undefined);
  const target = direction(c.pitchDeg);
  let left = ticks;
  while (left > 0) {
    let few = Math.min(left, longest);
    if (c.breath === 0 && rig.lungs.open) {
      const restOfPhase = s.breathTicks - s.breathTick;
      if (restOfPhase > 0) few = Math.min(few, restOfPhase);
    }
    fullTick(rig, s, c, target, undefined, false, few);
    left -= few;
  }
}

/**
 * What lungs and fins do over the next ticks wherever the diver is: thrust, breath and their phases move on; depth, gas and
 * attitude stay. For who looks ahead from many depths, since this part is the same from each.
 */
export function breatheAndKick(rig: Rig, s: DiveState, c: Controls, ticks: number): void {
  for (let left = ticks; left > 0;) {
    const restOfPhase = s.breathTicks - s.breathTick;
    const few = c.breath === 0 && restOfPhase > 0 ? Math.min(left, restOfPhase) : left;
    kick(s, c, STEP_S * few);
    if (rig.lungs.open && c.breath !== 2) {
      planBreath(rig, s, c, plan, few);
      s.lungM3 = plan.endM3;
    }
    s.tick += few;
    left -= few;
  }
}
