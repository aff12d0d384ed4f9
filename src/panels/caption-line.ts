import { html, nothing } from 'lit';
import type { CaptionView } from './caption-view.ts';
import { Panel } from './panel.ts';

/** What sounds, in words. Who hears the page is told of gas once it has passed, and not of every breath. */
export class CaptionLine extends Panel {
  static override properties = { captions: { attribute: false } };
  declare captions: CaptionView | null;

  constructor() {
    super();
    this.captions = null;
  }

  override render() {
    if (!this.captions) return html``;
    const { breath, gas, over, tone } = this.captions;
    const spans = [...gas, ...(breath ? [breath] : [])];
    return html`<p aria-hidden="true">
        ${spans.map((words) => html`<span>${words}</span>`)}${tone ? html`<span class="tone">${tone}</span>` : nothing}
      </p>
      <span class="hidden" role="status">${over.join('. ')}</span>`;
  }
}
customElements.define('caption-line', CaptionLine);
