/** What a condition looks at, each with the unit of its limits. */
export const QUANTITIES = {
  depthM: 'm',
  /** Positive down. */
  speedMpmin: 'm/min',
  /** Net force with the lungs at mid-breath, kilograms of pull, up positive. */
  netKg: 'kg',
  /** Lift of the breath against mid-breath, kilograms of pull, up positive. */
  breathKg: 'kg',
  jacketL: 'L',
  suitL: 'L',
  /** Gas let into, and out of, jacket, suit and loop since the step began, or since something went wrong. */
  gasInL: 'L',
  gasOutL: 'L',
  /** Impulse of the fins, up and down, since then. */
  finsNs: 'N s',
  pitchDeg: '°',
  /** Where an upright diver's waterline is below the top of the head: 12 at the eyes, below 0 under water. */
  waterlineCm: 'cm',
  /** Lead taken off, or let go, since then. */
  leadOffKg: 'kg',
} as const;
export type Quantity = keyof typeof QUANTITIES;

/** A quantity between two limits; without one of them it is open that way. */
export interface Range {
  readonly what: Quantity;
  readonly least: number;
  readonly most: number;
  /** Mean over so many seconds before each row; 0 for the row itself. */
  readonly overS: number;
}

/** Comes into a range. */
export interface Reach extends Range {
  readonly do: 'reach';
}

/** Stays in a range for so long on end. */
export interface Hold extends Range {
  readonly do: 'hold';
  readonly forS: number;
}

/** Conditions to be met, in the given order or in any, each in its own time; then the step is over. */
export interface MeetGoal {
  readonly kind: 'meet';
  readonly each: readonly (Reach | Hold)[];
  readonly order: 'any' | 'given';
  readonly withinS: number;
  /** Depth that a simulated diver steers for. */
  readonly aimM: number;
  /** What is asked for, as the title says it. */
  readonly says: string;
}

/** What must be so during a whole step; `says` names it in the debrief. */
export type Keep = { readonly says: string } & (
  | (Range & { readonly do: 'stay' | 'never' | 'end' })
  /** Reached before, or not before, so many seconds of the step, or after what went wrong. */
  | (Range & { readonly do: 'before' | 'after'; readonly atS: number; readonly of: 'step' | 'event' })
  /** Presses that let gas in or out, at most so many, none longer. */
  | { readonly do: 'presses'; readonly most: number; readonly longestS: number }
  /** Changes of the lead that is worn, at most so many. */
  | { readonly do: 'lead-changes'; readonly most: number }
);
