import { html, nothing } from 'lit';
import type { PairAsk, PairView } from './pair-view.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** Who can fly the second diver. */
const FLIERS: readonly (readonly [by: string, words: string])[] = [
  ['hands', 'the same hands: every press goes to both'],
  ['own', 'own hands, on the number pad'],
  ['idler', 'nobody: he breathes and presses nothing'],
  ['steady', 'a steady diver, who keeps to your depth'],
  ['able', 'an able one'],
  ['learner', 'a learner'],
  ['latecomer', 'one who sees late'],
  ['over-corrector', 'one who overdoes it'],
  ['pulser', 'one who works in pulses'],
  ['kicker', 'one who kicks instead'],
  ['breath-holder', 'one who holds his breath'],
];

/** A second diver beside the one who is flown: what is different about him, and who flies him. A part of *more*. */
export class PairList extends Panel {
  static override properties = { pair: { attribute: false } };
  declare pair: PairView | null;

  constructor() {
    super();
    this.pair = null;
  }

  override render() {
    const { pair } = this;
    if (!pair?.differences) return html``;
    const { differences, difference, by, sides, said } = pair;
    return html`<section aria-label="A second diver">
      <h3>A second diver</h3>
      <p>Beside yours, in the same time, with one thing different. What you have done so far he has done too.</p>
      <label
        >what is different
        <select class="difference">
          ${differences.map(
            ({ words, options }) =>
              html`<optgroup label=${words}>
                ${options.map(
                  (option) =>
                    html`<option value=${option.id} ?selected=${option.id === difference}>${option.words}</option>`,
                )}
              </optgroup>`,
          )}
        </select></label
      >
      <label
        >or a setup of your own <input type="file" accept=".yaml,.yml" @change=${this.#fileChosen} /></label
      >
      <label
        >who flies him
        <select class="by">
          ${FLIERS.map(([id, words]) => html`<option value=${id} ?selected=${id === by}>${words}</option>`)}
        </select></label
      >
      <div class="row">
        <button type="button" class="tool" @click=${this.#begin}>${sides ? 'change him' : 'dive as two'}</button>
        ${
          sides
            ? html`<button type="button" class="tool" @click=${() => this.#ask({ do: 'swap' }, true)}>
                  fly the other from here
                </button>
                <button type="button" class="tool" @click=${() => this.#ask({ do: 'away' }, true)}>dive alone</button>`
            : nothing
        }
      </div>
      <p role="status">${said}</p>
    </section>`;
  }

  readonly #begin = (): void => {
    const chosen = (of: string) => this.querySelector<HTMLSelectElement>(`select.${of}`)!.value;
    this.#ask({ do: 'begin', difference: chosen('difference'), by: chosen('by') }, true);
  };

  readonly #fileChosen = (event: Event): void => {
    const file = (event.target as HTMLInputElement).files?.[0];
    if (file) this.#ask({ do: 'file', file }, false);
  };

  #ask(ask: PairAsk, closes: boolean): void {
    if (closes) wish(this, { kind: 'more', open: false });
    wish(this, { kind: 'pair', ask });
  }
}
customElements.define('pair-list', PairList);
