/** Lengths of time that can be looked at, seconds, and the whole dive. */
const SPANS_S = [10, 20, 30, 60, 120, 300, 600, 1800];
/** A dive that has hardly begun is drawn as if it were so long, seconds: a line must not race across the paper. */
const LEAST_S = 30;

/** What part of the dive is looked at, and where it is read. */
export interface TraceWindow {
  /** null: the whole dive. */
  readonly spanS: number | null;
  /** The reading line; null: the end of the dive, wherever that is by now. */
  readonly readS: number | null;
  /** Left edge where it is held, seconds; null: the end of the dive stands at the right edge. */
  readonly fromS: number | null;
}

/** The whole dive, read at its end. */
export const WHOLE: TraceWindow = { spanS: null, readS: null, fromS: null };

/** Edges of the window, seconds. */
export function edgesOf({ spanS, fromS }: TraceWindow, startS: number, endS: number): readonly [number, number] {
  if (spanS === null) return [startS, Math.max(endS, startS + LEAST_S)];
  const left = Math.max(startS, Math.min(fromS ?? Infinity, endS - spanS));
  return [left, left + spanS];
}

/** The window with its reading line moved to a moment, and after it if it would leave the paper; null lets it follow the dive. */
export function readAt(window: TraceWindow, s: number | null, startS: number, endS: number): TraceWindow {
  if (s === null) return { ...window, readS: null, fromS: null };
  const readS = Math.min(Math.max(s, startS), endS);
  const [left, right] = edgesOf(window, startS, endS);
  const fromS = readS < left ? readS : readS > right ? readS - (right - left) : left;
  return { ...window, readS, fromS: window.spanS === null ? null : fromS };
}

/** The next shorter or longer look, around the reading line where there is one. */
export function zoomed(window: TraceWindow, closer: boolean, startS: number, endS: number): TraceWindow {
  const [left, right] = edgesOf(window, startS, endS);
  const now = right - left;
  const spanS = closer
    ? (SPANS_S.filter((span) => span < now).at(-1) ?? SPANS_S[0]!)
    : (SPANS_S.find((span) => span > now && span < endS - startS) ?? null);
  const { readS } = window;
  if (spanS === null || readS === null) return { ...window, spanS, fromS: null };
  // What is read keeps its place on the paper.
  const share = (readS - left) / now;
  return { spanS, readS, fromS: Math.max(startS, readS - share * spanS) };
}

/** Whether a shorter or longer look is left. */
export function canZoom(window: TraceWindow, closer: boolean, startS: number, endS: number): boolean {
  const [left, right] = edgesOf(window, startS, endS);
  return closer ? right - left > SPANS_S[0]! : window.spanS !== null;
}

/** Moments to be written under a window, seconds: whole steps, at most so many. */
export function timeTicks([left, right]: readonly [number, number], most: number): number[] {
  const steps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600];
  const step = steps.find((one) => (right - left) / one <= most) ?? steps.at(-1)!;
  const first = Math.ceil(left / step - 1e-9);
  return Array.from({ length: Math.floor(right / step + 1e-9) - first + 1 }, (_, i) => (first + i) * step);
}
