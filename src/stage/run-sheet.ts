import { FACE } from './layout.ts';
import { drawFins, drawGap, drawSpread } from './run-sheet-evidence.ts';
import { cssOf, drawBands, drawScale, drawTimes, drawWater, type RowPen } from './run-sheet-ink.ts';
import { sheetOf, type Sheet, type SheetOptions } from './run-sheet-layout.ts';
import { drawLine } from './run-sheet-line.ts';
import { drawOther, drawKnot } from './run-sheet-others.ts';
import { drawPresses } from './run-sheet-presses.ts';
import { drawBookmarks, drawRings } from './run-sheet-rings.ts';
import { drawTasks } from './run-sheet-tasks.ts';
import { drawSheetWords } from './run-sheet-words.ts';
import { tokensOf } from './tokens.ts';
import type { StageView } from './view.ts';

/**
 * Draws a whole run on a canvas of the page, for looking back: recording, bands, limits, what marks found, other lines, rings and
 * theme of the view. Never squeezed: 9 m/min stays 45°, and a long run goes on in the next row, like text. Sets the canvas to the
 * size of the sheet.
 * @returns the sheet's measures, so that the page can place words beside a moment
 */
export function drawRunSheet(canvas: HTMLCanvasElement, view: StageView, options: SheetOptions): Sheet {
  const sheet = sheetOf(view, options);
  const { widthPx, heightPx, rows, textPx } = sheet;
  canvas.width = Math.round(widthPx * options.pixelRatio);
  canvas.height = Math.round(heightPx * options.pixelRatio);
  canvas.style.setProperty('width', `${widthPx}px`);
  canvas.style.setProperty('height', `${heightPx}px`);
  const c = canvas.getContext('2d');
  if (!c) return sheet;
  const tokens = tokensOf(view.theme);
  const { branches: others = [] } = view;
  c.scale(options.pixelRatio, options.pixelRatio);
  c.font = `500 ${textPx}px ${FACE.map((name) => (name.includes(' ') ? `'${name}'` : name)).join(', ')}`;
  c.fillStyle = cssOf(tokens.paper);
  c.fillRect(0, 0, widthPx, heightPx);
  for (let row = 0; row < rows; row++) drawRow({ c, tokens, sheet, fromS: sheet.startS + row * sheet.rowS }, view, row);
  drawSheetWords({ c, tokens, sheet }, view);
  for (const other of others) drawKnot(c, other, tokens, sheet);
  drawBookmarks(c, tokens, view, sheet);
  drawRings(c, tokens, view, sheet);
  return sheet;
}

function drawRow(pen: RowPen, view: StageView, row: number): void {
  const { c, tokens, sheet } = pen;
  const { heightPx, rows, waterPx, headPx, depthPx, finPx, topM, pxPerM } = sheet;
  const { evidence, branches: others = [] } = view;
  c.save();
  c.translate(0, (row * heightPx) / rows);
  if (evidence) drawTasks(pen, evidence.tasks, row);
  c.save();
  c.beginPath();
  c.rect(0, headPx, waterPx, depthPx);
  c.clip();
  c.translate(0, headPx - topM * pxPerM);
  drawWater(pen);
  drawBands(pen, view.bands);
  for (const held of evidence?.holds ?? []) drawSpread(pen, held);
  for (const other of others) drawOther(c, other, tokens, sheet, pen.fromS);
  drawLine(pen, view);
  drawPresses(pen, view);
  for (const gap of evidence?.gaps ?? []) drawGap(pen, gap);
  c.restore();
  c.save();
  c.translate(0, headPx - topM * pxPerM);
  drawScale(pen);
  c.restore();
  if (finPx > 0) drawFins(pen, evidence!.fins, headPx + depthPx);
  drawTimes(pen, headPx + depthPx + finPx);
  c.restore();
}
