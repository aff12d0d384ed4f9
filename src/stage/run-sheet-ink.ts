import { calmed, limitsAt, stretchesOf, type Stretch } from './line.ts';
import { AIR_M, type Sheet } from './run-sheet-layout.ts';
import { PLACE_ALPHA, mixed, type Tokens } from './tokens.ts';
import type { StageView } from './view.ts';

/** Size of numerals. */
export const TEXT_PX = 12;

/** Water of one row, its surface a flat line. */
export function drawWater(c: CanvasRenderingContext2D, tokens: Tokens, widthPx: number, heightPx: number): void {
  const shade = c.createLinearGradient(0, 0, 0, heightPx);
  shade.addColorStop(0, cssOf(tokens.waterTop));
  shade.addColorStop(1, cssOf(mixed(tokens.waterTop, tokens.waterBottom, 0.8)));
  c.fillStyle = shade;
  c.fillRect(0, 0, widthPx, heightPx + 100);
  stroke(c, tokens.ink, 1.5, [0, 0, widthPx, 0]);
}

/** Where to be, along one row. */
export function drawBands(
  c: CanvasRenderingContext2D,
  bands: StageView['bands'],
  tokens: Tokens,
  x: (s: number) => number,
  pxPerM: number,
  widthPx: number,
): void {
  for (const { fromS, toS, topM, bottomM } of bands) {
    const [left, right] = [x(fromS), toS === null ? widthPx : x(toS)];
    c.globalAlpha = PLACE_ALPHA;
    c.fillStyle = cssOf(tokens.place);
    c.fillRect(left, topM * pxPerM, right - left, (bottomM - topM) * pxPerM);
    c.globalAlpha = 1;
    for (const edgeM of [topM, bottomM]) stroke(c, tokens.placeWords, 2, [left, edgeM * pxPerM, right, edgeM * pxPerM]);
  }
}

/** The line of one row, and a second either side, which the row's edge cuts. */
export function drawLine(
  c: CanvasRenderingContext2D,
  view: StageView,
  tokens: Tokens,
  sheet: Sheet,
  fromS: number,
): void {
  const { pxPerS, pxPerM, rowS, startS } = sheet;
  const { recording } = view;
  const first = Math.max(0, Math.floor((fromS - startS - 1) * 10));
  const last = Math.min(recording.rows - 1, Math.ceil((fromS - startS + rowS + 1) * 10));
  const seconds: number[] = [];
  const depths: number[] = [];
  for (let row = first; row <= last; row++) {
    seconds.push(startS + row / 10);
    depths.push(recording.at(row, 'depthM'));
  }
  const stretches = calmed(
    stretchesOf(seconds, depths, (s) => limitsAt(view, s)),
    0.45,
  );
  const trace = ({ points }: Stretch, colour: number, widthPx: number, cap: CanvasLineCap) => {
    c.beginPath();
    for (let i = 0; i < points.length; i += 2) c.lineTo((points[i]! - fromS) * pxPerS, points[i + 1]! * pxPerM);
    ink(c, colour, widthPx, cap);
  };
  for (const stretch of stretches) trace(stretch, tokens.paper, stretch.doubled ? 5.6 : 4, 'round');
  for (const stretch of stretches) trace(stretch, tokens.ink, stretch.doubled ? 4 : 2.4, 'round');
  for (const stretch of stretches) if (stretch.doubled) trace(stretch, tokens.paper, 1.4, 'butt');
}

/** Depths at the right of a row. */
export function drawScale(
  c: CanvasRenderingContext2D,
  tokens: Tokens,
  x: number,
  deepestM: number,
  pxPerM: number,
): void {
  const zero = AIR_M * pxPerM;
  stroke(c, tokens.ink, 1.5, [x, 0, x, zero + deepestM * pxPerM]);
  c.textAlign = 'left';
  c.textBaseline = 'middle';
  const everyM = [1, 2, 5, 10].find((m) => m * pxPerM >= TEXT_PX * 1.3) ?? 20;
  for (let m = 0; m <= deepestM; m += everyM) {
    const y = zero + m * pxPerM;
    stroke(c, tokens.ink, 1.5, [x, y, x + 6, y]);
    c.fillStyle = cssOf(tokens.ink);
    c.fillText(String(m), x + 10, Math.max(y, TEXT_PX / 2));
  }
}

/** Minutes and seconds since the start, below a row. */
export function drawTimes(
  c: CanvasRenderingContext2D,
  tokens: Tokens,
  fromS: number,
  rowS: number,
  pxPerS: number,
  rowPx: number,
): void {
  const stepS = [10, 20, 30, 60, 120, 300].find((s) => s * pxPerS >= 56) ?? 600;
  c.textAlign = 'center';
  c.textBaseline = 'top';
  for (let s = Math.ceil(fromS / stepS) * stepS; s < fromS + rowS; s += stepS) {
    const x = (s - fromS) * pxPerS;
    stroke(c, tokens.secondary, 1, [x, rowPx, x, rowPx + 4]);
    c.fillStyle = cssOf(tokens.secondary);
    if (x > 18) c.fillText(`${Math.floor(s / 60)}:${String(s % 60).padStart(2, '0')}`, x, rowPx + 5);
  }
}

/** A moment that the debrief speaks of; a bookmark is a square on a stem. */
export function drawRing(
  c: CanvasRenderingContext2D,
  tokens: Tokens,
  { x, y: lineY }: { x: number; y: number },
  number: number,
  bookmark = false,
): void {
  const y = bookmark ? lineY - 22 : lineY;
  if (bookmark) stroke(c, tokens.ink, 2, [x, lineY, x, y]);
  c.beginPath();
  if (bookmark) c.rect(x - 8, y - 8, 16, 16);
  else c.arc(x, y, 9, 0, 2 * Math.PI);
  c.fillStyle = cssOf(tokens.paper);
  c.fill();
  c.lineWidth = 2;
  c.strokeStyle = cssOf(tokens.ink);
  c.stroke();
  c.fillStyle = cssOf(tokens.ink);
  c.textAlign = 'center';
  c.textBaseline = 'middle';
  c.fillText(String(number), x, y + 0.5);
}

/** Strokes a piece of line from one point to another. */
function stroke(
  c: CanvasRenderingContext2D,
  colour: number,
  widthPx: number,
  ends: readonly [number, number, number, number],
): void {
  c.beginPath();
  c.moveTo(ends[0], ends[1]);
  c.lineTo(ends[2], ends[3]);
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
