import { html } from 'lit';
import { Panel } from './panel.ts';
import type { PresentAsk, ShowCard } from './presenting-view.ts';
import { wish } from './wish.ts';

/** What can be shown to a class at once, and the way past it. */
export class ShowList extends Panel {
  static override properties = { cards: { attribute: false } };
  declare cards: readonly ShowCard[] | null;

  constructor() {
    super();
    this.cards = null;
  }

  override updated(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('cards') && this.cards && !changed.get('cards')) this.querySelector('button')?.focus();
  }

  override render() {
    if (!this.cards) return html``;
    return html`<section aria-label="Show a class">
      <h2>Show a class</h2>
      ${this.cards.map(
        ({ id, title, about }) =>
          html`<button type="button" class="option" @click=${() => this.#ask({ do: 'show', id })}>
            <b>${title}</b> <span>${about}</span>
          </button>`,
      )}
      <button type="button" class="option" @click=${() => this.#ask({ do: 'list-away' })}>
        <b>Free practice</b> <span>The diver afloat, and every key yours.</span>
      </button>
    </section>`;
  }

  #ask(ask: PresentAsk): void {
    wish(this, { kind: 'present', ask });
  }
}
customElements.define('show-list', ShowList);
