import { html, svg } from 'lit';
import { Panel } from './panel.ts';
import type { GasStore } from './readings.ts';
import { litresText } from './units.ts';

const BAR_PX = 92;

/** The stores of gas as bars at one scale: what each holds here, and dashed what the same gas would fill at the surface. */
export class GasBars extends Panel {
  static override properties = { gas: { attribute: false } };
  declare gas: readonly GasStore[];

  constructor() {
    super();
    this.gas = [];
  }

  override render() {
    // The scale grows in steps, so that a bar that grows is a gas that grows.
    const most = Math.max(...this.gas.map((store) => store.surfaceM3), 0) * 1e3;
    const scaleL = [8, 12, 16, 24, 32, 48, 64].find((litres) => litres >= most) ?? most;
    const width = (m3: number) => Math.min((m3 * 1e3 * BAR_PX) / scaleL, BAR_PX);
    return html`<dl>
        ${this.gas.map(
          (store) =>
            html`<div>
              <dt>${store.name}</dt>
              <dd>
                <svg viewBox="0 0 94 16" width="94" height="16" aria-hidden="true">
                  ${svg`<rect class="dashed" x="1" y="2" height="12" width=${width(store.surfaceM3)}></rect>
                  <rect class="gas" x="1" y="2" height="12" width=${width(store.hereM3)}></rect>`}
                </svg>
                <span class="hidden"
                  >${litresText(store.hereM3)} here, ${litresText(store.surfaceM3)} at the surface</span
                >
              </dd>
            </div>`,
        )}
      </dl>
      <p>litres here; dashed: at the surface</p>`;
  }
}
customElements.define('gas-bars', GasBars);
