/** Pixels a second for each pixel a metre: 9 m/min (0.15 m/s) is 45° everywhere. */
export const SECONDS_PER_METRE_LAW = 0.15;
/** Length of a force's arrow, pixels a kgf at unit size. */
export const PX_PER_KGF = 46;
/** Length of the diver with fins, metres, and where mid-chest lies from the tip of the fins. */
export const DIVER_LENGTH_M = 2.2;
/** Teeth of a band stand every so many seconds of time. */
export const TOOTH_S = 5;

/** One frame's map from the dive to the page, CSS pixels. Depth grows downward, time to the right. */
export interface Frame {
  /** Water alone: from x = 0 to the scale. */
  readonly waterPx: number;
  readonly heightPx: number;
  readonly nowX: number;
  readonly nowS: number;
  readonly pxPerM: number;
  readonly pxPerS: number;
  /** Depth at the top edge, metres; negative where air shows. */
  readonly topM: number;
  /** How many times its true size the diver is drawn. */
  readonly enlarged: number;
}

/** Pixels a second at a scale of pixels a metre. */
export function pxPerSOf(pxPerM: number): number {
  return pxPerM * SECONDS_PER_METRE_LAW;
}

/** Height of a depth in the frame, pixels from the top. */
export function depthToY(frame: Frame, depthM: number): number {
  return (depthM - frame.topM) * frame.pxPerM;
}

/** Depth of a height in the frame, metres: the inverse of {@link depthToY}. */
export function yToDepth(frame: Frame, y: number): number {
  return frame.topM + y / frame.pxPerM;
}

/** Place of a moment in the frame, pixels from the left. */
export function secondsToX(frame: Frame, s: number): number {
  return frame.nowX + (s - frame.nowS) * frame.pxPerS;
}

/** Depth at the bottom edge, metres. */
export function bottomOf(frame: Frame): number {
  return frame.topM + frame.heightPx / frame.pxPerM;
}

/** Whether a stretch of the track is steeper than what is allowed; speed positive down, a limit of null allows all. */
export function isTooSteep(speedMps: number, upMps: number | null, downMps: number | null): boolean {
  const limit = speedMps < 0 ? upMps : downMps;
  return limit !== null && Math.abs(speedMps) > limit + 1e-9;
}

/** Height of a press, pixels a litre at unit size, the least that is seen and the most that hides nothing. */
const PX_PER_L = 14;
const PRESS_PX = [3, 30] as const;

/** How far a press stands from the line: as high as the litres, lower where the whole column is shown and the line is small. */
export function pressHeightPx(volumeM3: number, unit: number, pxPerM: number): number {
  const [least, most] = PRESS_PX;
  return Math.min(Math.max(volumeM3 * 1e3 * pxPerLitre(unit, pxPerM), least), most) * unit;
}

/** Whether a press let through more than it is high: it is drawn with a cut, as an arrow is. */
export function isPressCut(volumeM3: number, unit: number, pxPerM: number): boolean {
  return volumeM3 * 1e3 * pxPerLitre(unit, pxPerM) > PRESS_PX[1];
}

function pxPerLitre(unit: number, pxPerM: number): number {
  return PX_PER_L * Math.min(Math.max(pxPerM / (60 * unit), 0.4), 1);
}

/** Moments at which the teeth of a band stand, between its ends. */
export function teethS(fromS: number, toS: number): number[] {
  const count = Math.max(0, Math.ceil((toS - fromS) / TOOTH_S - 1e-9) - 1);
  return Array.from({ length: count }, (_, i) => fromS + (i + 1) * TOOTH_S);
}

/** The least step of the enlargements that makes the diver at least so many pixels long; less where he would cover his line. */
export function enlargementOf(pxPerM: number, leastPx: number): number {
  const steps = [1, 1.5, 2, 3, 4, 6, 8];
  const wantedPx = DIVER_LENGTH_M * pxPerM * 4 < leastPx ? leastPx * 0.6 : leastPx;
  return steps.find((step) => step * DIVER_LENGTH_M * pxPerM >= wantedPx) ?? 10;
}

/** Where a direction of so many metres a second leads from the chest, as a unit vector on the page. */
export function slopeOf(frame: Frame, speedMps: number): { readonly x: number; readonly y: number } {
  const down = speedMps * frame.pxPerM;
  const length = Math.hypot(frame.pxPerS, down);
  return { x: frame.pxPerS / length, y: down / length };
}
