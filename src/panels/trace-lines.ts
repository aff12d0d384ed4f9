import type { TraceData } from './trace-data.ts';
import { paperRange, type Lane } from './trace-lanes.ts';
import type { Paper } from './trace-paper.ts';
import type { PlotLine, Plotted } from './trace-plot.ts';
import type { TraceThinned } from './trace-thinned.ts';

/** Colours of the style sheet by what they stand for. */
export type Colours = Readonly<
  Record<'ink' | 'secondary' | 'rule' | 'gas' | 'gas-words' | 'place' | 'place-words' | 'paper' | 'second', string>
>;

/** How much of a green ground covers the paper, as a hexadecimal pair: an eighth. */
const GROUND = '20';
/** A second diver's line: dash and dot, as in the water. */
const DASH_DOT = [10, 4, 2.5, 4];

/**
 * The lines of the chosen lanes: ink with dashes of their own; what is gas is amber between two edges of ink; where to be is
 * green; a hair for each limit; and the line of depth is doubled where it was steeper than allowed.
 */
export function linesOf(
  lanes: readonly Lane[],
  data: TraceData,
  thinned: TraceThinned,
  { paper, colours, edges, thick }: { paper: Paper; colours: Colours; edges: readonly [number, number]; thick: number },
): Plotted {
  const lines: PlotLine[] = [];
  const grounds: Plotted['grounds'][number][] = [];
  const { ink, gas } = colours;
  const { timeS, column } = thinned.of(data, edges);
  for (const { kind } of lanes) {
    const { id, dash } = kind;
    const line = (values: PlotLine['values'], colour: string, widthPx: number, dashed: readonly number[] = []) =>
      lines.push({ scale: id, values, colour, widthPx: widthPx * thick, dash: dashed.map((px) => px * thick) });
    if (id === 'depth') {
      line(column('bandTop'), colours['place-words'], 1.5);
      line(column('bandBottom'), colours['place-words'], 1.5);
      grounds.push({ between: [lines.length - 1, lines.length - 2], colour: `${colours.place}${GROUND}` });
    }
    if (id === 'speed') {
      line(column('upLimit'), ink, 1, [6, 4]);
      line(column('downLimit'), ink, 1, [6, 4]);
    }
    if (id === 'force') line(column('momentForce'), colours.secondary, 1);
    const values = column(id);
    if (kind.gas) {
      line(values, ink, 5, dash);
      line(values, gas, 2.5, dash);
    } else line(values, ink, 2.4, dash);
    const second = id === 'depth' ? 'secondDepth' : id === 'speed' ? 'secondSpeed' : null;
    if (second && data.secondRows > 0) line(column(second), colours.second, 1.8, DASH_DOT);
    if (id === 'depth') {
      const fast = column('tooFast');
      line(fast, ink, 7);
      line(fast, colours.paper, 2.6);
    }
  }
  const { left, right, top, bottom } = paper;
  return {
    rebuild: JSON.stringify([lanes.map(({ kind }) => kind.id), colours, thick, lines.length]),
    timeS,
    lines,
    grounds,
    time: edges,
    scales: lanes.map((lane) => ({
      name: lane.kind.id,
      range: paperRange(lane, top, bottom - top),
      down: lane.kind.down,
    })),
    widthPx: Math.round(right - left),
    heightPx: Math.round(bottom - top),
  };
}
