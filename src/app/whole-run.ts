import { drawRunSheet, type StageView } from '../stage/index.ts';

/** Height of a row of water, pixels: on a phone two fit above the first mark. */
const ROW_PX = 150;

/** Draws the whole line of a dive, bands and limits with it, where the debrief has room for it. */
export function drawWholeRun(root: ParentNode, view: StageView, pixelRatio: number): void {
  const canvas = root.querySelector<HTMLCanvasElement>('debrief-sheet canvas');
  const widthPx = canvas?.parentElement?.clientWidth ?? 0;
  if (canvas && widthPx > 0) drawRunSheet(canvas, view, { widthPx, rowPx: ROW_PX, pixelRatio });
}
