import { TICKS_PER_ROW, TICKS_PER_S } from '../dive/index.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { BranchLine } from './view.ts';

const ROWS_PER_S = TICKS_PER_S / TICKS_PER_ROW;
/** Rows drawn beyond what is in sight are taken in such steps, so that a picture serves for some seconds. */
const STEP_ROWS = 40;

/** Row of a recording at or before a moment. */
function rowAtS({ recording }: BranchLine, s: number): number {
  return Math.floor((s - recording.startTick / TICKS_PER_S) * ROWS_PER_S + 1e-6);
}

/** First and last row of a line to draw: from its knot to its end, as far as the frame shows it. */
export function branchRows(branch: BranchLine, frame: Frame): readonly [from: number, to: number] {
  const leftS = frame.nowS - frame.nowX / frame.pxPerS;
  const rightS = frame.nowS + (frame.waterPx - frame.nowX) / frame.pxPerS;
  const down = (row: number) => Math.floor(row / STEP_ROWS) * STEP_ROWS;
  const from = Math.max(0, rowAtS(branch, branch.fromS), down(rowAtS(branch, leftS)));
  const to = Math.min(branch.recording.rows - 1, down(rowAtS(branch, rightS)) + STEP_ROWS);
  return [from, to];
}

/** The last row of a line that stands within the water that is shown; undefined where none of it does. */
export function lastSeen(branch: BranchLine, frame: Frame): number | undefined {
  const [from, to] = branchRows(branch, frame);
  for (let row = to; row >= from; row--) {
    const x = secondsToX(frame, branch.recording.startTick / TICKS_PER_S + row / ROWS_PER_S);
    const y = depthToY(frame, branch.recording.at(row, 'depthM'));
    if (x >= 0 && x <= frame.waterPx - 4 && y >= 0 && y <= frame.heightPx) return row;
  }
  return undefined;
}

/** The dashes of a line of seconds and depths, as x, y pairs: so long, so far apart, in seconds, counted from its beginning. */
export function dashesOf(
  seconds: readonly number[],
  depthsM: readonly number[],
  onS: number,
  offS: number,
): number[][] {
  const out: number[][] = [];
  let dash: number[] | null = null;
  seconds.forEach((s, i) => {
    if (s % (onS + offS) < onS) {
      if (!dash) out.push((dash = []));
      dash.push(s, depthsM[i]!);
    } else dash = null;
  });
  return out.filter((points) => points.length > 2);
}
