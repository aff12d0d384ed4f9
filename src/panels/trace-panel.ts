import { html, nothing, svg } from 'lit';
import { CAUTION } from './cautions.ts';
import { Panel } from './panel.ts';
import { traceCsv } from './trace-csv.ts';
import { TraceData } from './trace-data.ts';
import { linesOf, type Colours } from './trace-lines.ts';
import { momentAt, type PaperMark } from './trace-paper.ts';
import { tracePicture } from './trace-picture.ts';
import { TracePlot } from './trace-plot.ts';
import { endsOf, sceneOf, type TraceScene } from './trace-scene.ts';
import { traceTable } from './trace-table.ts';
import { TraceThinned } from './trace-thinned.ts';
import { traceFiles, traceTools, type TraceTools } from './trace-tools.ts';
import type { TraceAsk, TracesView } from './trace-view.ts';
import { WHOLE, canZoom, readAt, zoomed, type TraceWindow } from './trace-window.ts';
import { momentText, rowWords } from './trace-words.ts';
import { wish } from './wish.ts';

/** How much heavier lines are for a class: edges of four pixels. */
const CLASS_THICK = 1.7;

/** What was recorded of a dive, on one time axis under the water: drawn, read at a line, in numbers, and as files. */
export class TracePanel extends Panel {
  static override properties = {
    traces: { attribute: false },
    window: { state: true },
    tableOpen: { state: true },
    oneAt: { state: true },
    size: { state: true },
  };
  declare traces: TracesView | null;
  declare window: TraceWindow;
  declare tableOpen: boolean;
  /** Which trace a small screen shows, by its place. */
  declare oneAt: number;
  declare size: readonly [widthPx: number, heightPx: number];
  readonly #data = new TraceData();
  readonly #thinned = new TraceThinned();
  readonly #resized = new ResizeObserver(([entry]) => {
    const { width, height } = entry!.contentRect;
    this.size = [Math.floor(width), Math.floor(height)];
  });
  #plot: TracePlot | null = null;
  #scene: TraceScene | null = null;
  #watched: Element | null = null;

  constructor() {
    super();
    this.traces = null;
    this.window = WHOLE;
    this.tableOpen = false;
    this.oneAt = 0;
    this.size = [0, 0];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#resized.disconnect();
    this.#watched = null;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const view = this.traces;
    if (!view) return;
    this.#data.follow(view, view.units);
    const ends = endsOf(this.#data);
    const { readS } = this.window;
    // A dive that went back, or another one, has nothing there.
    if (readS !== null && readS > ends[1]) this.window = readAt(this.window, null, ...ends);
    // Somebody went to a moment elsewhere on the page: it is read here.
    const before = (changed.get('traces') as TracesView | null | undefined)?.shownAtS ?? null;
    if (changed.has('traces') && before !== view.shownAtS) this.window = readAt(this.window, view.shownAtS, ...ends);
  }

  override render() {
    const view = this.traces;
    if (!view) return html``;
    const data = this.#data;
    const ends = endsOf(data);
    const pageHeightPx = this.ownerDocument.documentElement.clientHeight;
    const scene = sceneOf(view, data, this.window, { size: this.size, pageHeightPx, oneAt: this.oneAt });
    this.#scene = scene;
    const tools = this.#tools(scene);
    const [widthPx, heightPx] = this.size;
    return html`<section aria-label="Traces">
      ${traceTools(tools)}
      <div
        class="paper"
        role="slider"
        tabindex="0"
        aria-label="Reading line over the traces"
        aria-valuemin=${ends[0].toFixed(1)}
        aria-valuemax=${ends[1].toFixed(1)}
        aria-valuenow=${(this.window.readS ?? ends[1]).toFixed(1)}
        aria-valuetext=${scene.row < 0 ? 'at the end of the dive, following it' : rowWords(data, scene.row, view)}
        @keydown=${this.#keyed}
        @pointerdown=${this.#pointed}
        @pointermove=${this.#pointed}
      >
        <div class="plot" aria-hidden="true"></div>
        <svg width=${widthPx} height=${heightPx} aria-hidden="true">${scene.marks.map(drawn)}</svg>
        ${scene.lanes.length === 0 ? html`<p>Choose what is to be traced.</p>` : nothing}
      </div>
      ${this.tableOpen ? html`<div class="numbers">${traceFiles(tools)} ${traceTable(view, data, scene.edges)}</div>` : nothing}
    </section>`;
  }

  override updated(): void {
    const host = this.querySelector<HTMLElement>('.plot');
    if (!host || !this.traces || !this.#scene) {
      this.#plot?.destroy();
      this.#plot = this.#watched = null;
      return;
    }
    const paperElement = this.querySelector('.paper')!;
    if (paperElement !== this.#watched) {
      this.#resized.disconnect();
      this.#resized.observe((this.#watched = paperElement));
    }
    const { paper, lanes, edges } = this.#scene;
    const { left, top, right, bottom } = paper;
    if (right - left < 20 || bottom - top < 10) return;
    host.style.setProperty('left', `${left}px`);
    host.style.setProperty('top', `${top}px`);
    this.#plot ??= new TracePlot(host);
    const thick = this.traces.projector ? CLASS_THICK : 1;
    this.#plot.draw(linesOf(lanes, this.#data, this.#thinned, { paper, colours: this.#colours(), edges, thick }));
  }

  #colours(): Colours {
    const style = getComputedStyle(this);
    const names = ['ink', 'secondary', 'rule', 'gas', 'gas-words', 'place', 'place-words', 'paper', 'second'] as const;
    return Object.fromEntries(names.map((name) => [name, style.getPropertyValue(`--${name}`).trim()])) as Colours;
  }

  #tools({ one }: TraceScene): TraceTools {
    const { kinds, chosen } = this.traces!;
    const ends = endsOf(this.#data);
    return {
      kinds,
      chosen,
      one,
      canCloser: canZoom(this.window, true, ...ends),
      canWider: canZoom(this.window, false, ...ends),
      reading: this.window.readS !== null,
      tableOpen: this.tableOpen,
      choose: (id) => this.#ask({ do: 'choose', id }),
      step: (by) => (this.oneAt = (this.oneAt + by + kinds.length) % kinds.length),
      zoom: (closer) => this.#zoom(closer),
      whole: () => (this.window = { ...this.window, spanS: null, fromS: null }),
      move: (byS) => this.#move(byS),
      follow: () => this.#read(null),
      table: () => (this.tableOpen = !this.tableOpen),
      save: (what) => void this.#save(what).catch(() => this.#ask({ do: 'not-saved' })),
      close: () => this.#ask({ do: 'close' }),
    };
  }

  #zoom(closer: boolean): void {
    this.window = zoomed(this.window, closer, ...endsOf(this.#data));
  }

  #move(byS: number): void {
    this.#read((this.window.readS ?? endsOf(this.#data)[1]) + byS);
  }

  #read(s: number | null): void {
    this.window = readAt(this.window, s === null ? null : Math.round(s * 10) / 10, ...endsOf(this.#data));
    this.#ask({ do: 'read', atS: this.window.readS });
  }

  /** Arrows move the reading line a second, with shift a tenth; plus and minus look closer and wider. Nothing else is taken from the dive. */
  readonly #keyed = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const byS = event.shiftKey ? 0.1 : 1;
    const acts: Record<string, () => void> = {
      ArrowLeft: () => this.#move(-byS),
      ArrowRight: () => this.#move(byS),
      PageUp: () => this.#move(-10),
      PageDown: () => this.#move(10),
      Home: () => this.#read(endsOf(this.#data)[0]),
      End: () => this.#read(null),
      Escape: () => this.#read(null),
      '+': () => this.#zoom(true),
      '-': () => this.#zoom(false),
    };
    const act = acts[event.key];
    if (!act) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  };

  readonly #pointed = (event: PointerEvent): void => {
    const element = event.currentTarget as HTMLElement;
    if (event.type === 'pointerdown') element.setPointerCapture(event.pointerId);
    if (event.buttons === 0 || !this.#scene) return;
    const { paper, edges } = this.#scene;
    this.#read(momentAt(paper, edges, event.clientX - element.getBoundingClientRect().left));
  };

  async #save(what: 'si' | 'shown' | 'picture'): Promise<void> {
    const view = this.traces!;
    if (what !== 'picture') {
      const text = traceCsv(view, what === 'si' ? 'SI' : view.units);
      const name = `traces-${what === 'si' ? 'si' : view.units}.csv`;
      // Spreadsheets take a text for what it is only where its first bytes say so.
      return this.#ask({ do: 'save', bytes: new TextEncoder().encode(`\ufeff${text}`), name });
    }
    const canvas = this.#plot?.canvas;
    if (!canvas || !this.#scene) return;
    const { paper, marks, edges } = this.#scene;
    const bytes = await tracePicture(this.ownerDocument, canvas, marks, {
      paper,
      colours: this.#colours(),
      title: `Traces from ${momentText(edges[0])} to ${momentText(Math.min(edges[1], endsOf(this.#data)[1]))}`,
      caution: CAUTION.model,
      font: getComputedStyle(this).fontFamily,
    });
    this.#ask({ do: 'save', bytes, name: 'traces.png' });
  }

  #ask(ask: TraceAsk): void {
    wish(this, { kind: 'traces', ask });
  }
}
customElements.define('trace-panel', TracePanel);

function drawn(mark: PaperMark) {
  if (mark.kind === 'dot') return svg`<circle class="ink" cx=${mark.x} cy=${mark.y} r=${mark.px}></circle>`;
  if (mark.kind === 'line')
    return svg`<path class=${mark.tone} stroke-width=${mark.widthPx} d="M${mark.from.join(' ')}L${mark.to.join(' ')}"></path>`;
  const { x, y, words, anchor, tone, px, bold } = mark;
  return svg`<text class=${tone} x=${x} y=${y} text-anchor=${anchor} font-size=${px} font-weight=${bold ? 600 : 400}>${words}</text>`;
}
