import type { PredictStep } from './predict.ts';

/**
 * How a number looks in the water while it is set: a depth that has no moment as a mark on the depth scale, a rate as the slope of a
 * line from a depth on, up or down. Nothing of the model is in it.
 */
export type ShownNumber =
  | { readonly as: 'depth'; readonly fromM: number | null }
  | { readonly as: 'slope'; readonly fromM: number; readonly way: -1 | 1 };

/** What is drawn of a number that is asked for; null where a number is neither a depth nor a rate up or down. */
export function shownNumber({ shape, topic, atM }: PredictStep): ShownNumber | null {
  if (shape === 'place' && (topic === 'stops-at' || topic === 'breath-reaches-to'))
    return { as: 'depth', fromM: atM ?? null };
  if (shape === 'number' && topic === 'lost-lead-rate') return { as: 'slope', fromM: atM ?? 0, way: -1 };
  return null;
}
