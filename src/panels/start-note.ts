import { html, nothing } from 'lit';
import { CAUTION } from './cautions.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** The caution as it is met once, on the first visit. It stands beside the dive and blocks nothing. */
export class StartNote extends Panel {
  override render() {
    return html`<aside aria-label="Before you begin">
      <p><strong>${CAUTION.model}</strong></p>
      <p class="wide">${CAUTION.training}</p>
      <p class="wide">${CAUTION.leftOut}</p>
      <p class="narrow">More of what to keep in mind stands under <b>more</b>.</p>
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'caution-read' })}>I have read this</button>
    </aside>`;
  }
}
customElements.define('start-note', StartNote);

/** The three ways in, standing in the air of the first screen. */
export class AirWords extends Panel {
  static override properties = { stands: { attribute: false } };
  /** A dive that was left stands still: there is a way to begin anew. */
  declare stands: boolean;

  constructor() {
    super();
    this.stands = false;
  }

  override render() {
    return html`<nav aria-label="Ways in">
      <button type="button" @click=${() => wish(this, { kind: 'place', place: 'fly' })}>fly</button>
      <span aria-hidden="true">·</span>
      <button type="button" @click=${() => wish(this, { kind: 'place', place: 'teach' })}>teach a class</button>
      <span aria-hidden="true">·</span>
      <button type="button" @click=${() => wish(this, { kind: 'place', place: 'learn' })}>learn in order</button>
      ${
        this.stands
          ? html`<span class="anew" aria-hidden="true">·</span>
              <button type="button" class="anew" @click=${() => wish(this, { kind: 'restart' })}>begin anew</button>`
          : nothing
      }
    </nav>`;
  }
}
customElements.define('air-words', AirWords);
