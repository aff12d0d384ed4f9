import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Ledge } from './view.ts';
import type { Box } from './words-place.ts';

/** Where a ledge stands on the page: in the picture, or pinned to the edge behind which it lies. */
export interface LedgePlace {
  readonly x: number;
  readonly y: number;
  readonly off: 'later' | 'deeper' | 'shallower' | null;
}

/** The place of a ledge; what lies later than the paper reaches, deeper or shallower, comes to that edge. */
export function ledgePlace(ledge: Ledge, frame: Frame, within: Box): LedgePlace {
  const x = secondsToX(frame, ledge.atS);
  const y = depthToY(frame, ledge.depthM);
  const off = y > within.bottom ? 'deeper' : y < within.top ? 'shallower' : x > within.right ? 'later' : null;
  const clamp = (at: number, low: number, high: number) => Math.min(Math.max(at, low), high);
  return { x: clamp(x, within.left, within.right), y: clamp(y, within.top, within.bottom), off };
}

/** The words of a ledge: as given, and when, where the picture cannot show it. */
export function ledgeWords(ledge: Ledge, { off }: LedgePlace, nowS: number): string {
  return off === null ? ledge.words : `${ledge.words}, in ${Math.max(1, Math.round(ledge.atS - nowS))} s`;
}

/**
 * Ledges whose words share a plate, since they stand too close for each to have its own: their numbers, from the top down. Those
 * behind the same edge stand together too.
 */
export function groupsOf(places: readonly LedgePlace[], closePx: number): number[][] {
  const order = places.map((_, i) => i).sort((a, b) => places[a]!.y - places[b]!.y);
  const groups: number[][] = [];
  for (const i of order) {
    const { off, x, y } = places[i]!;
    const group = groups.find((members) =>
      members.some((j) => {
        const other = places[j]!;
        if (off !== other.off) return false;
        return off !== null || (y - other.y < closePx && Math.abs(x - other.x) < 6 * closePx);
      }),
    );
    if (group) group.push(i);
    else groups.push([i]);
  }
  return groups;
}

/** The place of a group: the middle of its ledges, and how far they reach to both sides of it. */
export function middleOf(places: readonly LedgePlace[]): LedgePlace & { readonly spread: number } {
  const xs = places.map(({ x }) => x);
  const ys = places.map(({ y }) => y);
  const middle = (of: readonly number[]) => (Math.min(...of) + Math.max(...of)) / 2;
  return { x: middle(xs), y: middle(ys), off: places[0]!.off, spread: (Math.max(...xs) - Math.min(...xs)) / 2 };
}

/** Whether another ledge stands so close to one that their shelves would run into each other: where the diver comes from, or beyond. */
export interface Crowd {
  readonly before: boolean;
  readonly beyond: boolean;
}

/** @param way 1 where a diver is caught who sinks, -1 where one who rises */
export function crowdOf(places: readonly LedgePlace[], i: number, way: 1 | -1, closePx: number): Crowd {
  const { x, y, off } = places[i]!;
  const crowd = { before: false, beyond: false };
  places.forEach((other, j) => {
    if (j === i || off !== null || other.off !== null || Math.abs(other.x - x) > 2.5 * closePx) return;
    const deeperPx = (other.y - y) * way || j - i;
    if (Math.abs(other.y - y) < closePx) crowd[deeperPx > 0 ? 'beyond' : 'before'] = true;
  });
  return crowd;
}
