import { html } from 'lit';
import { Panel } from './panel.ts';

/** So long after the last letter a word is kept, milliseconds. */
const PAUSE_MS = 700;

/** The instructor's own word about a flight: kept while it is written, and never overwritten under the pen. */
export class DebriefWord extends Panel {
  static override properties = { flight: {}, word: {}, words: {} };
  /** Number of the result; null: it is not kept, and neither is the word. */
  declare flight: number | null;
  declare word: string;
  declare words: string;
  #pausing: ReturnType<typeof setTimeout> | undefined;
  #written: string | null = null;

  constructor() {
    super();
    this.flight = null;
    this.word = this.words = '';
  }

  override render() {
    return html`<label>
        <h3>The instructor's word</h3>
        <textarea rows="3" maxlength="2000" ?disabled=${this.flight === null} @input=${this.#later} @change=${this.#keep}></textarea>
      </label>
      <p role="status">${this.words}</p>`;
  }

  override updated(changed: Map<PropertyKey, unknown>): void {
    const box = this.querySelector('textarea');
    if (!box || !(changed.has('flight') || changed.has('word')) || this.#pausing !== undefined) return;
    if (this.word !== this.#written || changed.has('flight')) box.value = this.word;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.#pausing !== undefined) this.#keep();
  }

  #later(): void {
    clearTimeout(this.#pausing);
    this.#pausing = setTimeout(() => this.#keep(), PAUSE_MS);
  }

  #keep(): void {
    clearTimeout(this.#pausing);
    this.#pausing = undefined;
    const word = this.querySelector('textarea')?.value ?? '';
    if (word === (this.#written ?? this.word)) return;
    this.#written = word;
    this.send({ kind: 'debrief', ask: { do: 'word', word } });
  }
}
customElements.define('debrief-word', DebriefWord);
