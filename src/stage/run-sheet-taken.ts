import { TICKS_PER_ROW, TICKS_PER_S } from '../dive/index.ts';
import { depthAtM } from './line.ts';
import type { Sheet } from './run-sheet-layout.ts';
import { KNOT_PX } from './run-sheet-others.ts';
import { boxOf, pressesIn } from './run-sheet-presses.ts';
import { RING_PX, type PlacedRing } from './run-sheet-rings.ts';
import { crosses, type Box } from './words-place.ts';
import type { BranchLine, StageView } from './view.ts';

/** Words keep off so long a piece of the line at once, seconds. */
const PIECE_S = 1;

/** What stands in a row of a sheet, in pixels below its top. */
export interface Standing {
  /** What words keep off: the line, presses, rings, knots, bookmarks. */
  readonly boxes: readonly Box[];
  /** Thin lines, which words keep off where they can: brackets of what was found, and edges of places to be. */
  readonly edges: readonly Box[];
  /** Lines of others, likewise. */
  readonly others: readonly Box[];
  readonly within: Box;
}

/** What stands in a row already: its line, presses, rings, knots and bookmarks, edges of places to be, and the lines of others. */
export function standingIn(view: StageView, sheet: Sheet, rings: readonly PlacedRing[], row: number): Standing {
  const { unit, headPx, depthPx, waterPx, heightPx, rows, rowS, startS, pxPerS, pxPerM, topM } = sheet;
  const { recording, evidence, branches = [], bookmarks = [] } = view;
  const fromS = startS + row * rowS;
  const pitchPx = heightPx / rows;
  const x = (s: number) => (s - fromS) * pxPerS;
  const y = (depthM: number) => headPx + (depthM - topM) * pxPerM;
  const boxes = piecesOf(recording, startS, sheet, row);
  for (const { outline } of pressesIn(view, sheet, fromS)) {
    const { left, top, right, bottom } = boxOf(outline);
    boxes.push(grown(left, top + y(0), right, bottom + y(0), unit));
  }
  for (const ring of rings)
    if (ring.row === row) boxes.push(grown(ring.x, ring.inRowY, ring.x, ring.inRowY, (RING_PX + 1) * unit));
  const marked = [
    ...bookmarks.map(({ atS }) => ({ ...sheet.place(atS), up: 26 * unit, half: RING_PX * unit })),
    ...branches
      .filter(({ dashed }) => !dashed)
      .map((one) => ({ ...sheet.place(one.fromS, one.recording), up: 0, half: KNOT_PX })),
  ];
  for (const { x: left, y: top, up, half } of marked)
    if (Math.floor(top / pitchPx) === row)
      boxes.push(grown(left, top - row * pitchPx - up, left, top - row * pitchPx, half));
  const edges: Box[] = [];
  for (const { fromS: from, toS: to, atM, bandM, rmsM } of evidence?.holds ?? [])
    for (const off of [-bandM, -rmsM, rmsM, bandM]) edges.push(grown(x(from), y(atM + off), x(to), y(atM + off), unit));
  for (const { toS, allowedM, reachedM } of evidence?.gaps ?? []) {
    const [high, low] = [Math.min(allowedM, reachedM), Math.max(allowedM, reachedM)];
    edges.push(grown(x(toS), y(high), x(toS) + 6 * unit, y(low), unit));
  }
  return {
    boxes,
    edges,
    others: branches.flatMap((one) => piecesOf(one.recording, one.fromS, sheet, row)),
    within: { left: 0, top: Math.max(headPx, y(0)) + 2 * unit, right: waterPx, bottom: headPx + depthPx },
  };
}

/** A line as boxes, a piece each, as far as it stands in a row. @param beginS where it begins */
function piecesOf(recording: BranchLine['recording'], beginS: number, sheet: Sheet, row: number): Box[] {
  const { unit, headPx, rowS, startS, pxPerS, pxPerM, topM } = sheet;
  const fromS = startS + row * rowS;
  const x = (s: number) => (s - fromS) * pxPerS;
  const y = (depthM: number) => headPx + (depthM - topM) * pxPerM;
  const lastS = (recording.startTick + (recording.rows - 1) * TICKS_PER_ROW) / TICKS_PER_S;
  const endS = Math.min(fromS + rowS, lastS);
  const boxes: Box[] = [];
  for (let s = Math.max(fromS, beginS); s < endS; s += PIECE_S) {
    const ys = [s, s + PIECE_S / 2, s + PIECE_S].map((one) => y(depthAtM(recording, Math.min(one, endS))));
    boxes.push(grown(x(s), Math.min(...ys), x(s + PIECE_S), Math.max(...ys), 4 * unit));
  }
  return boxes;
}

/** Whether a box lies within the water of its row. */
export function isWithin(box: Box, { within }: Standing): boolean {
  return box.left >= within.left && box.right <= within.right && box.top >= within.top && box.bottom <= within.bottom;
}

/** Whether a box is off some others. */
export function isOff(box: Box, others: readonly Box[]): boolean {
  return !others.some((one) => crosses(box, one));
}

/** A box with room about it. */
export function grown(left: number, top: number, right: number, bottom: number, by: number): Box {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}
