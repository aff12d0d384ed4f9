import { html, nothing, svg } from 'lit';
import { reachSvg, yOf, type ReachAxis } from './kit-reach.ts';
import type { KitAsk, KitDiver, KitRow, KitView } from './kit-view.ts';
import { deltaText, growthChange, growthText, lungsText, neededText, plainDepth, reachText } from './kit-words.ts';
import { unbroken } from './look-words.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { FOOT_M, gaugeText } from './units.ts';
import { wish } from './wish.ts';

/** What is in the cylinder where hovering is compared, bar by the gauge. */
const HOVER_BAR = 120;
/** Half the length of the bars, and what it stands for at least, kilograms. */
const HALF_PX = 50;
const LEAST_SCALE_KG = 4;
/** The axis of a row, and the large one. */
const SMALL = { heightPx: 46, axisPx: 6, atPx: [12, 22], ticks: [] } as const;
const LARGE = { heightPx: 250, axisPx: 44, atPx: [26, 52] } as const;

/** Every change, in groups: what it does to the lead, to what breath reaches, and to how fast a drift doubles. Choosing one tries it. */
export class KitChanges extends Panel {
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
    const { rows, basis, goesAlong, tried } = this.kit;
    const scaleKg = Math.max(LEAST_SCALE_KG, ...rows.map(({ deltaKg }) => Math.abs(deltaKg)));
    const groups = [...new Set(rows.map(({ group }) => group))];
    const where = plainDepth(basis.hover.depthM, this.units);
    return html`<div class="list">
        <p class="how">
          ${unbroken(`Breath reaches: from where to where lungs of ${lungsText(basis.hover)} alone keep a diver neutral who is neutral at ${where} with ${gaugeText(HOVER_BAR, this.units)}${otherLungs(rows, basis)}.`)}
          Drift doubles: seconds until a drift off is twice as far, nobody acting. Dashed: as it is now.
        </p>
        <label class="choice"
          ><input
            type="checkbox"
            .checked=${goesAlong}
            @change=${(event: Event) => this.#ask({ do: 'goes-along', on: (event.target as HTMLInputElement).checked })}
          />
          the lead is changed along; otherwise it stays as it is</label
        >
        <p class="heads-of-columns" aria-hidden="true">
          <span>choose one to try it</span><span>lead less · more</span><span>then</span
          ><span>breath reaches</span><span>drift doubles</span>
        </p>
        ${this.#now(basis)}
        ${groups.map(
          (group) =>
            html`<h3>${group}</h3>
              <ul>
                ${rows.map((row, i) => (row.group === group ? this.#row(row, i, scaleKg) : nothing))}
              </ul>`,
        )}
      </div>
      <figure class="reach">
        <figcaption>breath around ${unbroken(where)}</figcaption>
        ${this.#axis()}
        <p>${unbroken(`now ${reachText(basis.hover, this.units)}, ${growthText(basis.hover)}`)}</p>
        ${
          tried
            ? html`<p class="gas-words">
                ${unbroken(`then ${reachText(tried.hover, this.units)}, ${growthText(tried.hover)}`)}
              </p>`
            : nothing
        }
      </figure>`;
  }

  /** What all rows are compared with. */
  #now({ neededKg, hover }: KitDiver) {
    const small: ReachAxis = { ...SMALL, deepestM: this.#deepestM() };
    return html`<div class="change now">
      <span class="words">as it is now</span>
      <span class="delta"></span>
      <span class="needed"><span class="label">needs </span>${unbroken(neededText(neededKg, this.units))}</span>
      <span class="breath">
        <svg viewBox="0 0 36 46" width="36" height="46" aria-hidden="true">${reachSvg(small, hover, null)}</svg>
        <span><span class="label">breath reaches </span>${unbroken(reachText(hover, this.units))}</span>
      </span>
      <span class="growth"><span class="label">drift </span>${unbroken(growthText(hover))}</span>
    </div>`;
  }

  #row(row: KitRow, i: number, scaleKg: number) {
    const { basis, triedRow } = this.kit!;
    const small: ReachAxis = { ...SMALL, deepestM: this.#deepestM() };
    return html`<li>
      <button
        type="button"
        class="change"
        aria-pressed=${triedRow === i}
        @click=${() => this.#ask({ do: 'try', row: i })}
      >
        <span class="words">${unbroken(row.change)}</span>
        <span class="delta">
          ${deltaBar(row.deltaKg, scaleKg)}
          <b>${unbroken(deltaText(row.deltaKg, this.units))}</b>
        </span>
        <span class="needed"><span class="label">then needs </span>${unbroken(neededText(row.neededKg, this.units))}</span>
        <span class="breath">
          <svg viewBox="0 0 36 46" width="36" height="46" aria-hidden="true">
            ${reachSvg(small, basis.hover, row.hover)}
          </svg>
          <span><span class="label">breath reaches </span>${unbroken(reachText(row.hover, this.units))}</span>
        </span>
        <span class="growth">
          <span class="label">drift </span>${unbroken(growthChange(basis.hover, row.hover))}
        </span>
      </button>
    </li>`;
  }

  #axis() {
    const { basis, tried } = this.kit!;
    const deepestM = this.#deepestM();
    const axis: ReachAxis = { ...LARGE, deepestM, ticks: ticksOf(deepestM, this.units) };
    const y = yOf(axis, basis.hover.depthM);
    return html`<svg class="axis-of-depth" viewBox="0 -8 120 268" aria-hidden="true">
      <line class="hair" x1="44" x2="112" y1=${y} y2=${y}></line>
      ${svg`${tried ? reachSvg(axis, basis.hover, tried.hover) : reachSvg(axis, null, basis.hover)}`}
    </svg>`;
  }

  /** One axis for all rows: to the bottom, or to 40 m. */
  #deepestM(): number {
    return Math.min(this.kit!.basis.hover.bottomM, 40);
  }

  #ask(ask: KitAsk): void {
    wish(this, { kind: 'kit', ask });
  }
}
customElements.define('kit-changes', KitChanges);

/** "; lungs a fifth larger: 2.2 to 7.0 L": other lungs are breathed farther. */
function otherLungs(rows: readonly KitRow[], { hover }: KitDiver): string {
  const other = rows.find((row) => row.hover.openLungs && lungsText(row.hover) !== lungsText(hover));
  return other ? `; ${other.change}: ${lungsText(other.hover)}` : '';
}

/** A bar from the middle line: left is less lead, right is more. */
function deltaBar(deltaKg: number, scaleKg: number) {
  const width = (Math.abs(deltaKg) / scaleKg) * HALF_PX;
  return html`<svg viewBox="0 0 104 20" width="104" height="20" aria-hidden="true">
    <rect class="change-bar" x=${deltaKg < 0 ? 52 - width : 52} y="4" width=${width} height="12"></rect>
    <line class="middle" x1="52" x2="52" y1="0" y2="20"></line>
  </svg>`;
}

/** Depths to write beside the large axis, in round numbers of the unit. */
function ticksOf(deepestM: number, units: Units): ReachAxis['ticks'] {
  const unitM = units === 'metric' ? 1 : FOOT_M;
  const step = [1, 2, 5, 10, 20, 30].find((each) => deepestM / (each * unitM) <= 6) ?? 50;
  const count = Math.floor(deepestM / (step * unitM) + 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => ({ depthM: i * step * unitM, words: String(i * step) }));
}
