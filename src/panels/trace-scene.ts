import type { TraceData } from './trace-data.ts';
import type { TraceKind } from './trace-kinds.ts';
import { lanesOf, type Lane } from './trace-lanes.ts';
import { marksOf, paperOf, type Paper, type PaperMark } from './trace-paper.ts';
import type { TracesView } from './trace-view.ts';
import { edgesOf, type TraceWindow } from './trace-window.ts';

/** Narrower than this, or lower for each trace, pixels, one trace is shown at a time. */
const NARROW_PX = 600;
const LOW_PX = 22;

/** Words on a page, pixels; for a class a fortieth of the picture's height, so that the smallest keep a fiftieth. */
const TEXT_PX = 13;
const CLASS_SHARE = 40;

/** All that follows from a view, a window and a size of paper. */
export interface TraceScene {
  readonly paper: Paper;
  /** The one trace that there is room for; null where all that were chosen have it. */
  readonly one: TraceKind | null;
  readonly lanes: readonly Lane[];
  readonly edges: readonly [number, number];
  /** Row of the reading line; −1 where the dive is followed. */
  readonly row: number;
  readonly marks: readonly PaperMark[];
}

/** What is to be drawn where. @param oneAt which trace is shown where there is room for one */
export function sceneOf(
  view: TracesView,
  data: TraceData,
  window: TraceWindow,
  at: {
    readonly size: readonly [widthPx: number, heightPx: number];
    readonly pageHeightPx: number;
    readonly oneAt: number;
  },
): TraceScene {
  const [widthPx, heightPx] = at.size;
  const paper = paperOf(widthPx, heightPx, view.projector ? Math.max(16, at.pageHeightPx / CLASS_SHARE) : TEXT_PX);
  const small = widthPx > 0 && (widthPx < NARROW_PX || paper.bottom - paper.top < LOW_PX * view.chosen.length);
  const one = small ? view.kinds[at.oneAt % view.kinds.length]! : null;
  const kinds = one ? [one] : view.kinds.filter(({ id }) => view.chosen.includes(id));
  const lanes = lanesOf(kinds, data, view.units, { top: paper.top, height: Math.max(paper.bottom - paper.top, 1) });
  const edges = edgesOf(window, ...endsOf(data));
  const row = window.readS === null ? -1 : data.rowAt(window.readS);
  return { paper, one, lanes, edges, row, marks: marksOf({ paper, lanes, data, view, edges, readRow: row }) };
}

/** First and last moment of a dive, seconds. */
export function endsOf(data: TraceData): [number, number] {
  return data.rows > 0 ? [data.secondsAt(0), data.secondsAt(data.rows - 1)] : [0, 0];
}
