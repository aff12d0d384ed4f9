import { WishEvent } from '../panels/index.ts';
import { drawRunSheet, ringsOn, type StageView } from '../stage/index.ts';

/** Height of a row of water that is wished for, beside words of 16 pixels; lower on a phone, as a share of its width. */
const ROW_PX = 150;
const ROW_SHARE = 0.36;
/** A ring is met by a thumb, pixels from its middle. */
const REACH_PX = 26;

/** Draws the whole line of a dive, with what its debrief says of it, where the debrief has room for it. A ring goes to its moment. */
export function drawWholeRun(root: ParentNode, view: StageView, pixelRatio: number): void {
  const canvas = root.querySelector<HTMLCanvasElement>('debrief-sheet canvas');
  const widthPx = canvas?.parentElement?.clientWidth ?? 0;
  if (!canvas || widthPx <= 0) return;
  const textPx = parseFloat(getComputedStyle(canvas).fontSize);
  const rowPx = Math.min((ROW_PX * textPx) / 16, widthPx * ROW_SHARE);
  const sheet = drawRunSheet(canvas, view, { widthPx, rowPx, pixelRatio, textPx });
  canvas.onclick = ({ offsetX, offsetY }) => {
    const off = ({ x, y }: { readonly x: number; readonly y: number }) => Math.hypot(x - offsetX, y - offsetY);
    const nearest = ringsOn(view, sheet).sort((a, b) => off(a) - off(b))[0];
    if (nearest && off(nearest) <= REACH_PX) canvas.dispatchEvent(new WishEvent({ kind: 'moment', atS: nearest.atS }));
  };
}
