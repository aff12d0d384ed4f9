import { STEP_S, type Controls } from './controls.ts';
import type { DiveState } from './state.ts';

/** Thrust that can be kept up, and the most for a sprint, newtons; how long a sprint lasts, seconds. Practice. */
export const SUSTAINED_N = 45;
const SPRINT_N = 100;
export const SPRINT_S = 5;
/** A second of rest gives back a quarter second of sprint. Practice. */
const RECOVERY = 0.25;

/**
 * Writes the thrust of a tick as far as the diver can give it, newtons along the body, and what it costs: 45 N sustained,
 * 100 N for five seconds, anything between for as long in proportion.
 */
export function kick(s: DiveState, c: Controls): void {
  const limitN = s.sprintS > 0 ? SPRINT_N : SUSTAINED_N;
  s.thrustN = Math.min(Math.max(c.finsN, -limitN), limitN);
  const effortN = Math.abs(s.thrustN) - SUSTAINED_N;
  s.sprintS =
    effortN > 0
      ? Math.max(0, s.sprintS - (STEP_S * effortN) / (SPRINT_N - SUSTAINED_N))
      : Math.min(SPRINT_S, s.sprintS + STEP_S * RECOVERY);
}
