import { html, nothing, type TemplateResult } from 'lit';
import type { KeptAsk, KeptCard, KeptView } from './kept-view.ts';
import { Panel } from './panel.ts';
import { minutesAndSeconds } from './kept-words.ts';
import { wish } from './wish.ts';

const WHEN = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** Dives that this browser keeps: to be opened, saved as a file, removed; and all of it erased. A part of *more*. */
export class KeptList extends Panel {
  static override properties = { kept: { attribute: false }, sure: { state: true } };
  declare kept: KeptView | null;
  /** Erasing was pressed once: it is done only when it is said again. */
  declare sure: boolean;

  constructor() {
    super();
    this.kept = null;
    this.sure = false;
  }

  override render() {
    if (!this.kept) return html``;
    const { cards, words } = this.kept;
    return html`<section aria-label="Kept dives">
      <h3>Kept dives</h3>
      <p>Dives are kept in this browser as they happen, the last twenty, with no name and no account.</p>
      <p role="status">${words}</p>
      ${
        !cards
          ? nothing
          : cards.length === 0
            ? html`<p>None is kept now.</p>`
            : html`<ul>
                ${cards.map((card) => this.#card(card))}
              </ul>`
      }
      ${this.#erasing()}
    </section>`;
  }

  #card(card: KeptCard): TemplateResult {
    const { id, name, lengthS, savedMs, lesson, here, damaged } = card;
    const when = WHEN.format(savedMs);
    const length = minutesAndSeconds(lengthS);
    const of = damaged ? 'the damaged dive' : `${name}, ${when}`;
    const button = (what: 'open' | 'save' | 'remove', shown: string) =>
      html`<button
        type="button"
        class="tool"
        aria-label="${shown}: ${of}"
        @click=${() => this.#ask({ do: what, id })}
      >
        ${shown}
      </button>`;
    return html`<li>
      <p>
        ${
          damaged
            ? 'A damaged dive, or one of a newer version: it cannot be opened.'
            : html`<b>${name}</b> ${lesson ? 'lesson, ' : ''}${length}<br />${here ? 'the dive you are in' : when}`
        }
      </p>
      <div class="row">
        ${damaged || here ? nothing : button('open', 'open')} ${damaged ? nothing : button('save', 'save as file')}
        ${here ? nothing : button('remove', 'remove')}
      </div>
    </li>`;
  }

  #erasing(): TemplateResult {
    if (!this.sure)
      return html`<button type="button" class="tool" @click=${() => (this.sure = true)}>erase all</button>`;
    return html`<div class="sure" role="group" aria-label="Erase all">
      <p>Erase every kept dive, every result of a lesson and every setting in this browser? It cannot be undone.</p>
      <div class="row">
        <button type="button" class="tool" @click=${this.#erase}>yes, erase all</button>
        <button type="button" class="tool" @click=${() => (this.sure = false)}>keep them</button>
      </div>
    </div>`;
  }

  /** Who asked by keys goes on where the question is. */
  override updated(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('sure') || changed.get('sure') === undefined) return;
    const wanted = this.sure ? '.sure button:last-child' : 'section > button';
    this.querySelector<HTMLElement>(wanted)?.focus();
  }

  #erase(): void {
    this.sure = false;
    this.#ask({ do: 'erase' });
  }

  #ask(ask: KeptAsk): void {
    wish(this, { kind: 'kept', ask });
  }
}
customElements.define('kept-list', KeptList);
