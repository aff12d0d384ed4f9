import { html, nothing } from 'lit';
import './kit-changes.ts';
import './kit-depths.ts';
import './kit-diver.ts';
import './kit-heads.ts';
import './kit-tried.ts';
import type { KitView } from './kit-view.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';

/** The three things that are looked at beside the diver. */
const VIEWS = [
  ['changes', 'one change at a time'],
  ['heads', 'at the surface'],
  ['depths', 'over the depth'],
] as const;

/** *Kit and water*: the diver with the lead that makes neutral, and beside him what one change does to it. */
export class KitSheet extends Panel {
  static override properties = { kit: { attribute: false }, units: { attribute: false }, shows: { state: true } };
  declare kit: KitView | null;
  declare units: Units;
  /** Which of the three is looked at. */
  declare shows: (typeof VIEWS)[number][0];

  constructor() {
    super();
    this.kit = null;
    this.units = 'metric';
    this.shows = 'changes';
  }

  override render() {
    const { kit, units, shows } = this;
    if (!kit) return html``;
    return html`<kit-diver .kit=${kit} .units=${units}></kit-diver>
      <section class="beside" aria-label="What changes">
        <div class="views" role="group" aria-label="What to look at">
          ${VIEWS.map(
            ([id, words]) =>
              html`<button type="button" class="tool" aria-pressed=${shows === id} @click=${() => (this.shows = id)}>
                ${words}
              </button>`,
          )}
        </div>
        ${shows === 'changes' ? html`<kit-changes .kit=${kit} .units=${units}></kit-changes>` : nothing}
        ${shows === 'heads' ? html`<kit-heads .heads=${kit.heads} .units=${units}></kit-heads>` : nothing}
        ${
          shows === 'depths'
            ? html`<kit-depths .depths=${kit.depths} .lossN=${kit.cylinderLossN} .units=${units}></kit-depths>`
            : nothing
        }
      </section>
      ${kit.tried ? html`<kit-tried class="at-hand" .kit=${kit} .units=${units}></kit-tried>` : nothing}`;
  }
}
customElements.define('kit-sheet', KitSheet);
