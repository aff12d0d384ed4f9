import type { Means } from './means.ts';

/** What works over a stretch of depth: the gentlest means, and which danger it answers: −1 rising, 0 none, 1 sinking. */
export interface MapBand {
  readonly fromM: number;
  readonly toM: number;
  readonly means: Means | 'lost';
  readonly way: -1 | 0 | 1;
}

/**
 * What lies across a recovery map: gas of jacket, suit or loop, as m³ at one standard atmosphere, so that it stays while nobody
 * presses; kilograms of lead more than now; or vertical speed, m/s, down positive. Values ascend.
 */
export type MapAcross =
  | { readonly kind: 'gas'; readonly of: 'jacket' | 'suit' | 'loop'; readonly values: readonly number[] }
  | { readonly kind: 'lead'; readonly values: readonly number[] }
  | { readonly kind: 'speed'; readonly values: readonly number[] };

/** The gentlest means that still works, over depth and one other quantity. */
export interface RecoveryMap {
  readonly across: MapAcross;
  readonly topM: number;
  readonly bottomM: number;
  /** Where the diver is on it. */
  readonly here: { readonly across: number; readonly depthM: number };
  /** For each value across: bands from top to bottom without gaps. */
  readonly columns: readonly (readonly MapBand[])[];
}
