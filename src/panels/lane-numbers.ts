import { html } from 'lit';
import { Panel } from './panel.ts';
import { besideWeight, weightWords, type Readings } from './readings.ts';
import type { Units } from './settings.ts';
import { depthText, rateParts } from './units.ts';

/** The three numbers of the paper lane: depth, vertical speed, and light or heavy. The page sets their height. */
export class LaneNumbers extends Panel {
  static override properties = { readings: { attribute: false }, units: { attribute: false } };
  declare readings: Readings | null;
  declare units: Units;

  constructor() {
    super();
    this.readings = null;
    this.units = 'metric';
  }

  override render() {
    if (!this.readings) return html``;
    const rate = rateParts(this.readings.speedMps, this.units);
    const weight = weightWords(this.readings, this.units);
    return html`<p class="depth">${depthText(this.readings.depthM, this.units)}</p>
      <p class="rate">${rate.word} ${rate.number}<span class="unit"> ${rate.unit}</span></p>
      <p class="weight ${weight.word}">${weight.word} ${weight.amount}</p>
      <p class="beside">${besideWeight(this.readings)}</p>`;
  }
}
customElements.define('lane-numbers', LaneNumbers);
