import type { LineEvidence } from '../lesson/index.ts';
import { calmed, limitsAt, stretchesOf } from './line.ts';
import { ink, xOf, type RowPen } from './run-sheet-ink.ts';
import type { StageView } from './view.ts';

/** A change between single and doubled that lasts less is not seen as one, seconds. */
const SHORT_S = 0.45;
/** Widths at unit size: the line, doubled, and hollow with the paper in it. */
export const LINE_PX = 2.8;
const DOUBLED_PX = 4.6;
export const HOLLOW_PX = [10, 6.4] as const;

/** A piece of the line, seconds and metres in turn. */
type Points = readonly number[];

/**
 * The line of one row, and a second either side, which the row's edge cuts. Too steep: two strokes side by side with open ends.
 * Out of the band: hollow, wide, with round closed ends, like a bead; too steep there, the two strokes lie in it.
 */
export function drawLine(pen: RowPen, view: StageView): void {
  const { c, tokens, sheet } = pen;
  const { unit, startS, rowS } = sheet;
  const [fromS, toS] = [pen.fromS - 1, pen.fromS + rowS + 1];
  const { seconds, depths } = pointsOf(view, startS, fromS, toS);
  const stretches = calmed(
    stretchesOf(seconds, depths, (s) => limitsAt(view, s)),
    SHORT_S,
  );
  const trace = (points: Points, colour: number, widthPx: number, cap: CanvasLineCap) => {
    c.beginPath();
    for (let i = 0; i < points.length; i += 2) c.lineTo(xOf(pen, points[i]!), points[i + 1]! * sheet.pxPerM);
    ink(c, colour, widthPx * unit, cap);
  };
  const wide = (doubled: boolean) => (doubled ? DOUBLED_PX : LINE_PX);
  for (const { points, doubled } of stretches) trace(points, tokens.paper, wide(doubled) + 1.6, 'round');
  for (const { points, doubled } of stretches) trace(points, tokens.ink, wide(doubled), 'round');
  for (const { points, doubled } of stretches) if (doubled) trace(points, tokens.paper, 1.8, 'butt');
  const hollow = outOf(view.evidence).flatMap((one) => {
    const cut = pointsOf(view, startS, Math.max(one.fromS, fromS), Math.min(one.toS, toS));
    return cut.seconds.length > 1 ? [cut] : [];
  });
  const joined = ({ seconds, depths }: Line) => seconds.flatMap((s, i) => [s, depths[i]!]);
  for (const one of hollow) trace(joined(one), tokens.ink, HOLLOW_PX[0], 'round');
  for (const one of hollow) {
    trace(joined(one), tokens.paper, HOLLOW_PX[1], 'round');
    const within = calmed(
      stretchesOf(one.seconds, one.depths, (s) => limitsAt(view, s)),
      SHORT_S,
    );
    for (const { points, doubled } of within) {
      if (!doubled) continue;
      trace(points, tokens.ink, 3.6, 'butt');
      trace(points, tokens.paper, 1.4, 'butt');
    }
  }
}

interface Line {
  readonly seconds: readonly number[];
  readonly depths: readonly number[];
}

function pointsOf({ recording }: StageView, startS: number, fromS: number, toS: number): Line {
  const seconds: number[] = [];
  const depths: number[] = [];
  const last = Math.min(recording.rows - 1, Math.ceil((toS - startS) * 10 - 1e-6));
  for (let row = Math.max(0, Math.floor((fromS - startS) * 10 + 1e-6)); row <= last; row++) {
    seconds.push(startS + row / 10);
    depths.push(recording.at(row, 'depthM'));
  }
  return { seconds, depths };
}

/** Where the line is hollow: holds of several marks may share a stretch. */
export function outOf(evidence: LineEvidence | undefined): { readonly fromS: number; readonly toS: number }[] {
  return (evidence?.holds ?? []).flatMap(({ out }) => out);
}
