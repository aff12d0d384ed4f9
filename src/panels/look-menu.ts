import { html } from 'lit';
import { keyText, type MovedKeys } from './key-places.ts';
import { LOOKS, USUAL_LOOKS, isOn, type Across, type LookChoice } from './looks.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

const ACROSS: readonly (readonly [across: Across, words: string])[] = [
  ['gas', 'gas'],
  ['lead', 'lead'],
  ['speed', 'speed'],
];

/** Chooses what lies over the water, by pointer and touch; each choice has its key. */
export class LookMenu extends Panel {
  static override properties = {
    open: { attribute: false },
    choice: { attribute: false },
    keys: { attribute: false },
    traced: { attribute: false },
  };
  declare open: boolean;
  declare choice: LookChoice;
  declare keys: MovedKeys;
  /** Whether the traces are open under the water. */
  declare traced: boolean;

  constructor() {
    super();
    this.open = false;
    this.choice = USUAL_LOOKS;
    this.keys = {};
    this.traced = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.ownerDocument.addEventListener('keydown', this.#keyed);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.ownerDocument.removeEventListener('keydown', this.#keyed);
  }

  override updated(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('open') && this.open) this.querySelector('button')?.focus();
  }

  override render() {
    if (!this.open) return html``;
    return html`<section id="look-menu" role="group" aria-label="Look">
      <div class="looks">
        ${LOOKS.map(
          ({ id, words, key }) =>
            html`<button
              type="button"
              class="option"
              aria-pressed=${isOn(this.choice, id)}
              @click=${() => wish(this, { kind: 'look', look: id })}
            >
              <span>${words}</span> <kbd aria-hidden="true">${keyText(`Digit${key}`, this.keys)}</kbd>
            </button>`,
        )}
        <button
          type="button"
          class="option"
          aria-pressed=${this.traced}
          @click=${() => wish(this, { kind: 'traces', ask: { do: 'toggle' } })}
        >
          <span>traces</span> <kbd aria-hidden="true">${keyText('KeyT', this.keys)}</kbd>
        </button>
      </div>
      <div class="across" role="group" aria-label="Across the recovery map">
        <span>map across</span>
        ${ACROSS.map(
          ([across, words]) =>
            html`<button
              type="button"
              class="tool"
              aria-pressed=${this.choice.across === across}
              @click=${() => wish(this, { kind: 'look-choice', choice: { across, look: 'map' } })}
            >
              ${words}
            </button>`,
        )}
      </div>
    </section>`;
  }

  /** Whatever has the focus: who opened the menu by a click has given it back to the dive. */
  readonly #keyed = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.open) wish(this, { kind: 'look-menu', open: false });
  };
}
customElements.define('look-menu', LookMenu);
