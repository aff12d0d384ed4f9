import { html, nothing } from 'lit';
import { USUAL_WEIGHING } from '../insight/index.ts';
import type { KitDepth } from './kit-view.ts';
import { plainDepth } from './kit-words.ts';
import { unbroken } from './look-words.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { gaugeText, litresText, massText, pullKg } from './units.ts';

/** Length of the bars. */
const SUIT_PX = 90;
const GAS_PX = 170;
/** A stretch of the way up that litres to vent are given for: a metre, or ten feet. */
const STRETCH = {
  metric: { words: 'each metre up', metres: 1 },
  imperial: { words: 'each 10 ft up', metres: 3.048 },
} as const;
/** Newtons that no jacket takes off and that are still nothing. */
const NOTHING_N = 0.5;

/** What the depth takes and the jacket gives: one line a depth, downward as in the water. */
export class KitDepths extends Panel {
  static override properties = {
    depths: { attribute: false },
    lossN: { attribute: false },
    units: { attribute: false },
  };
  declare depths: readonly KitDepth[];
  declare lossN: number;
  declare units: Units;

  constructor() {
    super();
    this.depths = [];
    this.lossN = 0;
    this.units = 'metric';
  }

  override render() {
    const { units } = this;
    const mostN = Math.max(...this.depths.map(({ suitLossN }) => suitLossN), 1);
    const mostM3 = Math.max(
      ...this.depths.map(({ jacketM3, jacketSurfaceM3 }) => Math.max(jacketM3, jacketSurfaceM3)),
      1e-3,
    );
    return html`<p class="how">
        Going down the suit loses lift and the jacket makes up for it; coming up that gas has to be let out again. Over the
        dive the cylinder loses <b>${unbroken(massText(pullKg(this.lossN), units))}</b> of gas from full to ${unbroken(gaugeText(USUAL_WEIGHING.reserveBar, units))}. With the lead that
        is carried, cylinder full, half a breath in.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">depth</th>
            <th scope="col">suit has lost</th>
            <th scope="col">jacket there</th>
            <th scope="col">at the surface <span>the same gas, dashed</span></th>
            <th scope="col">let out for ${unbroken(STRETCH[units].words)}</th>
          </tr>
        </thead>
        <tbody>
          ${this.depths.map((depth) => this.#line(depth, mostN, mostM3))}
        </tbody>
      </table>`;
  }

  #line(
    { depthM, suitLossN, jacketM3, jacketSurfaceM3, leftN, ventPerMetreM3 }: KitDepth,
    mostN: number,
    mostM3: number,
  ) {
    const { units } = this;
    const lost = (suitLossN / mostN) * SUIT_PX;
    const gas = (m3: number) => (m3 / mostM3) * (GAS_PX - 2);
    return html`<tr>
      <th scope="row">${unbroken(plainDepth(depthM, units))}</th>
      <td>
        <svg class="suit-bar" viewBox="0 0 90 16" width="90" height="16" aria-hidden="true">
          <rect class="change-bar" x="0" y="2" width=${Math.max(lost, 0)} height="12"></rect></svg
        >${unbroken(massText(pullKg(suitLossN), units))}
      </td>
      <td>
        <svg class="gas-bar" viewBox="0 0 170 18" width="170" height="18" aria-hidden="true">
          <rect class="dashed" x="1" y="2" width=${gas(jacketSurfaceM3)} height="14"></rect>
          <rect class="gas" x="1" y="2" width=${gas(jacketM3)} height="14"></rect></svg
        ><b>${unbroken(litresText(jacketM3))}</b>
        ${Math.abs(leftN) > NOTHING_N ? html`<span class="left">still ${unbroken(massText(Math.abs(pullKg(leftN)), units))} ${leftN > 0 ? 'light' : 'heavy'}</span>` : nothing}
      </td>
      <td>${unbroken(litresText(jacketSurfaceM3))}</td>
      <td>${unbroken(litresText(ventPerMetreM3 * STRETCH[units].metres))}</td>
    </tr>`;
  }
}
customElements.define('kit-depths', KitDepths);
