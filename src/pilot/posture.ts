/** Shallower than this a diver hangs upright, deeper he lies level, metres; the two are apart so that nobody dithers. Practice. */
const UPRIGHT_ABOVE_M = 0.9;
const LEVEL_BELOW_M = 1.1;

/**
 * Pitch that a dive from the surface is held at, in degrees: 90 upright above 1 m, 0 level below, between 0.9 and 1.1 m as
 * before.
 */
export function divePosture(depthM: number, beforeDeg: number): 0 | 90 {
  if (depthM < UPRIGHT_ABOVE_M) return 90;
  if (depthM > LEVEL_BELOW_M) return 0;
  return beforeDeg >= 45 ? 90 : 0;
}
