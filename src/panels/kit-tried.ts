import { html, nothing } from 'lit';
import type { KitAsk, KitView } from './kit-view.ts';
import { hoverSentence, leadSentence, reachSentence } from './kit-words.ts';
import { unbroken } from './look-words.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { wish } from './wish.ts';

/** What the tried change comes to, in a sentence or two, and what can be done with it. */
export class KitTried extends Panel {
  static override properties = { kit: { attribute: false }, units: { attribute: false } };
  declare kit: KitView | null;
  declare units: Units;
  #pressedByKey = false;

  constructor() {
    super();
    this.kit = null;
    this.units = 'metric';
  }

  override render() {
    if (!this.kit) return html``;
    const { tried, basis, canUndo, triedRow, rows } = this.kit;
    const row = triedRow === null ? undefined : rows[triedRow];
    return html`<div aria-live="polite">
        ${
          row && tried
            ? html`<p class="sentence">${unbroken(leadSentence(row, this.units))}</p>
                <p>${unbroken(hoverSentence(basis.hover, tried.hover, this.units))}</p>`
            : html`<p>${unbroken(reachSentence(basis.hover, this.units))}</p>`
        }
      </div>
      <div class="row">
        ${row ? html`${this.#button('keep', { do: 'keep' })} ${this.#button('put back', { do: 'try', row: null })}` : nothing}
        ${canUndo && !row ? this.#button('undo', { do: 'undo' }) : nothing}
        <button type="button" class="tool main" @click=${() => this.#ask({ do: 'fly' })}>fly this</button>
      </div>`;
  }

  /** A button that a key pressed goes away with what it did: the focus stays at hand. */
  override updated(): void {
    if (this.#pressedByKey) this.querySelector<HTMLButtonElement>('.main')?.focus();
    this.#pressedByKey = false;
  }

  #button(words: string, ask: KitAsk) {
    const pressed = (event: MouseEvent) => {
      this.#pressedByKey = event.detail === 0;
      this.#ask(ask);
    };
    return html`<button type="button" class="tool" @click=${pressed}>${words}</button>`;
  }

  #ask(ask: KitAsk): void {
    wish(this, { kind: 'kit', ask });
  }
}
customElements.define('kit-tried', KitTried);
