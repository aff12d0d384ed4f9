import { TICKS_PER_S } from '../dive/index.ts';

/** Most real time that one frame catches up, seconds; what is beyond is dropped, never hurried through. */
export const MOST_CAUGHT_UP_S = 0.25;

/** Time that waits for its tick, seconds of the dive, and real seconds that were dropped so far. */
export interface Clock {
  readonly waitingS: number;
  readonly droppedS: number;
}

/** A clock at rest. */
export const NEW_CLOCK: Clock = { waitingS: 0, droppedS: 0 };

/**
 * Passes real time on: whole ticks to run now, the rest waits. A stall drops time and never a tick.
 * @param realS real seconds since the last frame; below 0 counts as none
 * @param speed seconds of the dive for each real second
 */
export function passTime(
  clock: Clock,
  realS: number,
  speed: number,
): { readonly clock: Clock; readonly ticks: number } {
  const real = realS > 0 ? realS : 0;
  const taken = Math.min(real, MOST_CAUGHT_UP_S);
  const waiting = clock.waitingS + taken * speed;
  // A billionth of a tick of grace: sixty frames of a sixtieth are a second.
  const ticks = Math.floor(waiting * TICKS_PER_S + 1e-6);
  return {
    clock: { waitingS: Math.max(0, waiting - ticks / TICKS_PER_S), droppedS: clock.droppedS + real - taken },
    ticks,
  };
}

/** How far the present stands between the last tick and the next one, 0…1. */
export function betweenTicks(clock: Clock): number {
  return Math.min(clock.waitingS * TICKS_PER_S, 1);
}
