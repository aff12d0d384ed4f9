import { airAt } from './camera.ts';
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
  { fromM, overS, lines, pin, slope }: Omit<Asked, 'chosen'>,
  depthM: number,
  { widthPx, heightPx, coveredPx, projector }: Room,
): number {
  const { waterPx, nowX, textPx, leastDiverPx } = styleOf(widthPx, heightPx, 1, 'light', projector);
  const pxPerS = Math.max(waterPx - nowX - LETTERS_EM * textPx, 1) / (overS ?? 1);
  const forTime = overS === null ? 0 : (heightPx * SECONDS_PER_METRE_LAW) / pxPerS;
  const depths = [
    fromM,
    ...lines.flatMap(({ depthsM }) => depthsM),
    ...(pin ? [pin.leastM, pin.mostM] : []),
    ...(slope ? [0] : []),
  ];
  const aboveM = depthM - Math.min(...depths) + AROUND_M;
  const belowM = Math.max(...depths) - depthM + AROUND_M;
  const share = Math.max((heightPx - coveredPx) / heightPx, 0.2);
  // The diver is kept in the middle of what is not covered, or nearer the surface, where the air ends that is shown.
  let belowAirM = belowM + depthM;
  for (let i = 0; i < 4; i++) belowAirM = belowM + depthM + airAt((heightPx * share) / belowAirM, leastDiverPx);
  return Math.max(forTime, Math.max(2 * aboveM, Math.min(2 * belowM, belowAirM)) / share);
}
