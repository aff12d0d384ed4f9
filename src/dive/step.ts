import type { Rig } from '../diver/index.ts';
import { letGo } from './aftermath.ts';
import { direction } from './attitude.ts';
import { calmTicks, canBeCalm } from './calm.ts';
import type { Controls } from './controls.ts';
import type { DiveEvent } from './events.ts';
import { fullTick } from './full-tick.ts';
import type { DiveState } from './state.ts';

/**
 * Moves a dive on by whole ticks under unchanging controls, in place: fourth-order Runge-Kutta with a fixed step of 1/120 s
 * over depth, speed, pitch and every gas flow. A pure function of rig, state and controls; only + − × ÷ √, min, max, abs,
 * floor and comparisons, so that every engine gives the same bits.
 * @param events receives what happens; left out, nothing is logged
 * @param locked holds the attitude as it is, whatever torque that takes
 */
export function advance(
  rig: Rig,
  s: DiveState,
  c: Controls,
  ticks: number,
  events?: DiveEvent[],
  locked = false,
): void {
  letGo(rig, s, c, events);
  const target = direction(c.pitchDeg);
  const mayBeCalm = canBeCalm(rig);
  let left = ticks;
  while (left > 0) {
    const ran = mayBeCalm ? calmTicks(rig, s, c, target, left, locked) : 0;
    left -= ran;
    if (left > 0) {
      fullTick(rig, s, c, target, events, locked, 1);
      left--;
    }
  }
}
