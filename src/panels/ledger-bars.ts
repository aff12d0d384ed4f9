import { html, nothing, svg } from 'lit';
import { Panel } from './panel.ts';
import { saidSumKg, type Pull, type Pulls } from './readings.ts';
import type { Units } from './settings.ts';
import { massApartKg, massText } from './units.ts';

const WIDTH_PX = 240;
/** What is left of that are the words of the surplus. */
const ROOM_PX = 160;
/** Of the bars' words, pixels a letter, enough to say whether a word fits. */
const LETTER_PX = 6.4;

/**
 * What holds the diver up and what pulls him down: two bars at one scale, the surplus bracketed under the longer one's end, where it
 * crosses no word. It is of the moment, so it says up and down: light and heavy are judged at mid-breath. Who floats has none: what is out
 * of the water takes off what there is too much, and a second figure beside *afloat* would be his bobbing.
 */
export class LedgerBars extends Panel {
  static override properties = {
    up: { attribute: false },
    down: { attribute: false },
    afloat: { attribute: false },
    said: { attribute: false },
    units: { attribute: false },
  };
  declare up: readonly Pull[];
  declare down: readonly Pull[];
  /** His head is out and stays out: the surplus of a moment is his bobbing, and no weight. */
  declare afloat: boolean;
  /** Whose numbers are written, where they keep their time with a sentence elsewhere; else those of the bars. */
  declare said: Pulls | null;
  declare units: Units;

  constructor() {
    super();
    this.up = [];
    this.down = [];
    this.afloat = false;
    this.said = null;
    this.units = 'metric';
  }

  override render() {
    const upKg = sum(this.up);
    const downKg = sum(this.down);
    // Steps of 4 kg: the scale stands still while the gas works.
    const scale = ROOM_PX / (Math.ceil((Math.max(upKg, downKg) + 0.5) / 4) * 4);
    const surplus = upKg - downKg;
    const from = Math.min(upKg, downKg) * scale;
    const marked = !this.afloat && Math.abs(surplus) > 0.1;
    const { up, down } = this.said ?? this;
    const moreKg = massApartKg(saidSumKg(up), saidSumKg(down), this.units);
    const more = massText(Math.abs(moreKg), this.units);
    const balance = this.afloat ? 'balanced by what is out of the water' : 'balanced with this breath';
    const [colour, way] = moreKg > 0 ? ['light', 'up'] : ['heavy', 'down'];
    const end = Math.max(upKg, downKg) * scale + 7;
    return html`<h2>What holds you up, what pulls you down</h2>
      <p class="hidden">
        Up: ${spokenParts(up, this.units)}. Down: ${spokenParts(down, this.units)}.
        ${marked ? `${more} more ${way} with this breath.` : `${balance[0]!.toUpperCase()}${balance.slice(1)}.`}
      </p>
      <svg viewBox="0 0 ${WIDTH_PX} 79" aria-hidden="true">
        ${bar(this.up, 2, scale)} ${bar(gathered(this.down, scale), 42, scale)}
        ${
          marked
            ? svg`<path class="surplus ${colour}" d="M${from + 2} ${surplus > 0 ? 32 : 72}v4h${Math.max(Math.abs(surplus) * scale - 2, 3)}v-4"></path>
        <text class="${colour}" x=${end} y=${surplus > 0 ? 21 : 61}>${more} ${way}</text>`
            : nothing
        }
      </svg>
      <p>${this.afloat ? balance : `${this.units === 'metric' ? 'kilograms' : 'pounds'} of pull now, with this breath`}</p>`;
  }
}
customElements.define('ledger-bars', LedgerBars);

function bar(parts: readonly Pull[], y: number, scale: number) {
  let x = 1;
  return parts.map((part) => {
    const width = part.kg * scale;
    const at = x;
    x += width;
    const kind = part.isGas ? 'gas' : part.name === 'lead' ? 'lead' : 'plain';
    const fits = fitsIts(part, scale);
    return svg`<rect class=${kind} x=${at} y=${y} height="28" width=${width}></rect>
      ${fits ? svg`<text class="in-${kind}" x=${at + 5} y=${y + 19}>${part.name}</text>` : nothing}`;
  });
}

/** Parts too short to bear their word, put together as the rest, at the end that stands still. */
function gathered(parts: readonly Pull[], scale: number): readonly Pull[] {
  const short = parts.filter((part) => part.name === 'rest' || (part.name !== 'lead' && !fitsIts(part, scale)));
  const rest = { name: 'rest', kg: sum(short), isGas: false, saidKg: saidSumKg(short) };
  return short.length > 0 ? [rest, ...parts.filter((part) => !short.includes(part))] : parts;
}

function fitsIts({ name, kg }: Pull, scale: number): boolean {
  return kg * scale > name.length * LETTER_PX + 6;
}

function sum(parts: readonly Pull[]): number {
  return parts.reduce((kg, part) => kg + part.kg, 0);
}

function spokenParts(parts: readonly Pull[], units: Units): string {
  return parts.map((part) => `${part.name} ${massText(part.saidKg, units)}`).join(', ');
}
