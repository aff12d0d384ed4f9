import { html, nothing } from 'lit';
import { Panel } from './panel.ts';
import type { Mishap } from './time-view.ts';
import { wish } from './wish.ts';

const MISHAPS: readonly (readonly [mishap: Mishap, words: string])[] = [
  ['inflator-open', 'inflator stuck open for 8 s'],
  ['vent-open', 'vent stuck open for 8 s'],
  ['vent-shut', 'vent stuck shut for 15 s'],
];

/** What can go wrong by itself in free practice, begun from *more*; and the strip of time. */
export class MishapList extends Panel {
  static override properties = { drysuit: { attribute: false }, leadLeft: { attribute: false } };
  declare drysuit: boolean;
  declare leadLeft: number;

  constructor() {
    super();
    this.drysuit = false;
    this.leadLeft = 0;
  }

  override render() {
    return html`<section>
      <h3>Time</h3>
      <div class="row">
        <button type="button" class="tool" @click=${this.#strip}>show or hide the strip of time</button>
      </div>
      <h3>Something goes wrong</h3>
      <p>The dive goes on at once, and it happens.</p>
      <div class="row">
        ${MISHAPS.map(([mishap, words]) => this.#button(mishap, words))}
        ${this.drysuit ? this.#button('suit-inflator-open', 'suit inflator stuck open for 8 s') : nothing}
        ${this.leadLeft > 0 ? this.#button('lead-lost', 'a piece of lead is lost') : nothing}
      </div>
    </section>`;
  }

  #button(mishap: Mishap, words: string) {
    return html`<button
      type="button"
      class="tool"
      @click=${() => {
        wish(this, { kind: 'more', open: false });
        wish(this, { kind: 'time', ask: { do: 'mishap', mishap } });
      }}
    >
      ${words}
    </button>`;
  }

  readonly #strip = (): void => {
    wish(this, { kind: 'more', open: false });
    wish(this, { kind: 'time', ask: { do: 'open' } });
  };
}
customElements.define('mishap-list', MishapList);
