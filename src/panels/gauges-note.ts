import { html } from 'lit';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** Where gauges have faded: why their place is empty, and the way to have them all again. */
export class GaugesNote extends Panel {
  static override properties = { gauges: {} };
  declare gauges: 'rate' | 'none';

  override render() {
    return html`<p>${this.gauges === 'rate' ? 'The rate alone' : 'No gauges'}: you flew this before.</p>
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'all-gauges' })}>begin with all gauges</button>`;
  }
}
customElements.define('gauges-note', GaugesNote);
