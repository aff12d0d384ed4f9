import { cssOf, ink, stroke } from './run-sheet-ink.ts';
import type { Sheet } from './run-sheet-layout.ts';
import { HOLLOW_PX, outOf } from './run-sheet-line.ts';
import type { Tokens } from './tokens.ts';
import type { StageView } from './view.ts';

/** A ring where it stands on the sheet, and the point on the line that it is about, pixels. */
export interface PlacedRing {
  readonly number: number;
  readonly atS: number;
  readonly row: number;
  readonly x: number;
  readonly y: number;
  /** Below the top of its row. */
  readonly inRowY: number;
  readonly lineX: number;
  readonly lineY: number;
}

/** Radius of a ring at unit size. */
export const RING_PX = 11;

/**
 * Rings of a view, each on its line; where one would cover another, or a part of the line that is hollow, it stands aside, rather off
 * the line.
 */
export function ringsOn(view: StageView, sheet: Sheet): PlacedRing[] {
  const { rings } = view;
  const { unit, waterPx, heightPx, rows, headPx, depthPx } = sheet;
  const { line, hollow } = alongOf(view, sheet);
  const r = (RING_PX + 1) * unit;
  const pitchPx = heightPx / rows;
  const placed: PlacedRing[] = [];
  for (const { atS, number } of rings) {
    const { x: lineX, y: lineY } = sheet.place(atS);
    const row = Math.min(rows - 1, Math.floor(lineY / pitchPx));
    const [top, bottom] = [headPx + r, headPx + depthPx - r];
    const at = (dx: number, dy: number) => ({
      x: Math.min(Math.max(lineX + dx * r, r), waterPx - r),
      inRowY: Math.min(Math.max(lineY - row * pitchPx + dy * r, top), bottom),
    });
    const places = AWAY.map(([dx, dy]) => at(dx, dy));
    const isOff = (points: readonly Point[], far: number, { x, inRowY }: InRow) =>
      points.every((one) => one.row !== row || Math.hypot(one.x - x, one.inRowY - inRowY) >= far);
    const free = places.filter((place) => isOff(placed, 2 * r - 0.01, place));
    const open = free.filter((place) => isOff(hollow, r + (HOLLOW_PX[0] / 2) * unit, place));
    const onLine = open.find((place) => place === places[0]);
    const { x, inRowY } =
      onLine ?? open.find((place) => isOff(line, r + 2 * unit, place)) ?? open[0] ?? free[0] ?? places[0]!;
    placed.push({ number, atS, row, x, y: row * pitchPx + inRowY, inRowY, lineX, lineY });
  }
  return placed;
}

interface InRow {
  readonly x: number;
  readonly inRowY: number;
}

interface Point extends InRow {
  readonly row: number;
}

/** Points along the line, twice a second, and those where it is hollow. */
function alongOf({ recording, evidence }: StageView, sheet: Sheet): { line: Point[]; hollow: Point[] } {
  const { startS, heightPx, rows } = sheet;
  const pitchPx = heightPx / rows;
  const pointAt = (atS: number): Point => {
    const { x, y } = sheet.place(atS);
    const row = Math.min(rows - 1, Math.floor(y / pitchPx));
    return { row, x, inRowY: y - row * pitchPx };
  };
  const between = (fromS: number, toS: number) =>
    Array.from({ length: Math.ceil((toS - fromS) / 0.5) + 1 }, (_, i) => pointAt(Math.min(fromS + i / 2, toS)));
  const endS = startS + (recording.rows - 1) / 10;
  return { line: between(startS, endS), hollow: outOf(evidence).flatMap(({ fromS, toS }) => between(fromS, toS)) };
}

/** Where a ring may stand, in radii from its point, the nearest first; to the right before the left. */
const AWAY: readonly (readonly [number, number])[] = Array.from({ length: 31 * 17 }, (_, i) => {
  const [across, down] = [(i % 31) - 15, Math.floor(i / 31) - 8];
  return [across, down] as const;
}).sort(([ax, ay], [bx, by]) => Math.hypot(ax, ay) - Math.hypot(bx, by) || bx - ax);

/** Moments that the debrief speaks of; one that stands aside has a hair to its point. */
export function drawRings(c: CanvasRenderingContext2D, tokens: Tokens, view: StageView, sheet: Sheet): void {
  const { unit } = sheet;
  const all = ringsOn(view, sheet);
  for (const { x, y, lineX, lineY } of all) stroke(c, tokens.ink, 1.5 * unit, [lineX, lineY, x, y]);
  for (const { x, y, number } of all)
    numbered(c, tokens, unit, number, () => c.arc(x, y, RING_PX * unit, 0, 2 * Math.PI), x, y);
}

/** A person's own marks are squares on a stem. */
export function drawBookmarks(c: CanvasRenderingContext2D, tokens: Tokens, view: StageView, sheet: Sheet): void {
  const { unit } = sheet;
  const half = RING_PX * 0.9 * unit;
  for (const { atS, number } of view.bookmarks ?? []) {
    const { x, y: lineY } = sheet.place(atS);
    const y = lineY - 26 * unit;
    stroke(c, tokens.ink, 2 * unit, [x, lineY, x, y]);
    numbered(c, tokens, unit, number, () => c.rect(x - half, y - half, 2 * half, 2 * half), x, y);
  }
}

function numbered(
  c: CanvasRenderingContext2D,
  tokens: Tokens,
  unit: number,
  number: number,
  outline: () => void,
  x: number,
  y: number,
): void {
  c.beginPath();
  outline();
  c.fillStyle = cssOf(tokens.paper);
  c.fill();
  ink(c, tokens.ink, 2 * unit, 'butt');
  c.fillStyle = cssOf(tokens.ink);
  c.textAlign = 'center';
  c.textBaseline = 'middle';
  c.fillText(String(number), x, y + 0.5);
}
