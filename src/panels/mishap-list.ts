import { html } from 'lit';
import { MISHAPS, offered, said, type MishapAsk } from './mishap-kinds.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { wish } from './wish.ts';

/** What can go wrong by itself in free practice, begun from *more*; and the strip of time. */
export class MishapList extends Panel {
  static override properties = {
    drysuit: { attribute: false },
    leadLeft: { attribute: false },
    units: { attribute: false },
  };
  declare drysuit: boolean;
  declare leadLeft: number;
  declare units: Units;

  constructor() {
    super();
    this.drysuit = false;
    this.leadLeft = 0;
    this.units = 'metric';
  }

  override render() {
    const has = { drysuit: this.drysuit, lead: this.leadLeft > 0 };
    const fitting = MISHAPS.filter(([, needs]) => !needs || has[needs]);
    return html`<section>
      <h3>Time</h3>
      <div class="row">
        <button type="button" class="tool" @click=${this.#strip}>show or hide the strip of time</button>
      </div>
      <h3>Something goes wrong</h3>
      <p>The dive goes on at once, and it happens.</p>
      <div class="row">${fitting.map(([asked]) => this.#button(asked))}</div>
    </section>`;
  }

  #button(mishap: MishapAsk) {
    return html`<button
      type="button"
      class="tool"
      @click=${() => {
        wish(this, { kind: 'more', open: false });
        wish(this, { kind: 'time', ask: { do: 'mishap', mishap, said: said(mishap, this.units) } });
      }}
    >
      ${offered(mishap, this.units)}
    </button>`;
  }

  readonly #strip = (): void => {
    wish(this, { kind: 'more', open: false });
    wish(this, { kind: 'time', ask: { do: 'open' } });
  };
}
customElements.define('mishap-list', MishapList);
