import { html, svg } from 'lit';
import { Panel } from './panel.ts';
import type { Readings } from './readings.ts';
import { litresText } from './units.ts';

const TUBE_PX = 96;

/** The lungs as a tube of gas with the level that the breath goes around. */
export class BreathLevel extends Panel {
  static override properties = { readings: { attribute: false } };
  declare readings: Readings | null;

  constructor() {
    super();
    this.readings = null;
  }

  override render() {
    if (!this.readings) return html``;
    const { lungM3, levelM3, totalLungM3 } = this.readings;
    const y = (volumeM3: number) => TUBE_PX * (1 - Math.min(volumeM3 / totalLungM3, 1)) + 1;
    return html`<svg class="tube" viewBox="0 0 34 98" width="34" height="98" aria-hidden="true">
        <rect class="outline" x="7" y="1" width="20" height="96" rx="5"></rect>
        ${svg`<rect class="gas" x="9" y=${y(lungM3)} width="16" height=${Math.max(95.5 - y(lungM3), 0)} rx="3"></rect>
        <line class="mark" x1="0" x2="34" y1=${y(levelM3)} y2=${y(levelM3)}></line>`}
      </svg>
      <span class="amount"><span class="hidden">lungs </span>${litresText(lungM3)}</span>`;
  }
}
customElements.define('breath-level', BreathLevel);
