import { TICKS_PER_CHANGE, TICKS_PER_S, type Controls } from './controls.ts';
import { ventFor } from './flows.ts';
import type { DiveState } from './state.ts';

/**
 * What goes wrong by itself from a second of a dive on. Plain data: a page, a lesson and a file inject the same, and a run holds
 * what came of it as controls.
 */
export type Mishap =
  | {
      readonly kind: 'inflator-open' | 'vent-open' | 'vent-shut' | 'suit-inflator-open';
      readonly atS: number;
      readonly forS: number;
    }
  /** A piece of lead is gone: the first of the setup is 1. */
  | { readonly kind: 'lead-lost'; readonly atS: number; readonly piece: number }
  /** Somebody bumps into the diver: an impulse, newton seconds, up positive. */
  | { readonly kind: 'nudge'; readonly atS: number; readonly upNs: number }
  /** The water moves, m/s, down positive: it sets in over a second, goes on until `forS` and ebbs over a second. */
  | { readonly kind: 'current'; readonly atS: number; readonly downMps: number; readonly forS: number }
  /** So much is left in each cylinder, gauge bar. */
  | { readonly kind: 'gas-low'; readonly atS: number; readonly leftBar: number };

/** Least and greatest of what a mishap is given. */
export const MISHAP_RANGES = {
  forS: [1, 600],
  upNs: [-500, 500],
  downMps: [-1, 1],
  leftBar: [1, 300],
} as const satisfies Readonly<Record<string, readonly [number, number]>>;

/** How long a bump takes, and how long water takes to set in and to ebb, ticks. Practice. */
const NUDGE_TICKS = TICKS_PER_S / 4;
const RAMP_TICKS = TICKS_PER_S;

/**
 * What becomes of what a diver wants at a moment when things go wrong: controls until they may change again. Asked for on each
 * tick on which they may; the run then holds it all, and a replay needs no mishaps.
 */
export function withMishaps(wanted: Controls, mishaps: readonly Mishap[], state: Readonly<DiveState>): Controls {
  let controls = wanted;
  for (const mishap of mishaps) {
    const sinceTicks = state.tick - mishap.atS * TICKS_PER_S;
    if (sinceTicks >= 0) controls = changedBy(controls, mishap, sinceTicks, state.pitchSin);
  }
  return controls;
}

function changedBy(c: Controls, mishap: Mishap, sinceTicks: number, pitchSin: number): Controls {
  if (mishap.kind === 'lead-lost')
    return sinceTicks < TICKS_PER_CHANGE ? { ...c, releaseMask: c.releaseMask | (1 << (mishap.piece - 1)) } : c;
  if (mishap.kind === 'gas-low') return sinceTicks < TICKS_PER_CHANGE ? { ...c, gasLeftBar: mishap.leftBar } : c;
  if (mishap.kind === 'nudge')
    return sinceTicks < NUDGE_TICKS ? { ...c, nudgeUpN: c.nudgeUpN + (mishap.upNs * TICKS_PER_S) / NUDGE_TICKS } : c;
  const forTicks = mishap.forS * TICKS_PER_S;
  if (mishap.kind === 'current') return inCurrent(c, mishap.downMps * 1000, sinceTicks, forTicks);
  if (sinceTicks >= forTicks) return c;
  if (mishap.kind === 'inflator-open') return { ...c, jacketAdd: 1 };
  if (mishap.kind === 'suit-inflator-open') return { ...c, suitAdd: 1 };
  return { ...c, jacketVent: mishap.kind === 'vent-open' ? ventFor(pitchSin) : 0 };
}

/** Speed of the water as it is in the middle of the time until controls may change again, and how fast it grows. */
function inCurrent(c: Controls, downMmps: number, sinceTicks: number, forTicks: number): Controls {
  const setsIn = sinceTicks < RAMP_TICKS;
  const ebbsSince = sinceTicks - forTicks;
  if (ebbsSince >= RAMP_TICKS) return c;
  const middle = TICKS_PER_CHANGE / 2;
  const share = setsIn ? (sinceTicks + middle) / RAMP_TICKS : ebbsSince < 0 ? 1 : 1 - (ebbsSince + middle) / RAMP_TICKS;
  const way = setsIn ? 1 : ebbsSince < 0 ? 0 : -1;
  return {
    ...c,
    waterDownMmps: c.waterDownMmps + downMmps * share,
    waterDownMmps2: c.waterDownMmps2 + (way * downMmps * TICKS_PER_S) / RAMP_TICKS,
  };
}
