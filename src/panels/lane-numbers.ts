import { html, nothing } from 'lit';
import type { Gauges } from '../lesson/index.ts';
import { Panel } from './panel.ts';
import { besideWeight, weightWords, type Readings } from './readings.ts';
import type { Units } from './settings.ts';
import { depthText, rateParts } from './units.ts';

/** The three numbers of the paper lane: depth, vertical speed, and light or heavy. The page sets their height. */
export class LaneNumbers extends Panel {
  static override properties = { readings: { attribute: false }, gauges: {}, weighed: { type: Boolean }, units: {} };
  declare readings: Readings | null;
  /** What a lesson shows of them; what it hides leaves its place empty. */
  declare gauges: Gauges;
  /** Whether it may be read what he weighs. */
  declare weighed: boolean;
  declare units: Units;

  constructor() {
    super();
    this.readings = null;
    this.gauges = 'all';
    this.weighed = true;
    this.units = 'metric';
  }

  override render() {
    if (!this.readings) return html``;
    const rate = rateParts(this.readings.speedMps, this.units);
    const weight = weightWords(this.readings, this.units);
    const all = this.gauges === 'all';
    return html`${all ? html`<p class="depth">${depthText(this.readings.depthM, this.units)}</p>` : nothing}
      ${this.gauges === 'none' ? nothing : html`<p class="rate">${rate.word} ${rate.number}<span class="unit"> ${rate.unit}</span></p>`}
      ${all && this.weighed ? html`<p class="weight ${weight.word}">${weight.word} ${weight.amount}</p><p class="beside">${besideWeight(this.readings)}</p>` : nothing}`;
  }
}
customElements.define('lane-numbers', LaneNumbers);
