import { html, nothing } from 'lit';
import { keyText, type MovedKeys } from './key-places.ts';
import { KEY_ROWS, moved } from './key-rows.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** Every act and command with its key; press one, then the key that it is to have. */
export class KeyList extends Panel {
  static override properties = {
    keys: { attribute: false },
    waiting: { state: true },
    words: { state: true },
  };
  declare keys: MovedKeys;
  /** Usual place of the key that waits for a new one; empty while none does. */
  declare waiting: string;
  declare words: string;

  constructor() {
    super();
    this.keys = {};
    this.waiting = '';
    this.words = '';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#wait('');
  }

  override render() {
    return html`<details class="keys">
      <summary>Keys: which does what, and how to change it</summary>
      <p>Press a line, then the key that it is to have. Escape leaves it as it was. F5 fills the screen.</p>
      <p class="key-words" role="status">${this.words}</p>
      <ul>
        ${KEY_ROWS.map(({ words, usual }) => {
          const waits = this.waiting === usual;
          return html`<li>
            <button
              type="button"
              class="tool"
              aria-pressed=${waits}
              @click=${() => this.#wait(waits ? '' : usual)}
            >
              <span>${words}</span> <kbd>${waits ? 'press a key' : keyText(usual, this.keys)}</kbd>
            </button>
          </li>`;
        })}
      </ul>
      ${
        Object.keys(this.keys).length > 0
          ? html`<button type="button" class="tool" @click=${this.#usual}>all keys as usual</button>`
          : nothing
      }
    </details>`;
  }

  #wait(usual: string): void {
    this.waiting = usual;
    const { defaultView } = this.ownerDocument;
    defaultView?.removeEventListener('keydown', this.#pressed, { capture: true });
    if (usual) defaultView?.addEventListener('keydown', this.#pressed, { capture: true });
  }

  readonly #pressed = (event: KeyboardEvent): void => {
    if (event.code === 'Tab') return this.#wait('');
    event.preventDefault();
    event.stopImmediatePropagation();
    if (event.repeat) return;
    const usual = this.waiting;
    this.#wait('');
    if (event.code === 'Escape') return;
    const { keys, words } = moved(this.keys, usual, event.code);
    this.words = words;
    if (keys !== this.keys) wish(this, { kind: 'settings', settings: { keys } });
  };

  #usual(): void {
    this.words = 'All keys are as usual.';
    this.querySelector('summary')?.focus();
    wish(this, { kind: 'settings', settings: { keys: {} } });
  }
}
customElements.define('key-list', KeyList);
