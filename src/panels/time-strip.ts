import { html, nothing, svg } from 'lit';
import { Panel } from './panel.ts';
import { LINE_KEY, clock, timeList } from './time-list.ts';
import type { TimeAsk, TimeView } from './time-view.ts';
import { wish } from './wish.ts';

/** A tick on the ruler every so many seconds: the finest that leaves at most forty. */
const TICKS_S = [1, 5, 10, 30, 60, 300];

/** Time under the water: where on the line one looks, by keys, pointer and touch; on from there, bookmarks, other lines. */
export class TimeStrip extends Panel {
  static override properties = { time: { attribute: false } };
  declare time: TimeView | null;

  constructor() {
    super();
    this.time = null;
  }

  override render() {
    const time = this.time;
    if (!time) return html``;
    const { atS, fromS, toS, lookedBack } = time;
    return html`<section aria-label="Time">
      ${time.listOpen ? timeList(time, (ask) => this.#ask(ask)) : nothing}
      <div class="strip">
        <div class="steps">
          ${this.#step(-1, '−1 s', 'a second back')} ${this.#step(-0.1, '−0.1 s', 'a tenth of a second back')}
        </div>
        <div
          class="ruler"
          role="slider"
          tabindex="0"
          aria-label="Moment of the dive"
          aria-valuemin=${fromS.toFixed(1)}
          aria-valuemax=${toS.toFixed(1)}
          aria-valuenow=${atS.toFixed(1)}
          aria-valuetext=${lookedBack ? clock(atS) : `the end, ${clock(atS)}`}
          @keydown=${this.#keyed}
          @pointerdown=${this.#pointed}
          @pointermove=${this.#pointed}
        >
          <svg aria-hidden="true">${this.#ruler(time)}</svg>
        </div>
        <div class="steps">
          ${this.#step(0.1, '+0.1 s', 'a tenth of a second on')} ${this.#step(1, '+1 s', 'a second on')}
        </div>
        <p class="at"><b>${clock(atS)}</b> <span>of ${clock(toS)}</span></p>
        <div class="acts">
          ${this.#tool(html`take over<span> from here</span>`, { do: 'take-over' }, time.canTakeOver, 'main')}
          ${this.#tool('end', { do: 'at', atS: null }, lookedBack, 'roomy')}
          ${this.#tool('bookmark', { do: 'mark' }, true, 'roomy')}
          <button type="button" class="tool" aria-expanded=${time.listOpen} @click=${() => this.#ask({ do: 'list' })}>
            lines
          </button>
        </div>
        <p class="said" aria-live="polite">${time.words}</p>
        <p class="key">${LINE_KEY}</p>
      </div>
    </section>`;
  }

  #step(byS: number, words: string, label: string) {
    return html`<button type="button" class="tool ${Math.abs(byS) === 1 ? 'second' : ''}" aria-label=${label} @click=${() => this.#ask({ do: 'step', byS })}>
      ${words}
    </button>`;
  }

  #tool(words: unknown, ask: TimeAsk, can = true, look = '') {
    return html`<button type="button" class="tool ${look}" ?disabled=${!can} @click=${() => this.#ask(ask)}>
      ${words}
    </button>`;
  }

  /** The time that passed, ticks on it, knots above it, bookmarks below, and where one looks. */
  #ruler({ fromS, toS, atS, marks, lines }: TimeView) {
    const x = (s: number) => `${((s - fromS) / Math.max(toS - fromS, 1e-6)) * 100}%`;
    const everyS = TICKS_S.find((one) => (toS - fromS) / one <= 40) ?? 600;
    const count = Math.floor((toS - fromS) / everyS) + 1;
    return svg`<line class="rule" x1="0%" x2="100%" y1="24" y2="24"></line>
      <line class="past" x1="0%" x2=${x(atS)} y1="24" y2="24"></line>
      ${Array.from({ length: count }, (_, i) => x(fromS + i * everyS)).map(
        (at) => svg`<line class="rule" x1=${at} x2=${at} y1="20" y2="28"></line>`,
      )}
      <line class="now" x1=${x(atS)} x2=${x(atS)} y1="4" y2="44"></line>
      ${lines.map(
        ({ letter, knotS }) => svg`<circle class="knot" cx=${x(knotS)} cy="10" r="8"></circle>
          <text class="letter" x=${x(knotS)} y="10">${letter}</text>`,
      )}
      ${marks.map(
        ({
          number,
          atS: s,
        }) => svg`<svg x=${x(s)} y="38"><rect class="mark" x="-8" y="-8" width="16" height="16"></rect></svg>
          <text x=${x(s)} y="38">${number}</text>`,
      )}
`;
  }

  readonly #keyed = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const byS = event.shiftKey ? 0.1 : 1;
    const asks: Record<string, TimeAsk> = {
      ArrowLeft: { do: 'step', byS: -byS },
      ArrowRight: { do: 'step', byS },
      PageUp: { do: 'step', byS: -10 },
      PageDown: { do: 'step', byS: 10 },
      Home: { do: 'at', atS: this.time?.fromS ?? 0 },
      End: { do: 'at', atS: null },
    };
    const ask = asks[event.key];
    if (!ask) return;
    event.preventDefault();
    event.stopPropagation();
    this.#ask(ask);
  };

  readonly #pointed = (event: PointerEvent): void => {
    const ruler = event.currentTarget as HTMLElement;
    if (event.type === 'pointerdown') ruler.setPointerCapture(event.pointerId);
    if (event.buttons === 0 || !this.time) return;
    const { left, width } = ruler.querySelector('svg')!.getBoundingClientRect();
    const share = Math.min(Math.max((event.clientX - left) / width, 0), 1);
    const { fromS, toS } = this.time;
    this.#ask({ do: 'at', atS: share === 1 ? null : Math.round((fromS + share * (toS - fromS)) * 10) / 10 });
  };

  #ask(ask: TimeAsk): void {
    wish(this, { kind: 'time', ask });
  }
}
customElements.define('time-strip', TimeStrip);
