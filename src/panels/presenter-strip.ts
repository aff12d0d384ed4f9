import { html, nothing } from 'lit';
import { keyText, type MovedKeys } from './key-places.ts';
import { Panel } from './panel.ts';
import type { PresentAsk, StripView } from './presenting-view.ts';
import { wish } from './wish.ts';

const LETTERS = ['A', 'B', 'C', 'D'] as const;
/** Usual keys of the four letters: the digits that the looks leave free. */
export const TALLY_KEYS = ['Digit6', 'Digit7', 'Digit8', 'Digit9'] as const;

/** For whoever stands in front: what comes next, hands counted by four keys, and what to say. */
export class PresenterStrip extends Panel {
  static override properties = { strip: { attribute: false }, keys: { attribute: false } };
  declare strip: StripView | null;
  declare keys: MovedKeys;

  constructor() {
    super();
    this.strip = null;
    this.keys = {};
  }

  override render() {
    if (!this.strip) return html``;
    const { next, canGoBack, notes, tally, lists, fullScreen } = this.strip;
    return html`<section aria-label="Presenter">
      <div class="walk">
        <button type="button" class="tool" ?disabled=${!canGoBack} @click=${() => this.#ask({ do: 'previous' })}>back</button>
        <button type="button" class="tool main" @click=${() => this.#ask({ do: 'next' })}>next: ${next}</button>
      </div>
      ${tally.length > 0 ? this.#tally(tally) : nothing}
      <p class="notes">${notes}</p>
      <div class="ends">
        ${lists ? html`<button type="button" class="tool roomy" @click=${() => this.#ask({ do: 'list' })}>list</button>` : nothing}
        <button type="button" class="tool blanks" @click=${() => this.#ask({ do: 'blank' })}>blank</button>
        ${
          fullScreen === null
            ? ''
            : html`<button type="button" class="tool roomy" @click=${() => this.#ask({ do: 'full-screen' })}>
                ${fullScreen ? 'leave full screen' : 'full screen'}
              </button>`
        }
        <button type="button" class="tool" @click=${() => this.#ask({ do: 'strip' })}>hide</button>
      </div>
    </section>`;
  }

  /** Hands are counted for letters that are asked about, and for no others. */
  #tally(tally: readonly number[]) {
    return html`<div class="tally" role="group" aria-label="Hands counted">
      ${LETTERS.slice(0, tally.length).map(
        (letter, at) =>
          html`<button
            type="button"
            class="tool"
            aria-label="${letter}: ${tally[at]}, one more"
            @click=${() => this.#ask({ do: 'tally', at })}
          >
            <b>${letter}</b> ${tally[at]} <kbd aria-hidden="true">${keyText(TALLY_KEYS[at]!, this.keys)}</kbd>
          </button>`,
      )}
      <button type="button" class="tool" aria-label="count anew" @click=${() => this.#ask({ do: 'clear' })}>anew</button>
    </div>`;
  }

  #ask(ask: PresentAsk): void {
    wish(this, { kind: 'present', ask });
  }
}
customElements.define('presenter-strip', PresenterStrip);
