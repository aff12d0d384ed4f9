import { TICKS_PER_S } from '../dive/index.ts';
import { depthToY, type Frame } from './geometry.ts';
import { depthAtM } from './line.ts';
import type { StageView } from './view.ts';
import type { Box } from './words-place.ts';

/** Whether the line of the past passes through a box. */
export function crossesLine({ left, top, right, bottom }: Box, { recording, nowS }: StageView, frame: Frame): boolean {
  const startS = recording.startTick / TICKS_PER_S;
  for (let x = left; x <= Math.min(right, frame.nowX); x += 6) {
    const s = nowS + (x - frame.nowX) / frame.pxPerS;
    if (s < startS) continue;
    const y = depthToY(frame, depthAtM(recording, s));
    if (y > top - 4 && y < bottom + 4) return true;
  }
  return false;
}
