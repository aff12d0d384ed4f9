import type { Instant, Rig } from '../diver/index.ts';
import { FLOATING_M, forceLine } from './force-line.ts';
import { heldBy, type LungRange } from './means.ts';
import { crossings } from './neutral.ts';

/**
 * Every stretch of the column, from floating (−0.6 m) to the bottom, in which some lung volume between two balances the diver,
 * shallow first. No chest gives more or less than its own. Jacket, suit and cylinders keep their gas; the lungs hold gas of the depth, as after a breath there. On the loop
 * there is none: breathing lifts nothing there. A sharp edge between waters that holds the diver at any such volume is a stretch of
 * no length.
 * @throws {RangeError} when the lung volumes are negative, not finite or the wrong way round
 */
export function breathReach(rig: Rig, at: Instant, lungs: LungRange): readonly (readonly [number, number])[] {
  const { leastM3, mostM3 } = lungs;
  if (!(leastM3 >= 0 && leastM3 <= mostM3 && mostM3 < Infinity))
    throw new RangeError(`breathReach: lungs must satisfy 0 <= leastM3 <= mostM3, got ${leastM3} and ${mostM3}`);
  if (!rig.lungs.open) return [];
  const full = turns(rig, at, heldBy(rig, mostM3));
  const empty = turns(rig, at, heldBy(rig, leastM3));
  // Within reach: full lungs lift, empty ones sink. Each neutral depth of either turns one of the two.
  let lifts = full.beginsUp;
  let sinks = !empty.beginsUp;
  const stretches: [number, number][] = [];
  let from: number | null = lifts && sinks ? FLOATING_M : null;
  let i = 0;
  let j = 0;
  while (i < full.depthsM.length || j < empty.depthsM.length) {
    const fullM = full.depthsM[i] ?? Infinity;
    const emptyM = empty.depthsM[j] ?? Infinity;
    const depthM = Math.min(fullM, emptyM);
    if (fullM === depthM) {
      lifts = !lifts;
      i++;
    }
    if (emptyM === depthM) {
      sinks = !sinks;
      j++;
    }
    const within = lifts && sinks;
    if (within) from ??= depthM;
    else if (from !== null) {
      stretches.push([from, depthM]);
      from = null;
    } else if (fullM === emptyM) stretches.push([depthM, depthM]);
  }
  if (from !== null) stretches.push([from, rig.bottomM]);
  return stretches;
}

/** The stretch of {@link breathReach} that holds the diver's depth, or the nearest one; null where there is none. */
export function breathReachAt(rig: Rig, at: Instant, lungs: LungRange): readonly [number, number] | null {
  let nearest: readonly [number, number] | null = null;
  let nearestM = Infinity;
  for (const stretch of breathReach(rig, at, lungs)) {
    const awayM = Math.max(stretch[0] - at.depthM, at.depthM - stretch[1], 0);
    if (awayM < nearestM) {
      nearest = stretch;
      nearestM = awayM;
    }
  }
  return nearest;
}

/** Depths at which the net force with so much in the lungs changes its direction, and whether it begins upward. */
function turns(rig: Rig, at: Instant, lungM3: number): { readonly depthsM: number[]; readonly beginsUp: boolean } {
  const line = forceLine(rig, at, lungM3, FLOATING_M, rig.bottomM, true);
  const found = crossings(line, 0);
  // Where it never changes, the line still stands at the bottom and tells.
  return { depthsM: found.map(({ depthM }) => depthM), beginsUp: found[0]?.falls ?? line.netN >= 0 };
}
