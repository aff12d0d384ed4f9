import { TICKS_PER_ROW, TICKS_PER_S } from '../dive/index.ts';
import { dashesOf } from './branch-rows.ts';
import { depthAtM } from './line.ts';
import { cssOf, ink } from './run-sheet-ink.ts';
import type { Sheet } from './run-sheet-layout.ts';
import type { Tokens } from './tokens.ts';
import type { BranchLine } from './view.ts';

const ROW_S = TICKS_PER_ROW / TICKS_PER_S;
/** Radius of a knot. */
export const KNOT_PX = 9;

/** The part of another line that stands in one row: a branch thin and solid from its knot on, a ghost a long dash. */
export function drawOther(
  c: CanvasRenderingContext2D,
  { recording, fromS, dashed }: BranchLine,
  tokens: Tokens,
  { pxPerS, pxPerM, rowS }: Sheet,
  rowFromS: number,
): void {
  const beginsS = recording.startTick / TICKS_PER_S;
  const originS = Math.max(fromS, beginsS);
  const endS = beginsS + (recording.rows - 1) * ROW_S;
  // A second either side, which the row's edge cuts.
  const leftS = Math.max(originS, rowFromS - 1);
  const rightS = Math.min(endS, rowFromS + rowS + 1);
  if (rightS <= leftS) return;
  const seconds: number[] = [];
  const depths: number[] = [];
  for (let i = Math.floor((leftS - originS) / ROW_S); originS + i * ROW_S <= rightS + 1e-6; i++) {
    seconds.push(i * ROW_S);
    depths.push(depthAtM(recording, originS + i * ROW_S));
  }
  const path = (xs: readonly number[]) => {
    c.beginPath();
    for (let i = 0; i < xs.length; i += 2) c.lineTo((originS + xs[i]! - rowFromS) * pxPerS, xs[i + 1]! * pxPerM);
  };
  if (dashed) {
    for (const dash of dashesOf(seconds, depths, 18 / pxPerS, 9 / pxPerS)) {
      path(dash);
      ink(c, tokens.ink, 1.8, 'butt');
    }
    return;
  }
  const points = seconds.flatMap((s, i) => [s, depths[i]!]);
  path(points);
  ink(c, tokens.paper, 2.8, 'round');
  path(points);
  ink(c, tokens.ink, 1.3, 'round');
}

/** The lettered knot where a branch leaves the line. */
export function drawKnot(c: CanvasRenderingContext2D, branch: BranchLine, tokens: Tokens, sheet: Sheet): void {
  const { recording, fromS, letter, dashed } = branch;
  if (dashed) return;
  const { x, y } = sheet.place(fromS, recording);
  c.beginPath();
  c.arc(x, y, KNOT_PX, 0, 2 * Math.PI);
  c.fillStyle = cssOf(tokens.ink);
  c.fill();
  ink(c, tokens.paper, 1.5, 'butt');
  c.fillStyle = cssOf(tokens.paper);
  c.textAlign = 'center';
  c.textBaseline = 'middle';
  c.fillText(letter, x, y + 0.5);
}
