import type { FinStretch, HeldPlace, RateGap } from '../lesson/index.ts';
import { cssOf, stroke, xOf, type RowPen } from './run-sheet-ink.ts';

/** A bracket that is shorter on paper is left out, pixels at unit size. */
const LEAST_GAP_PX = 5;
/** The strip of fins is as high as the hardest kick, or as this, newtons; less than so many pixels would not be seen. */
const LEAST_FULL_N = 40;
const LEAST_FIN_PX = 2;

/** The steepest line allowed from where it was left, dashed, and the metres beyond it in a bracket. */
export function drawGap(pen: RowPen, { fromS, fromM, toS, allowedM, reachedM }: RateGap): void {
  const { c, tokens, sheet } = pen;
  const { pxPerM, unit } = sheet;
  if (Math.abs(allowedM - reachedM) * pxPerM < LEAST_GAP_PX * unit) return;
  const [x, end] = [xOf(pen, fromS), xOf(pen, toS)];
  const [begin, allowed, reached] = [fromM, allowedM, reachedM].map((depthM) => depthM * pxPerM);
  c.setLineDash([6 * unit, 4 * unit]);
  stroke(c, tokens.paper, 3.4 * unit, [x, begin!, end, allowed!]);
  stroke(c, tokens.ink, 1.8 * unit, [x, begin!, end, allowed!]);
  c.setLineDash([]);
  const hook = 5 * unit;
  const bracket = [end + hook * 0.4, reached!, end + hook, reached!, end + hook, allowed!, end + hook * 0.4, allowed!];
  stroke(c, tokens.paper, 4 * unit, bracket);
  stroke(c, tokens.ink, 2 * unit, bracket);
}

/** A thin bracket pair about the depth that was asked for, as far off as the line typically is. */
export function drawSpread(pen: RowPen, { fromS, toS, atM, rmsM }: HeldPlace): void {
  const { c, tokens, sheet } = pen;
  const { pxPerM, unit } = sheet;
  const [left, right] = [xOf(pen, fromS), xOf(pen, toS)];
  const hook = Math.min(7 * unit, rmsM * pxPerM);
  for (const way of [-1, 1]) {
    const y = (atM + way * rmsM) * pxPerM;
    const points = [left, y - way * hook, left, y, right, y, right, y - way * hook];
    stroke(c, tokens.paper, 3 * unit, points);
    stroke(c, tokens.ink, 1.4 * unit, points);
  }
}

/** Thrust of fins about a level hair: as long as it lasted, as high as it was beside the hardest kick, up above and down below. */
export function drawFins(pen: RowPen, fins: readonly FinStretch[], top: number): void {
  const { c, tokens, sheet } = pen;
  const { waterPx, finPx, unit, textPx } = sheet;
  const middle = top + finPx / 2;
  const full = finPx / 2 - 2 * unit;
  const fullN = Math.max(LEAST_FULL_N, ...fins.map(({ upN }) => Math.max(...upN.map(Math.abs))));
  stroke(c, tokens.secondary, unit, [0, middle, waterPx, middle]);
  c.fillStyle = cssOf(tokens.ink);
  for (const { fromS, upN } of fins)
    for (const [i, thrustN] of upN.entries()) {
      const x = xOf(pen, fromS + i / 10);
      if (x < -1 || x > waterPx) continue;
      const high = Math.min(full, Math.max(LEAST_FIN_PX * unit, (Math.abs(thrustN) / fullN) * full));
      c.fillRect(x, thrustN > 0 ? middle - high : middle, Math.max(sheet.pxPerS / 10, 1.2 * unit), high);
    }
  c.textAlign = 'left';
  c.textBaseline = 'middle';
  c.fillStyle = cssOf(tokens.ink);
  c.fillText('fins', waterPx + 2 * unit, middle + textPx * 0.05);
}

/** Words with a halo of paper. */
export function haloed(
  { c, tokens, sheet }: Pick<RowPen, 'c' | 'tokens' | 'sheet'>,
  words: string,
  x: number,
  y: number,
): void {
  c.textAlign = 'left';
  c.textBaseline = 'middle';
  c.beginPath();
  c.lineJoin = 'round';
  c.lineWidth = 5 * sheet.unit;
  c.strokeStyle = cssOf(tokens.paper);
  c.strokeText(words, x, y);
  c.fillStyle = cssOf(tokens.ink);
  c.fillText(words, x, y);
}
