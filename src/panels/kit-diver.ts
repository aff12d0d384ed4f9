import { html, nothing } from 'lit';
import { USUAL_WEIGHING } from '../insight/index.ts';
import { CAUTION } from './cautions.ts';
import { kitFigure } from './kit-figure.ts';
import type { KitAsk, KitView } from './kit-view.ts';
import './kit-tried.ts';
import { neededText, plainDepth, surplusText } from './kit-words.ts';
import './ledger-bars.ts';
import { unbroken } from './look-words.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { POUND_KG, gaugeText, massText } from './units.ts';
import { wish } from './wish.ts';

/** One press more or less lead, kilograms: half a kilogram, a pound. */
const STEP_KG = { metric: 0.5, imperial: POUND_KG } as const;

/** The diver who is looked at: kit, lead needed and carried, the ledger, and what the tried change comes to. */
export class KitDiverPanel extends Panel {
  static override properties = { kit: { attribute: false }, units: { attribute: false } };
  declare kit: KitView | null;
  declare units: Units;

  constructor() {
    super();
    this.kit = null;
    this.units = 'metric';
  }

  override render() {
    if (!this.kit) return html``;
    const { kit, units } = this;
    const diver = kit.tried ?? kit.basis;
    const { depthM, reserveBar } = USUAL_WEIGHING;
    return html`<section aria-label="Diver and water">
      ${this.#chooser(kit)}
      <div class="figure">${kitFigure(diver.figure, units)}</div>
      <div class="weighed">
        <p class="lead-needed"><b>${unbroken(neededText(diver.neededKg, units))}</b> of lead makes neutral</p>
        <p class="caution">${CAUTION.model}</p>
      </div>
      <p class="judged">
        ${unbroken(`At ${plainDepth(depthM, units)}, ${gaugeText(reserveBar, units)} left, jacket empty, half a breath in.`)}
        ${diver.neededKg < -0.05 ? unbroken(`Without any lead ${massText(-diver.neededKg, units)} too heavy.`) : nothing}
      </p>
      <div class="carried" role="group" aria-label="Lead carried">
        <p>carried <b>${unbroken(massText(diver.carriedKg, units))}</b>, <br />${unbroken(surplusText(diver, units))}</p>
        ${kit.tried ? nothing : this.#carry(kit)}
      </div>
      <kit-tried .kit=${kit} .units=${units}></kit-tried>
      <ledger-bars .up=${diver.up} .down=${diver.down} .units=${units}></ledger-bars>
    </section>`;
  }

  #chooser(kit: KitView) {
    const setup = kit.setups.find(({ id }) => id === kit.setupId);
    return html`<div class="choose">
        <label
          ><span class="hidden">diver and water</span>
          <select @change=${this.#chosen}>
            ${kit.ownWords ? html`<option value="" ?selected=${kit.setupId === ''}>${kit.ownWords}</option>` : nothing}
            ${kit.setups.map(
              ({ id, name }) => html`<option value=${id} ?selected=${id === kit.setupId}>${name}</option>`,
            )}
          </select></label
        >
        <label class="tool open-file"
          >open file <input class="hidden" type="file" accept=".yaml,.yml,.txt" @change=${this.#fileChosen}
        /></label>
      </div>
      <p class="note">${unbroken(setup?.note ?? kit.basis.name)}</p>`;
  }

  #carry({ basis }: KitView) {
    const step = STEP_KG[this.units];
    return html`<button
        type="button"
        class="tool"
        aria-label="less lead"
        ?disabled=${basis.carriedKg <= 0}
        @click=${() => this.#ask({ do: 'carry', moreKg: -step })}
      >
        −
      </button>
      <button type="button" class="tool" aria-label="more lead" @click=${() => this.#ask({ do: 'carry', moreKg: step })}>
        +
      </button>
      <button type="button" class="tool" @click=${() => this.#ask({ do: 'carry-needed' })}>as needed</button>`;
  }

  #ask(ask: KitAsk): void {
    wish(this, { kind: 'kit', ask });
  }

  #chosen(event: Event): void {
    this.#ask({ do: 'choose', id: (event.target as HTMLSelectElement).value });
  }

  #fileChosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file) this.#ask({ do: 'file', file });
    // The same file once more is a choice too: it may have been mended meanwhile.
    input.value = '';
  }
}
customElements.define('kit-diver', KitDiverPanel);
