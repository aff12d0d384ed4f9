import { html } from 'lit';
import { Panel } from './panel.ts';

/** How long a new hint lies open on a small screen before it folds to its button, milliseconds. */
const READ_MS = 9000;

/**
 * The hint of what is flown now. Where there is room its words stand; on a small screen they fold to a button once somebody begins to
 * act, or has had time to read, and come back by it.
 */
export class HintNote extends Panel {
  static override properties = { words: { attribute: false }, folded: { state: true } };
  declare words: string;
  declare folded: boolean;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.words = '';
    this.folded = false;
  }

  readonly #begun = (event: Event): void => {
    if (!(event.target instanceof Node && this.contains(event.target))) this.folded = true;
  };

  override connectedCallback(): void {
    super.connectedCallback();
    this.ownerDocument.addEventListener('pointerdown', this.#begun);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.ownerDocument.removeEventListener('pointerdown', this.#begun);
    clearTimeout(this.#timer);
  }

  override willUpdate(changed: ReadonlyMap<PropertyKey, unknown>): void {
    if (!changed.has('words')) return;
    this.folded = false;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => (this.folded = true), READ_MS);
  }

  override render() {
    return html`<button type="button" class="tool" aria-expanded=${!this.folded} @click=${this.#turned}>hint</button>
      <span class=${this.folded ? 'folded' : ''}>${this.words}</span>`;
  }

  #turned(): void {
    clearTimeout(this.#timer);
    this.folded = !this.folded;
  }
}
customElements.define('hint-note', HintNote);
