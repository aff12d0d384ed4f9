import { TICKS_PER_S } from '../dive/index.ts';
import type { TraceData } from './trace-data.ts';
import { valueText } from './trace-kinds.ts';
import { yIn, type Lane } from './trace-lanes.ts';
import type { TracesView } from './trace-view.ts';
import { timeTicks } from './trace-window.ts';
import { markedEvents, momentText, traceEventWords, traceValueWords } from './trace-words.ts';
import { timeText } from './units.ts';

/** What a mark is drawn in: a token of the style sheet. */
export type Tone = 'ink' | 'secondary' | 'gas-words' | 'place-words' | 'rule';

/** What stands on the paper beside the lines; pixels from its top left. */
export type PaperMark =
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly words: string;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly tone: Tone;
      readonly bold: boolean;
      readonly px: number;
    }
  | {
      readonly kind: 'line';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
      readonly tone: Tone;
      readonly widthPx: number;
    }
  | { readonly kind: 'dot'; readonly x: number; readonly y: number; readonly px: number };

/** Places on the paper: the lines lie between the margins. */
export interface Paper {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Size of the words, pixels; those at the scales are a little smaller. */
  readonly textPx: number;
}

/** A paper of a size: margins as wide as the words that stand in them. */
export function paperOf(widthPx: number, heightPx: number, textPx: number): Paper {
  return {
    widthPx,
    heightPx,
    left: textPx * 4.4,
    right: widthPx - textPx * 9.6,
    top: textPx * 1.5,
    bottom: heightPx - textPx * 1.9,
    textPx,
  };
}

/** Where a moment stands, pixels from the left; and which moment stands where. */
export function xAt({ left, right }: Paper, [fromS, toS]: readonly [number, number], s: number): number {
  return left + ((s - fromS) / (toS - fromS)) * (right - left);
}
export function momentAt({ left, right }: Paper, [fromS, toS]: readonly [number, number], x: number): number {
  return fromS + ((x - left) / (right - left)) * (toS - fromS);
}

/** What the marks are made from. */
interface OnPaper {
  readonly paper: Paper;
  readonly lanes: readonly Lane[];
  readonly data: TraceData;
  readonly view: Pick<TracesView, 'units' | 'events' | 'projector'>;
  readonly edges: readonly [number, number];
  /** Row of the reading line; −1 where the dive is followed. */
  readonly readRow: number;
}

/** Everything but the lines: scales, words at their ends, time, events, the reading line. */
export function marksOf(on: OnPaper): readonly PaperMark[] {
  return [...timeMarks(on), ...on.lanes.flatMap((lane) => laneMarks(lane, on)), ...eventMarks(on), ...readingMarks(on)];
}

function timeMarks({ paper, edges, readRow, data }: OnPaper): PaperMark[] {
  const { left, right, bottom, textPx } = paper;
  const foot: PaperMark = { kind: 'line', from: [left, bottom], to: [right, bottom], tone: 'ink', widthPx: 1.5 };
  const readX = readRow < 0 ? -Infinity : xAt(paper, edges, data.secondsAt(readRow));
  const marks = timeTicks(edges, Math.max(2, Math.floor((right - left) / (textPx * 5)))).flatMap((s): PaperMark[] => {
    const x = xAt(paper, edges, s);
    const tick: PaperMark = { kind: 'line', from: [x, bottom], to: [x, bottom + 4], tone: 'ink', widthPx: 1.5 };
    // The reading line brings its own moment.
    if (Math.abs(x - readX) < textPx * 4) return [tick];
    return [tick, text(x, bottom + textPx * 1.3, timeText(s), 'middle', 'secondary', textPx * 0.9)];
  });
  return [foot, ...marks];
}

function laneMarks(lane: Lane, { paper, data, edges, view, readRow }: OnPaper): PaperMark[] {
  const { left, right, textPx } = paper;
  const { kind, top, bottom, low, high } = lane;
  const marks: PaperMark[] = [];
  const measure = { ...kind.shown[view.units], digits: high - low < 4 ? 1 : 0 };
  const small = textPx * 0.85;
  // Its ends by number where there is room for two, and a hair where neither up nor down is.
  const beside = (y: number, words: string) => marks.push(text(left - 6, y, words, 'end', 'secondary', small));
  const row = readRow >= 0 ? readRow : data.rows - 1;
  if (row < 0) return marks;
  const limits = kind.id === 'speed' ? limitsBeside(lane, data, row, small) : [];
  if (limits.length > 0) for (const [y, words] of limits) beside(y + small * 0.35, words);
  else if (bottom - top >= small * 2) {
    const [above, below] = kind.down ? [low, high] : [high, low];
    beside(top + small * 0.8, plainText(above, measure.digits));
    beside(bottom, valueText(below, measure));
  }
  const end = Math.min(edges[1], data.secondsAt(data.rows - 1));
  if (low < 0 && high > 0) {
    const y = yIn(lane, 0);
    marks.push({ kind: 'line', from: [left, y], to: [xAt(paper, edges, end), y], tone: 'rule', widthPx: 1 });
  }
  const value = data.valueOf(kind.id, row);
  const endRow = data.rowAt(end);
  const y = clamp(yIn(lane, data.valueOf(kind.id, endRow)), top + textPx * 0.5, bottom - textPx * 0.35);
  // A class gets no more numbers than the three beside the water, unless somebody reads.
  const words = view.projector && readRow < 0 ? kind.words : traceValueWords(kind, value, view.units);
  const x = Math.max(xAt(paper, edges, end) + 8, left + 8);
  marks.push(
    text(Math.min(x, right + 8), y + textPx * 0.35, words, 'start', kind.gas ? 'gas-words' : 'ink', textPx, true),
  );
  if (readRow >= 0 && data.secondsAt(readRow) >= edges[0] && data.secondsAt(readRow) <= edges[1])
    marks.push({ kind: 'dot', x: xAt(paper, edges, data.secondsAt(readRow)), y: yIn(lane, value), px: 4 });
  return marks;
}

/** The limits in force, by name where their hairs stand; between the two where there is no room for both. */
function limitsBeside(lane: Lane, data: TraceData, row: number, px: number): (readonly [y: number, words: string])[] {
  const [up, down] = (['upLimit', 'downLimit'] as const).map((name) => data.at(name, row));
  const said = (value: number) => Math.abs(value).toFixed(0);
  if (up !== null && down !== null && Math.abs(yIn(lane, up) - yIn(lane, down)) < px)
    return [[(yIn(lane, up) + yIn(lane, down)) / 2, `limits ${said(up)}, ${said(down)}`]];
  return [up, down].flatMap((value) => (value === null ? [] : [[yIn(lane, value), `limit ${said(value)}`] as const]));
}

/** A short stroke over the paper for each event, with its words where nothing stands yet. */
function eventMarks({ paper, view, edges }: OnPaper): PaperMark[] {
  const { left, right, top, textPx } = paper;
  const px = textPx * 0.85;
  const marks: PaperMark[] = [];
  let takenTo = left;
  let lastX = -Infinity;
  for (const event of markedEvents(view.events)) {
    const x = xAt(paper, edges, event.tick / TICKS_PER_S);
    if (x < left || x > right || x - lastX < 3) continue;
    lastX = x;
    marks.push({ kind: 'line', from: [x, top - px * 0.2], to: [x, top + 6], tone: 'ink', widthPx: 1.5 });
    const words = traceEventWords(event);
    const half = (words.length * px * 0.52) / 2;
    const middle = Math.max(left + half, Math.min(x, right - half));
    if (middle - half < takenTo + px * 0.6 && takenTo > left) continue;
    takenTo = middle + half;
    marks.push(text(middle, top - px * 0.5, words, 'middle', 'secondary', px));
  }
  return marks;
}

function readingMarks({ paper, data, edges, readRow }: OnPaper): PaperMark[] {
  if (readRow < 0) return [];
  const { left, right, top, bottom, textPx } = paper;
  const s = data.secondsAt(readRow);
  const x = xAt(paper, edges, s);
  if (x < left - 1 || x > right + 1) return [];
  return [
    { kind: 'line', from: [x, top], to: [x, bottom + 4], tone: 'ink', widthPx: 1.5 },
    text(x, bottom + textPx * 1.35, momentText(s), 'middle', 'ink', textPx, true),
  ];
}

function text(
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end',
  tone: Tone,
  px: number,
  bold = false,
): PaperMark {
  return { kind: 'text', x, y, words, anchor, tone, px, bold };
}

function plainText(value: number, digits: number): string {
  return value.toFixed(digits).replace('-', '−');
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), Math.max(least, most));
}
