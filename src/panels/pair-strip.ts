import { html, nothing, svg } from 'lit';
import { keyText, type MovedKeys } from './key-places.ts';
import type { PairAsk, PairView } from './pair-view.ts';
import { pairRows } from './pair-words.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { wish } from './wish.ts';

/** What differs between two divers: depth, speed, presses, gas; as a table, or folded into one sentence. */
export class PairStrip extends Panel {
  static override properties = {
    pair: { attribute: false },
    units: { attribute: false },
    keys: { attribute: false },
  };
  declare pair: PairView | null;
  declare units: Units;
  declare keys: MovedKeys;

  constructor() {
    super();
    this.pair = null;
    this.units = 'metric';
    this.keys = {};
  }

  override render() {
    const { pair } = this;
    if (!pair?.sides) return html``;
    const { folded, sentence, looksAt, brought } = pair;
    return html`<section aria-label="Two divers" class=${folded ? 'folded' : ''}>
      ${folded ? html`<p>${unbrokenNumbers(sentence)}</p>` : this.#table(pair)}
      <div class="acts">
        <button type="button" class="tool fold" aria-expanded=${!folded} @click=${() => this.#ask({ do: 'fold' })}>
          ${folded ? 'table' : 'fold'}
        </button>
        ${
          brought
            ? nothing
            : html`<button type="button" class="tool" @click=${() => this.#ask({ do: 'swap' })}>
                fly the other<kbd>${keyText('Semicolon', this.keys)}</kbd>
              </button>`
        }
        ${
          looksAt === null
            ? nothing
            : html`<span class="looks-at" role="group" aria-label="whose looks">
                <span>looks</span>
                ${([1, 2] as const).map(
                  (diver) =>
                    html`<button
                      type="button"
                      class="tool"
                      aria-label="looks at diver ${diver}"
                      aria-pressed=${looksAt === diver}
                      @click=${() => this.#ask({ do: 'looks-at', diver })}
                    >
                      ${diver}
                    </button>`,
                )}
              </span>`
        }
        ${
          brought
            ? nothing
            : html`<button type="button" class="tool" aria-label="dive alone" @click=${() => this.#ask({ do: 'away' })}>
                alone<kbd>${keyText('Quote', this.keys)}</kbd>
              </button>`
        }
      </div>
    </section>`;
  }

  #table({ sides, words }: PairView) {
    const rows = pairRows(sides!, this.units);
    const row = (name: unknown, of: 'one' | 'two' | 'beside') =>
      html`<tr class=${of}>
        <th scope="row">${name}</th>
        ${rows.map((one) => html`<td>${unbrokenNumbers(one[of])}</td>`)}
      </tr>`;
    return html`<table>
      <thead>
        <tr>
          <td></td>
          ${rows.map(({ name }) => html`<th scope="col">${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${row(html`${LINES[0]} 1<span class="who"> (flown)</span>`, 'one')}
        ${row(html`${LINES[1]} 2<span class="who"> (${words})</span>`, 'two')}
        ${row('2 beside 1', 'beside')}
      </tbody>
    </table>`;
  }

  #ask(ask: PairAsk): void {
    wish(this, { kind: 'pair', ask });
  }
}
customElements.define('pair-strip', PairStrip);

/** The lines that the two have in the water. */
const LINES = [
  html`<svg class="line one" viewBox="0 0 44 12" width="44" height="12" aria-hidden="true">
    ${svg`<line x1="2" x2="42" y1="6" y2="6"></line><circle cx="22" cy="6" r="4.2"></circle>`}
  </svg>`,
  html`<svg class="line two" viewBox="0 0 44 12" width="44" height="12" aria-hidden="true">
    ${svg`<line x1="2" x2="42" y1="6" y2="6"></line><path d="M22 0.8l5.2 5.2-5.2 5.2-5.2-5.2z"></path>`}
  </svg>`,
];

/** A number stays with its unit. */
function unbrokenNumbers(words: string): string {
  return words.replace(/(\d) (?=[a-zA-Z])/g, '$1\u00a0');
}
