import { rowsOf } from './goal.ts';
import type { HoldGoal } from './lesson.ts';
import type { MarkLimits } from './limits.ts';
import type { Term } from './mark-sum.ts';
import type { Trace } from './trace.ts';
import { plain } from './words.ts';

/** Where the credit for the fastest moment ends, as a multiple of the limit, where it begins. Practice. */
const PEAK_BAD_RATE = 25 / 9;
/** Excess climb: all credit and none, as multiples of what meets the task. Practice. */
const EXCESS_GOOD = 0.3;
const EXCESS_BAD = 5;
/** Pace of the way to the stop, as shares of the limit: all credit and none. @source US Navy Diving Manual rev. 7: 20 to 40 ft/min for 30, recalled; practice */
const PACE_GOOD = 0.5;
const PACE_BAD = 0.25;
const BEGINS_WITHIN_S = 10;
/** A way that is shorter has no pace to speak of, metres. */
const LEAST_WAY_M = 1;
/** The least excess that the scale is made of, metres: a limit of none would leave no scale. */
const LEAST_EXCESS_M = 0.1;

const DOWN = 'You did not come up in time: the metres that were not flown count as bad.';

/** Rows and limits of an ascent with a stop. */
export interface AscentTask {
  /** End of the hold below, or the start. */
  readonly fromRow: number;
  readonly stop: HoldGoal;
  readonly reachedRow: number;
  /** Time to come up from the stop, seconds. */
  readonly surfaceWithinS: number;
  readonly fastAscentIsThePoint: boolean;
}

/** Metres above the limit at which no credit is left. */
export function excessBadM({ excessM }: MarkLimits): number {
  return EXCESS_BAD * Math.max(excessM, LEAST_EXCESS_M);
}

/** Fastest moment at which no credit is left, m/min. */
export function peakBadMpmin({ ascentMpmin }: MarkLimits): number {
  return ascentMpmin * PEAK_BAD_RATE;
}

/** Terms of rate: what was climbed above the limit, and the fastest three seconds. */
export function rateTerms(
  limits: MarkLimits,
  excess: number,
  excessRow: number | null,
  peak: number,
  peakRow: number | null,
  stayed: boolean,
): Term[] {
  const { ascentMpmin, excessM } = limits;
  return [
    {
      id: 'excess-climb',
      label: `climbed above ${plain(ascentMpmin)} m/min, in all`,
      raw: excess,
      unit: 'm',
      good: EXCESS_GOOD * Math.max(excessM, LEAST_EXCESS_M),
      bad: excessBadM(limits),
      weight: 0.4,
      row: excessRow,
      reason: stayed
        ? DOWN
        : `In all you climbed ${excess.toFixed(1)} m further than ${plain(ascentMpmin)} m/min allows.`,
    },
    {
      id: 'peak-rate',
      label: 'fastest on the way up, over 3 s',
      raw: peak,
      unit: 'm/min',
      good: ascentMpmin,
      bad: peakBadMpmin(limits),
      weight: 0.05,
      row: peakRow,
      reason: stayed ? DOWN : `Your fastest three seconds were at ${peak.toFixed(1)} m/min.`,
    },
  ];
}

/** How fast the way up to the stop was on average: dawdling costs gas and time. A moment to begin with is let pass. */
export function paceTerm(
  { depthM }: Trace,
  { fromRow, reachedRow }: AscentTask,
  ascentMpmin: number,
  stayed: boolean,
): Term {
  const wayM = depthM[fromRow]! - depthM[reachedRow]!;
  const minutes = Math.max(reachedRow - fromRow - rowsOf(BEGINS_WITHIN_S), 1) / rowsOf(60);
  const mpmin = Math.min(Math.max(wayM, 0) / minutes, ascentMpmin);
  return {
    id: 'pace',
    label: 'pace of the way to the stop',
    raw: mpmin,
    unit: 'm/min',
    good: ascentMpmin * PACE_GOOD,
    bad: ascentMpmin * PACE_BAD,
    weight: 0.05,
    ...(stayed ? { credit: 0 } : wayM < LEAST_WAY_M ? { credit: 1 } : {}),
    row: fromRow,
    reason: stayed ? DOWN : `On the way to the stop you made ${mpmin.toFixed(1)} m/min on average.`,
  };
}

/** The term of gas that was let in and out again. */
export function gasTerm(litres: number, row: number | null): Term {
  const reason = `${litres.toFixed(1)} L that you let in went out again.`;
  return {
    id: 'gas-to-and-fro',
    label: 'gas let in and out again',
    raw: litres,
    unit: 'L',
    good: 6,
    bad: 36,
    weight: 0.15,
    row,
    reason,
  };
}
