import type { Rig } from '../diver/index.ts';
import { midBreathCl, ventFor, type Controls, type DiveState } from '../dive/index.ts';
import { handsOff } from './forecast.ts';

/**
 * What a diver can try, the gentlest first: nothing; the lungs alone; the fins alone; all valves that let gas into (or out of)
 * jacket, suit and loop; these three together; and besides these, all lead let go.
 */
export type Means = 'none' | 'breath' | 'fins' | 'gas' | 'all' | 'lead';

/** All means, the gentlest first. */
export const MEANS: readonly Means[] = ['none', 'breath', 'fins', 'gas', 'all', 'lead'];

/** Which way the trouble lies: 1 sinking, −1 rising. */
export type Way = 1 | -1;

/** Lung volumes between which a diver breathes when it matters, m³. */
export interface LungRange {
  readonly leastM3: number;
  readonly mostM3: number;
}

/** From nearly breathed out to nearly full: 1.8 and 5.8 L. Practice. */
export const USUAL_LUNGS: LungRange = { leastM3: 1.8e-3, mostM3: 5.8e-3 };
