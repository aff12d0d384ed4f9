import { html } from 'lit';
import type { PartRow } from './looks.ts';
import { writtenAddingUp } from './adding-up.ts';
import { Panel } from './panel.ts';
import { pullKg } from './units.ts';

/** Parts as people call them; cylinders, lead and other gear are numbered by their names in the ledger. */
const NAMES: Readonly<Record<string, string>> = {
  tissue: 'body',
  gut: 'gas in the gut',
  lungs: 'lungs',
  suit: 'suit',
  'suit-gas': 'gas in the suit',
  jacket: 'jacket',
  'jacket-gas': 'gas in the jacket',
  loop: 'loop',
  'above-water': 'out of the water',
};

/** Every part of the diver, what lifts it and what pulls it down, with the sum, as they are written: newtons, and kilograms of pull. Opened on demand. */
export class PartsCard extends Panel {
  static override properties = { parts: { attribute: false } };
  declare parts: readonly PartRow[];

  constructor() {
    super();
    this.parts = [];
  }

  override render() {
    const { parts } = this;
    const ups = writtenAddingUp(parts.map(({ upN }) => upN));
    const downs = writtenAddingUp(parts.map(({ downN }) => downN));
    const pulls = writtenAddingUp(
      parts.map(({ upN, downN }) => pullKg(upN - downN)),
      2,
    );
    return html`<details>
      <summary>every part</summary>
      <div class="scroll" tabindex="0" role="region" aria-label="Every part">
        <table>
          <thead>
            <tr>
              <th scope="col">part</th>
              <th scope="col">up, N</th>
              <th scope="col">down, N</th>
              <th scope="col">kgf up</th>
            </tr>
          </thead>
          <tbody>
            ${parts.map(({ part }, i) => row(nameOf(part), ups[i]!, downs[i]!, pulls[i]!))}
          </tbody>
          <tfoot>
            ${row('sum', ...([ups, downs, pulls].map(sum) as [number, number, number]))}
          </tfoot>
        </table>
      </div>
    </details>`;
  }
}
customElements.define('parts-card', PartsCard);

function sum(amounts: readonly number[]): number {
  return amounts.reduce((total, one) => total + one, 0);
}

function row(name: string, upN: number, downN: number, kgf: number) {
  return html`<tr>
    <th scope="row">${name}</th>
    <td>${upN.toFixed(1)}</td>
    <td>${downN.toFixed(1)}</td>
    <td>${signed(kgf)}</td>
  </tr>`;
}

function nameOf(part: string): string {
  return NAMES[part] ?? part.replace(/-(\d+)$/, ' $1').replaceAll('-', ' ');
}

/** Two decimals with their sign; what rounds to nothing has none. */
function signed(value: number): string {
  const text = Math.abs(value).toFixed(2);
  return text === '0.00' ? text : `${value > 0 ? '+' : '\u2212'}${text}`;
}
