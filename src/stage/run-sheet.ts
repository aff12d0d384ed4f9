import { FACE } from './layout.ts';
import { TEXT_PX, drawBands, drawLine, drawRing, drawScale, drawTimes, drawWater } from './run-sheet-ink.ts';
import { AIR_M, GAP_PX, SCALE_PX, sheetOf, type Sheet, type SheetOptions } from './run-sheet-layout.ts';
import { drawOther, drawOtherWords } from './run-sheet-others.ts';
import { tokensOf } from './tokens.ts';
import type { StageView } from './view.ts';

/**
 * Draws a whole run on a canvas of the page, for looking back: recording, bands, limits, other lines, rings and theme of the view. Never squeezed:
 * 9 m/min stays 45°, and a long run goes on in the next row, like text. Sets the canvas to the size of the sheet.
 * @returns the sheet's measures, so that the page can place words beside a moment
 */
export function drawRunSheet(canvas: HTMLCanvasElement, view: StageView, options: SheetOptions): Sheet {
  const { widthPx, rowPx, pixelRatio } = options;
  const sheet = sheetOf(view, options);
  const { heightPx, rows, rowS, startS, pxPerM, pxPerS, deepestM } = sheet;
  canvas.width = Math.round(widthPx * pixelRatio);
  canvas.height = Math.round(heightPx * pixelRatio);
  canvas.style.setProperty('width', `${widthPx}px`);
  canvas.style.setProperty('height', `${heightPx}px`);
  const c = canvas.getContext('2d');
  if (!c) return sheet;
  const tokens = tokensOf(view.theme);
  const waterPx = widthPx - SCALE_PX;
  const { rings, branches: others = [], bookmarks = [] } = view;
  c.scale(pixelRatio, pixelRatio);
  c.font = `${TEXT_PX}px ${FACE.map((name) => (name.includes(' ') ? `'${name}'` : name)).join(', ')}`;
  for (let row = 0; row < rows; row++) {
    const fromS = startS + row * rowS;
    c.save();
    c.translate(0, row * (rowPx + GAP_PX));
    c.save();
    c.beginPath();
    c.rect(0, 0, waterPx, rowPx);
    c.clip();
    c.translate(0, AIR_M * pxPerM);
    drawWater(c, tokens, waterPx, deepestM * pxPerM);
    drawBands(c, view.bands, tokens, (s) => (s - fromS) * pxPerS, pxPerM, waterPx);
    for (const other of others) drawOther(c, other, tokens, sheet, fromS);
    drawLine(c, view, tokens, sheet, fromS);
    c.restore();
    drawScale(c, tokens, waterPx, deepestM, pxPerM);
    drawTimes(c, tokens, fromS, rowS, pxPerS, rowPx);
    c.restore();
  }
  for (const other of others) drawOtherWords(c, other, tokens, sheet, widthPx);
  for (const { atS, number } of bookmarks) drawRing(c, tokens, sheet.place(atS), number, true);
  for (const { atS, number } of rings) drawRing(c, tokens, sheet.place(atS), number);
  return sheet;
}
