import { SECONDS_PER_METRE_LAW } from './geometry.ts';
import { styleOf } from './layout.ts';
import type { Asked } from './view.ts';

/** Space beyond the last dots for letters, in text sizes, and around the depths of all lines, metres. */
const LETTERS_EM = 3.3;
const AROUND_M = 0.8;

/** The page's part that a question shares with the picture. */
export interface Room {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Height at the foot that the page covers. */
  readonly coveredPx: number;
  readonly projector: boolean;
}

/** Water that has to be shown from top to bottom so that all that is asked stands in the picture, metres. */
export function metresFor(
  { fromM, overS, lines, pin }: Omit<Asked, 'chosen'>,
  depthM: number,
  { widthPx, heightPx, coveredPx, projector }: Room,
): number {
  const { waterPx, nowX, textPx } = styleOf(widthPx, heightPx, 1, 'light', projector);
  const pxPerS = Math.max(waterPx - nowX - LETTERS_EM * textPx, 1) / overS;
  const forTime = (heightPx * SECONDS_PER_METRE_LAW) / pxPerS;
  const depths = [fromM, ...lines.flatMap(({ depthsM }) => depthsM), ...(pin ? [pin.leastM, pin.mostM] : [])];
  const farM = Math.max(...depths.map((one) => Math.abs(one - depthM)));
  // The diver is kept in the middle of what is not covered; the air above the water needs no room below it.
  const share = Math.max((heightPx - coveredPx) / heightPx, 0.2);
  return Math.max(forTime, (2 * (farM + AROUND_M)) / share);
}
