import type { TraceData } from './trace-data.ts';
import type { TraceId, TraceKind } from './trace-kinds.ts';
import type { Units } from './settings.ts';

/** A strip of the paper with a scale of its own; its edges in pixels from the top, its values in shown units. */
export interface Lane {
  readonly kind: TraceKind;
  readonly top: number;
  readonly bottom: number;
  readonly low: number;
  readonly high: number;
}

/** Share of a lane that is kept free at its top and bottom, so that lines of two lanes never touch. */
const FREE = 0.1;

/** One lane below the other, as high as there is room for. */
export function lanesOf(
  kinds: readonly TraceKind[],
  data: TraceData,
  units: Units,
  { top, height }: { readonly top: number; readonly height: number },
): readonly Lane[] {
  const each = height / Math.max(kinds.length, 1);
  return kinds.map((kind, i) => {
    const [low, high] = scaleOf(kind, data, units);
    return { kind, top: top + i * each + each * FREE, bottom: top + (i + 1) * each - each * FREE, low, high };
  });
}

/** Where a value stands, pixels from the top. */
export function yIn({ kind, top, bottom, low, high }: Lane, value: number): number {
  const share = (value - low) / (high - low);
  return kind.down ? top + share * (bottom - top) : bottom - share * (bottom - top);
}

/** Values at the lower and the upper edge of the whole paper if the lane's scale went on to them. */
export function paperRange(lane: Lane, top: number, height: number): readonly [number, number] {
  const perPx = (lane.high - lane.low) / (lane.bottom - lane.top);
  const [above, below] = [lane.top - top, top + height - lane.bottom];
  return lane.kind.down
    ? [lane.low - above * perPx, lane.high + below * perPx]
    : [lane.low - below * perPx, lane.high + above * perPx];
}

/** Least scale, metric and imperial: a hair's breadth of change must not fill the paper. */
const LEAST: Readonly<Record<TraceId, Readonly<Record<Units, number>>>> = {
  depth: { metric: 2, imperial: 6 },
  speed: { metric: 6, imperial: 20 },
  force: { metric: 1, imperial: 2 },
  lungs: { metric: 1, imperial: 1 },
  loop: { metric: 1, imperial: 1 },
  jacket: { metric: 2, imperial: 2 },
  suit: { metric: 2, imperial: 2 },
  cylinder: { metric: 5, imperial: 100 },
};

/** Round ends of a scale that holds all values so far, and what they are held against. */
function scaleOf({ id }: TraceKind, data: TraceData, units: Units): readonly [number, number] {
  const [least, most] = data.extremes(id);
  const span = LEAST[id][units];
  if (id === 'depth') return rounded(Math.min(least, 0), Math.max(most, least + span, data.last('bandBottom')));
  if (id === 'speed') {
    const [up, down] = [data.last('upLimit'), data.last('downLimit')];
    return rounded(Math.min(least, up, -span / 2), Math.max(most, down, span / 2));
  }
  if (id === 'force') return rounded(Math.min(least, -span / 2), Math.max(most, span / 2));
  if (id === 'jacket' || id === 'suit') return rounded(0, Math.max(most, span));
  const off = Math.max(0, span - (most - least)) / 2;
  return rounded(Math.max(0, least - off), most + off);
}

/** The two ends moved outward to the next round number. */
export function rounded(low: number, high: number): readonly [number, number] {
  const rough = (high - low) / 6;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5].find((times) => times * ten >= rough) ?? 10) * ten;
  const clean = (value: number) => Number(value.toPrecision(12));
  return [clean(Math.floor(low / step + 1e-9) * step), clean(Math.ceil(high / step - 1e-9) * step)];
}
