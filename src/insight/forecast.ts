import type { Rig } from '../diver/index.ts';
import {
  TICKS_PER_S,
  advance,
  copyState,
  overwriteState,
  restingControls,
  type Controls,
  type DiveState,
} from '../dive/index.ts';

/** Seconds that the hands-off forecast looks ahead. */
export const FORECAST_S = 10;

/**
 * What a diver does who does nothing: no press, no fins; breathing, attitude, a held breath and the valve's setting go on. Water
 * that moves goes on as fast as it does now; that it will gain speed, or come to rest, nobody in it knows.
 */
export function handsOff(controls: Controls): Controls {
  const { lungCl, breath, attitude, pitchDeg, suitValveHPa, releaseMask, ledge, waterDownMmps } = controls;
  return { ...restingControls(lungCl), breath, attitude, pitchDeg, suitValveHPa, releaseMask, ledge, waterDownMmps };
}

/** Looks ahead from a moment; keeps one scratch state, so that asking ten times a second allocates nothing that grows. */
export class Forecast {
  readonly #rig: Rig;
  readonly #locked: boolean;
  #scratch: DiveState | undefined;

  constructor(rig: Rig, locked = false) {
    this.#rig = rig;
    this.#locked = locked;
  }

  /**
   * Depths after each whole second if nothing is done, metres: the first is now, the last ten seconds ahead. A hand on the
   * line stays on it: it was put there by one press and comes off by another.
   */
  depthsM(state: Readonly<DiveState>, controls: Controls): number[] {
    this.#scratch ??= copyState(state);
    const s = this.#scratch;
    overwriteState(s, state);
    const idle = { ...handsOff(controls), holdLine: controls.holdLine };
    const depths = [s.depthM];
    for (let second = 0; second < FORECAST_S; second++) {
      advance(this.#rig, s, idle, TICKS_PER_S, undefined, this.#locked);
      depths.push(s.depthM);
    }
    return depths;
  }
}
