/** What a task asks for at most or at least; marks scale with it. Rates in metres a minute. */
export interface MarkLimits {
  readonly ascentMpmin: number;
  /** Above this over 3 s an ascent is never more than not yet. */
  readonly fastMpmin: number;
  readonly descentMpmin: number;
  /** Metres that may be climbed above the ascent limit. */
  readonly excessM: number;
  /** Share of a hold to be spent in its band. */
  readonly inBandPercent: number;
  /** Thrust in a hold that is meant to be without fins, N s. */
  readonly finsNs: number;
}

/**
 * The usual ones. @source ascent 30 ft/min: US Navy Diving Manual rev. 7 §9-6.3, read; the others: practice
 */
export const USUAL_LIMITS: MarkLimits = {
  ascentMpmin: 9,
  fastMpmin: 18,
  descentMpmin: 18,
  excessM: 1,
  inBandPercent: 80,
  finsNs: 20,
};

/** What a lesson changes in the usual limits, and why; null: nothing. */
export type LessonLimits = { readonly change: Partial<MarkLimits>; readonly why: string } | null;

/** Least and greatest value of each limit. Practice. */
export const LIMIT_RANGES: Readonly<Record<keyof MarkLimits, readonly [least: number, most: number]>> = {
  ascentMpmin: [3, 18],
  fastMpmin: [6, 36],
  descentMpmin: [6, 36],
  excessM: [0, 4],
  inBandPercent: [10, 100],
  finsNs: [0, 500],
};

/** Their names, as a lesson file writes them. */
export const LIMIT_NAMES = Object.keys(LIMIT_RANGES) as readonly (keyof MarkLimits)[];

/**
 * The usual limits with some of them changed.
 * @throws {RangeError} naming the limit, what was found and what is allowed
 */
export function markLimits(changes: Partial<MarkLimits>): MarkLimits {
  const limits = { ...USUAL_LIMITS, ...changes };
  for (const name of LIMIT_NAMES) {
    const [least, most] = LIMIT_RANGES[name];
    const value = limits[name];
    if (!(value >= least && value <= most))
      throw new RangeError(`markLimits: ${name} must lie between ${least} and ${most}, got ${value}`);
  }
  if (limits.fastMpmin <= limits.ascentMpmin)
    throw new RangeError(
      `markLimits: fastMpmin must lie above ascentMpmin of ${limits.ascentMpmin}, got ${limits.fastMpmin}`,
    );
  return limits;
}
