import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { Column } from './trace-thinned.ts';

/** One line: its values by row, on a scale of its own or of others. */
export interface PlotLine {
  readonly scale: string;
  readonly values: Column;
  readonly colour: string;
  readonly widthPx: number;
  readonly dash: readonly number[];
}

/** The ground between two lines, by their places in the list: the one of larger values first. */
export interface PlotGround {
  readonly between: readonly [number, number];
  readonly colour: string;
}

/** What is drawn. `rebuild` names all of it but values, scales and size: where it stays, the plot stays. */
export interface Plotted {
  readonly rebuild: string;
  readonly timeS: readonly number[];
  readonly lines: readonly PlotLine[];
  readonly grounds: readonly PlotGround[];
  readonly time: readonly [number, number];
  /** Values at the lower and upper edge of each scale; turned round where larger stands lower. */
  readonly scales: readonly {
    readonly name: string;
    readonly range: readonly [number, number];
    readonly down: boolean;
  }[];
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Lines over time on a canvas: the only place that knows the plotting library. It draws what it is told and decides nothing. */
export class TracePlot {
  readonly #host: HTMLElement;
  #plot: uPlot | null = null;
  #built = '';
  /** What the scales are to be: the library asks for it by itself whenever it draws. */
  #ranges: Record<string, readonly [number, number]> = {};

  constructor(host: HTMLElement) {
    this.#host = host;
  }

  get canvas(): HTMLCanvasElement | null {
    return this.#plot?.ctx.canvas ?? null;
  }

  draw(plotted: Plotted): void {
    const { timeS, lines, time, scales, widthPx, heightPx } = plotted;
    this.#ranges = { x: time, ...Object.fromEntries(scales.map(({ name, range }) => [name, range])) };
    const data = [timeS, ...lines.map(({ values }) => values)] as unknown as uPlot.AlignedData;
    if (!this.#plot || plotted.rebuild !== this.#built) {
      this.#plot?.destroy();
      this.#plot = byProcessor(() => new uPlot(this.#options(plotted), data, this.#host));
      this.#built = plotted.rebuild;
      return;
    }
    const plot = this.#plot;
    if (plot.width !== widthPx || plot.height !== heightPx) plot.setSize({ width: widthPx, height: heightPx });
    plot.batch(() => {
      plot.setData(data, false);
      plot.setScale('x', { min: time[0], max: time[1] });
      for (const { name, range } of scales) plot.setScale(name, { min: range[0], max: range[1] });
    });
  }

  destroy(): void {
    this.#plot?.destroy();
    this.#plot = null;
  }

  #options({ lines, grounds, scales, widthPx, heightPx }: Plotted): uPlot.Options {
    const range = (name: string) => (): uPlot.Range.MinMax => [...this.#ranges[name]!];
    return {
      width: widthPx,
      height: heightPx,
      padding: [0, 0, 0, 0],
      legend: { show: false },
      cursor: { show: false },
      axes: [{ show: false }, ...scales.map(({ name }) => ({ show: false, scale: name }))],
      scales: {
        x: { time: false, range: range('x') },
        ...Object.fromEntries(scales.map(({ name, down }) => [name, { range: range(name), dir: down ? -1 : 1 }])),
      },
      series: [
        {},
        ...lines.map(({ scale, colour, widthPx: width, dash }) => ({
          scale,
          stroke: colour,
          width,
          dash: [...dash],
          cap: 'butt' as const,
          // Whole pixels would make steps of a slow way down.
          pxAlign: 0,
          points: { show: false },
        })),
      ],
      bands: grounds.map(({ between, colour }) => ({
        series: [between[0] + 1, between[1] + 1] as [number, number],
        fill: colour,
      })),
    };
  }
}

/**
 * A plot on a canvas that the processor draws: without a graphics card a page that lets the browser choose is ten times slower. The
 * library takes no such wish, so its canvas is given it while it is made.
 */
function byProcessor<T>(make: () => T): T {
  const canvas = HTMLCanvasElement.prototype;
  const usual = Object.getOwnPropertyDescriptor(canvas, 'getContext')!;
  const getContext = usual.value as (kind: string, wish?: object) => RenderingContext | null;
  const value = function (this: HTMLCanvasElement, kind: string) {
    return getContext.call(this, kind, { willReadFrequently: true });
  };
  Object.defineProperty(canvas, 'getContext', { ...usual, value });
  try {
    return make();
  } finally {
    Object.defineProperty(canvas, 'getContext', usual);
  }
}
