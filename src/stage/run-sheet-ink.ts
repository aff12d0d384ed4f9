import { teethS } from './geometry.ts';
import type { Sheet } from './run-sheet-layout.ts';
import { PLACE_ALPHA, mixed, type Tokens } from './tokens.ts';
import type { StageView } from './view.ts';

/** What a row is drawn with: canvas, colours, the sheet, and when the row begins. The canvas' origin is depth 0 at the row's left. */
export interface RowPen {
  readonly c: CanvasRenderingContext2D;
  readonly tokens: Tokens;
  readonly sheet: Sheet;
  readonly fromS: number;
}

/** Place of a moment in its row, and of a depth, pixels. */
export function xOf({ sheet, fromS }: RowPen, s: number): number {
  return (s - fromS) * sheet.pxPerS;
}

/** Water of one row, its surface a flat line where it is in sight. */
export function drawWater({ c, tokens, sheet: { waterPx, topM, deepestM, pxPerM, unit } }: RowPen): void {
  const shade = c.createLinearGradient(0, 0, 0, deepestM * pxPerM);
  shade.addColorStop(0, cssOf(tokens.waterTop));
  shade.addColorStop(1, cssOf(mixed(tokens.waterTop, tokens.waterBottom, 0.8)));
  const top = Math.max(0, topM) * pxPerM;
  c.fillStyle = shade;
  c.fillRect(0, top, waterPx, deepestM * pxPerM - top);
  if (topM <= 0) stroke(c, tokens.ink, 1.5 * unit, [0, 0, waterPx, 0]);
}

/** Where to be, along one row: a light fill, firm edges, teeth inward every five seconds. */
export function drawBands(pen: RowPen, bands: StageView['bands']): void {
  const { c, tokens, sheet } = pen;
  const { pxPerM, pxPerS, waterPx, unit } = sheet;
  for (const { fromS, toS, topM, bottomM } of bands) {
    const endS = toS ?? pen.fromS + sheet.rowS;
    const [left, right] = [xOf(pen, fromS), Math.min(xOf(pen, endS), waterPx)];
    if (right <= 0 || left >= waterPx) continue;
    const [top, bottom] = [topM * pxPerM, bottomM * pxPerM];
    c.globalAlpha = PLACE_ALPHA;
    c.fillStyle = cssOf(tokens.place);
    c.fillRect(left, top, right - left, bottom - top);
    c.globalAlpha = 1;
    for (const y of [top, bottom]) stroke(c, tokens.placeWords, 2 * unit, [left, y, right, y]);
    const tooth = Math.min(5 * unit, (bottom - top) / 4);
    if (5 * pxPerS < 7 * unit) continue;
    for (const s of teethS(fromS, endS)) {
      const x = xOf(pen, s);
      stroke(c, tokens.placeWords, 1.5 * unit, [x, top, x, top + tooth]);
      stroke(c, tokens.placeWords, 1.5 * unit, [x, bottom, x, bottom - tooth]);
    }
  }
}

/** Metres that are further apart than so many heights of a word are halved. */
const HALVES_TEXT = 6;

/** Depths at the right of a row. */
export function drawScale({ c, tokens, sheet }: RowPen): void {
  const { waterPx: x, topM, deepestM, pxPerM, textPx, unit } = sheet;
  stroke(c, tokens.ink, 1.5 * unit, [x, topM * pxPerM, x, deepestM * pxPerM]);
  c.textAlign = 'left';
  c.textBaseline = 'middle';
  // Half metres where metres lie far apart, and the scale has room for their words.
  const steps = pxPerM > HALVES_TEXT * textPx && deepestM < 10 ? [0.5] : [1, 2, 5, 10];
  const everyM = steps.find((m) => m * pxPerM >= textPx * 1.2) ?? 20;
  for (let m = Math.ceil(Math.max(0, topM) / everyM) * everyM; m <= deepestM; m += everyM) {
    const y = m * pxPerM;
    stroke(c, tokens.ink, 1.5 * unit, [x, y, x + 5 * unit, y]);
    c.fillStyle = cssOf(tokens.ink);
    c.fillText(String(m), x + 8 * unit, y);
  }
}

/** Minutes and seconds since the start, below a row. */
export function drawTimes({ c, tokens, sheet, fromS }: RowPen, y: number): void {
  const { pxPerS, rowS, waterPx, textPx, unit } = sheet;
  const stepS = [5, 10, 20, 30, 60, 120, 300].find((s) => s * pxPerS >= textPx * 4) ?? 600;
  c.textAlign = 'center';
  c.textBaseline = 'top';
  for (let s = Math.ceil(fromS / stepS) * stepS; s < fromS + rowS; s += stepS) {
    const x = (s - fromS) * pxPerS;
    stroke(c, tokens.secondary, unit, [x, y, x, y + 4 * unit]);
    c.fillStyle = cssOf(tokens.secondary);
    const words = `${Math.floor(s / 60)}:${String(s % 60).padStart(2, '0')}`;
    if (x > textPx * 1.2 && x < waterPx) c.fillText(words, x, y + 5 * unit);
  }
}

/** Strokes a piece of line from one point to another, or through several. */
export function stroke(c: CanvasRenderingContext2D, colour: number, widthPx: number, points: readonly number[]): void {
  c.beginPath();
  for (let i = 0; i < points.length; i += 2) c.lineTo(points[i]!, points[i + 1]!);
  ink(c, colour, widthPx, 'butt');
}

/** Strokes the path. */
export function ink(c: CanvasRenderingContext2D, colour: number, widthPx: number, cap: CanvasLineCap): void {
  c.strokeStyle = cssOf(colour);
  c.lineWidth = widthPx;
  c.lineCap = cap;
  c.lineJoin = 'round';
  c.stroke();
}

/** A colour as style sheets write it. */
export function cssOf(colour: number): string {
  return `#${colour.toString(16).padStart(6, '0')}`;
}
