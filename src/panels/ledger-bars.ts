import { html, nothing, svg } from 'lit';
import { Panel } from './panel.ts';
import type { Pull } from './readings.ts';
import type { Units } from './settings.ts';
import { massText } from './units.ts';

const WIDTH_PX = 240;
/** What is left of that are the words of the surplus. */
const ROOM_PX = 170;
/** Of the bars' words, pixels a letter, enough to say whether a word fits. */
const LETTER_PX = 6.4;

/** What holds the diver up and what pulls him down: two bars at one scale, the surplus marked at the longer one's end. */
export class LedgerBars extends Panel {
  static override properties = {
    up: { attribute: false },
    down: { attribute: false },
    units: { attribute: false },
  };
  declare up: readonly Pull[];
  declare down: readonly Pull[];
  declare units: Units;

  constructor() {
    super();
    this.up = [];
    this.down = [];
    this.units = 'metric';
  }

  override render() {
    const upKg = sum(this.up);
    const downKg = sum(this.down);
    // Steps of 4 kg: the scale stands still while the gas works.
    const scale = ROOM_PX / (Math.ceil((Math.max(upKg, downKg) + 0.5) / 4) * 4);
    const surplus = upKg - downKg;
    const from = Math.min(upKg, downKg) * scale;
    const marked = Math.abs(surplus) > 0.1;
    const word = surplus > 0 ? 'light' : 'heavy';
    const end = Math.max(upKg, downKg) * scale + 7;
    return html`<h2>What holds you up, what pulls you down</h2>
      <p class="hidden">
        Up: ${spokenParts(this.up, this.units)}. Down: ${spokenParts(this.down, this.units)}.
        ${marked ? `${massText(Math.abs(surplus), this.units)} ${word} at this moment.` : 'Balanced at this moment.'}
      </p>
      <svg viewBox="0 0 ${WIDTH_PX} 76" aria-hidden="true">
        ${bar(this.up, 2, scale)} ${bar(gathered(this.down, scale), 42, scale)}
        ${
          marked
            ? svg`<rect class="surplus ${word}" x=${from + 1} y=${surplus > 0 ? 2 : 42} height="28" width=${Math.max(Math.abs(surplus) * scale, 3)}></rect>
        <text class="${word}" x=${end} y=${surplus > 0 ? 21 : 61}>now ${massText(Math.round(Math.abs(surplus) * 10) / 10, this.units)}</text>`
            : nothing
        }
      </svg>
      <p>${this.units === 'metric' ? 'kilograms' : 'pounds'} of pull now, with this breath</p>`;
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
  const rest = { name: 'rest', kg: sum(short), isGas: false };
  return short.length > 0 ? [rest, ...parts.filter((part) => !short.includes(part))] : parts;
}

function fitsIts({ name, kg }: Pull, scale: number): boolean {
  return kg * scale > name.length * LETTER_PX + 6;
}

function sum(parts: readonly Pull[]): number {
  return parts.reduce((kg, part) => kg + part.kg, 0);
}

function spokenParts(parts: readonly Pull[], units: Units): string {
  return parts.map((part) => `${part.name} ${massText(part.kg, units)}`).join(', ');
}
