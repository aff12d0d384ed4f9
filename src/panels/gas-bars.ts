import { html, svg } from 'lit';
import { Panel } from './panel.ts';
import type { GasStore } from './readings.ts';
import { litresText } from './units.ts';

const BAR_PX = 92;

/**
 * The stores of gas as bars at one scale, the kit's: what each holds here, and dashed what the same gas would fill at the surface.
 * What would need more than the scale has runs out of it, without an end.
 */
export class GasBars extends Panel {
  static override properties = { gas: { attribute: false }, scaleM3: { attribute: false } };
  declare gas: readonly GasStore[];
  /** What fills a bar, m³. */
  declare scaleM3: number;

  constructor() {
    super();
    this.gas = [];
    this.scaleM3 = 0;
  }

  override render() {
    const width = (m3: number) => (Math.min(m3 / this.scaleM3, 1) * BAR_PX).toFixed(1);
    const most = (this.scaleM3 * 1e3).toFixed(0);
    return html`<dl>
        ${this.gas.map(
          (store) =>
            html`<div>
              <dt>${store.name}</dt>
              <dd>
                <svg viewBox="0 0 94 16" width="94" height="16" aria-hidden="true">
                  ${svg`${this.#atSurface(store.surfaceM3)}
                  <rect class="gas" x="1" y="2" height="12" width=${width(store.hereM3)}></rect>`}
                </svg>
                <span class="hidden"
                  >${litresText(store.hereM3)} here, ${litresText(store.surfaceM3)} at the surface</span
                >
              </dd>
            </div>`,
        )}
      </dl>
      <p class="scale" aria-hidden="true"><span>0</span><span>${most} L</span></p>
      <p>here; dashed: at the surface</p>`;
  }

  #atSurface(m3: number) {
    const beyond = m3 > this.scaleM3;
    const width = Math.min(m3 / this.scaleM3, 1) * BAR_PX;
    return beyond
      ? svg`<path class="dashed" d="M94 2H1V14H94"></path>`
      : svg`<rect class="dashed" x="1" y="2" height="12" width=${width.toFixed(1)}></rect>`;
  }
}
customElements.define('gas-bars', GasBars);
