import type { Controls } from './controls.ts';
import type { DiveState } from './state.ts';

/** Thrust that can be kept up, and the most for a sprint, newtons; how long a sprint lasts, seconds. Practice. */
export const SUSTAINED_N = 45;
const SPRINT_N = 100;
export const SPRINT_S = 5;
/** A second of rest gives back a quarter second of sprint. Practice. */
const RECOVERY = 0.25;

/**
 * Writes the thrust of a step as far as the diver can give it, newtons along the body, and what it costs: 45 N sustained,
 * 100 N for five seconds, anything between for as long in proportion.
 * @param seconds length of the step
 */
export function kick(s: DiveState, c: Controls, seconds: number): void {
  const wantedN = Math.abs(c.finsN) - SUSTAINED_N;
  if (wantedN <= 0) {
    s.thrustN = c.finsN;
    s.sprintS = Math.min(SPRINT_S, s.sprintS + seconds * RECOVERY);
    return;
  }
  // Who asks for more than he can keep up does not rest: nothing comes back until he asks for less.
  const mostN = SPRINT_N - SUSTAINED_N;
  const overN = Math.min(wantedN, mostN, (s.sprintS * mostN) / seconds);
  s.thrustN = c.finsN > 0 ? SUSTAINED_N + overN : -SUSTAINED_N - overN;
  s.sprintS = Math.max(0, s.sprintS - (seconds * overN) / mostN);
}
