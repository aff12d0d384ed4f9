import { html } from 'lit';
import type { KeptNote } from './kept-view.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** A dive that came back, with the way on and the way to begin anew; one that could come back; or one that was left for another diver. */
export class KeptNotePanel extends Panel {
  static override properties = { note: { attribute: false }, asked: { attribute: false } };
  declare note: KeptNote | null;
  /** Something is asked: the dive goes on when that is answered. */
  declare asked: boolean;

  constructor() {
    super();
    this.note = null;
    this.asked = false;
  }

  override render() {
    if (!this.note) return html``;
    const { words, lesson, kind } = this.note;
    const button = (what: string, press: () => void) =>
      html`<button type="button" class="tool" @click=${press}>${what}</button>`;
    return html`<aside role="status" aria-label="Kept dive">
      <p>${words}</p>
      <div class="row">
        ${
          kind === 'offer'
            ? html`${button(lesson ? 'bring the lesson back' : 'bring it back', () => this.#ask('bring'))}
              ${button('not now', () => this.#ask('away'))}`
            : kind === 'left'
              ? html`${button(lesson ? 'back to the lesson' : 'back to that dive', () => this.#ask('back-to'))}
                ${button('close', () => this.#ask('away'))}`
              : html`${this.asked ? html`` : button('go on', () => wish(this, { kind: 'freeze' }))}
              ${button('begin anew', () => this.#ask('anew'))} ${button('close', () => this.#ask('away'))}`
        }
      </div>
    </aside>`;
  }

  #ask(what: 'bring' | 'away' | 'anew' | 'back-to'): void {
    wish(this, { kind: 'kept', ask: { do: what } });
  }
}
customElements.define('kept-note', KeptNotePanel);
