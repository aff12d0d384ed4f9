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
