/** Height of the top of the head above mid-chest when upright, metres. Common practice, no source. */
export const TOP_UPRIGHT_M = 0.65;
/** Height of the back above mid-chest when level, metres. Common practice, no source. */
export const TOP_LEVEL_M = 0.25;
/** Upright with mid-chest shallower than this, mouth and chin are clear of the water, metres. */
export const HEAD_CLEAR_M = 0.41;
/** With mid-chest shallower than this the head breaks the surface, metres. */
export const HEAD_OUT_M = 0.6;

const HEAD_M = 0.24;
const HEAD_M3 = 4.5e-3;
const SHOULDERS_M = 0.16;
const SHOULDERS_M3 = 6e-3;
const TRUNK_M2 = 0.03 / 0.5;
const LEVEL_M2 = 0.4;

/**
 * Volume of the diver above the waterline, in m³, before it is limited to the whole: upright the head (4.5 L over the top
 * 0.24 m), neck and shoulders (6 L over 0.16 m), then 30 L over 0.5 m; level 0.4 m² × height; between them by sin² of pitch.
 * Common practice, no source; exactly rounded operations only.
 * @param pitchSin sine of pitch, −1…1
 */
export function emergedM3(depthM: number, pitchSin: number): number {
  const upright = pitchSin * pitchSin;
  const level = TOP_LEVEL_M - depthM;
  const height = TOP_UPRIGHT_M - depthM;
  if (height <= 0) return 0;
  const share = level > 0 ? (1 - upright) * level * LEVEL_M2 : 0;
  if (height <= HEAD_M) return share + upright * height * (HEAD_M3 / HEAD_M);
  const belowHead = height - HEAD_M;
  if (belowHead <= SHOULDERS_M) return share + upright * (HEAD_M3 + belowHead * (SHOULDERS_M3 / SHOULDERS_M));
  return share + upright * (HEAD_M3 + SHOULDERS_M3 + (belowHead - SHOULDERS_M) * TRUNK_M2);
}

/** Depth of the reference point above which the mouth is out of the water, metres: 0.47 upright, −0.05 level, face down. */
export function mouthClearM(pitchSin: number, pitchCos: number): number {
  return 0.47 * pitchSin - 0.05 * pitchCos;
}
