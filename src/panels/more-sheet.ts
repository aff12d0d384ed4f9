import { html, nothing } from 'lit';
import type { ReadySetup } from '../diver/index.ts';
import { actWords, type Act } from './acts.ts';
import { CAUTION } from './cautions.ts';
import { lookSettings } from './look-choice.ts';
import type { LookChoice } from './looks.ts';
import { letGo } from './more-let-go.ts';
import './key-list.ts';
import './pair-list.ts';
import './sound-choice.ts';
import './mishap-list.ts';
import { handsAndMeasures } from './more-hands.ts';
import type { KeptView } from './kept-view.ts';
import { aboutWords } from './more-words.ts';
import type { PairView } from './pair-view.ts';
import type { PresentingView } from './presenting-view.ts';
import { speedRow } from './more-speed.ts';
import type { DeckView } from './practice-deck.ts';
import { Panel } from './panel.ts';
import { USUAL_SETTINGS, type Settings } from './settings.ts';
import { wish, type Wish } from './wish.ts';

/** Everything that is not needed at every moment. The dive stands still while it is open. */
export class MoreSheet extends Panel {
  static override properties = {
    open: { attribute: false },
    settings: { attribute: false },
    projector: { attribute: false },
    breathing: { attribute: false },
    deck: { attribute: false },
    valveHPa: { attribute: false },
    speed: { attribute: false },
    setups: { attribute: false },
    setupId: { attribute: false },
    looks: { attribute: false },
    presenting: { attribute: false },
    kept: { attribute: false },
    pair: { attribute: false },
  };
  declare open: boolean;
  declare settings: Settings;
  declare projector: boolean;
  /** null where there are no lungs to control. */
  declare breathing: 'automatic' | 'direct' | 'held' | null;
  declare deck: DeckView | null;
  /** Opening pressure of the drysuit's valve; null without one. */
  declare valveHPa: number | null;
  /** Seconds of the dive for each real one. */
  declare speed: number;
  declare setups: readonly ReadySetup[];
  declare setupId: string;
  /** What the looks over the water take for granted; null until they were fetched. */
  declare looks: LookChoice | null;
  /** Other hands, and what was measured; null until they were fetched. */
  declare presenting: PresentingView | null;
  /** Dives kept in this browser; null until what keeps them was fetched. */
  declare kept: KeptView | null;
  /** Two divers; null where there can be no second one, and until they were fetched. */
  declare pair: PairView | null;

  constructor() {
    super();
    this.open = false;
    this.settings = USUAL_SETTINGS;
    this.projector = false;
    this.breathing = null;
    this.deck = null;
    this.valveHPa = null;
    this.speed = 1;
    this.setups = [];
    this.setupId = '';
    this.looks = null;
    this.presenting = null;
    this.kept = null;
    this.pair = null;
  }

  override updated(): void {
    const dialog = this.querySelector('dialog');
    if (!dialog || dialog.open === this.open) return;
    if (this.open) dialog.showModal();
    else dialog.close();
  }

  override render() {
    return html`<dialog aria-label="More" @close=${this.#closed}>
      <header>
        <h2>More</h2>
        <button type="button" class="tool" @click=${() => this.#ask({ kind: 'more', open: false })}>close</button>
      </header>
      ${this.open ? this.#places() : nothing}
      ${this.open ? html`${this.#dive()} <pair-list .pair=${this.pair}></pair-list> <kept-list .kept=${this.kept}></kept-list> ${this.#wrong()} ${this.#lungs()} ${this.#screen()} <sound-choice .settings=${this.settings}></sound-choice> ${this.looks ? lookSettings(this, this.looks) : nothing} ${this.presenting ? handsAndMeasures(this, this.presenting, this.settings.oneButton, this.breathing !== null && this.setups.length > 0, this.projector) : nothing} <key-list .keys=${this.settings.keys}></key-list> ${aboutWords()}` : nothing}
    </dialog>`;
  }

  #places() {
    const ways = [
      ['start', 'start'],
      ['learn', 'lessons'],
      ['kit', 'kit and water'],
      ['bench', 'bench'],
    ] as const;
    return html`<nav class="row" aria-label="Places">
      ${ways.map(
        ([place, words]) =>
          html`<button type="button" class="tool" @click=${() => this.#ask({ kind: 'place', place })}>${words}</button>`,
      )}
    </nav>`;
  }

  #dive() {
    const setup = this.setups.find(({ id }) => id === this.setupId);
    return html`<section>
      <h3>Diver and water</h3>
      ${
        this.setups.length > 0
          ? html`<label
                >setup
                <select @change=${this.#setupChosen}>
                  ${this.setupId ? nothing : html`<option selected value="">own file</option>`}
                  ${this.setups.map(
                    ({ id, name }) => html`<option value=${id} ?selected=${id === this.setupId}>${name}</option>`,
                  )}
                </select></label
              >
              ${setup ? html`<p>${setup.note}</p>` : nothing}
              <label>open a setup or a saved dive <input type="file" accept=".yaml,.yml,.json,.txt,.midwater" @change=${this.#fileChosen} /></label>`
          : this.deck
            ? html`<p>The lesson brings its own.</p>`
            : nothing
      }
      <div class="row">
        ${
          this.deck
            ? html`<button type="button" class="tool" @click=${() => this.#ask({ kind: 'restart' })}>restart</button>
                <button type="button" class="tool" @click=${() => this.#ask({ kind: 'save-run' })}>save this dive</button>`
            : nothing
        }
      </div>
      ${this.deck && this.setups.length > 0 ? letGo(this) : nothing}
      ${this.deck && !this.deck.first ? speedRow(this, this.speed) : nothing} ${this.#posture()} ${this.#lead()} ${this.#valve()}
    </section>`;
  }

  #wrong() {
    const { deck } = this;
    if (!deck || deck.first || this.setups.length === 0) return nothing;
    return html`<mishap-list
      .drysuit=${deck.drysuit}
      .leadLeft=${deck.leadLeft}
      .units=${this.settings.units}
    ></mishap-list>`;
  }

  #posture() {
    const deck = this.deck;
    if (!deck || deck.first) return nothing;
    const acts: readonly Act[] = [
      'vent-all',
      'head-up',
      'level',
      'head-down',
      ...(deck.line ? (['line'] as const) : []),
    ];
    return html`<div class="row small-only">
      ${acts.map(
        (act) =>
          html`<button
            type="button"
            class="tool"
            aria-pressed=${act === 'vent-all' ? deck.ventsAll : act === 'line' ? deck.lineHeld : deck.posture === act}
            @click=${() => this.#ask({ kind: 'act', act, down: true })}
          >
            ${actWords(act)}
          </button>`,
      )}
    </div>`;
  }

  #lead() {
    const deck = this.deck;
    if (!deck || deck.first) return nothing;
    const byHand = html`<div class="row">
      ${(['lead-off', 'lead-on'] as const).map(
        (act) =>
          html`<button type="button" class="tool" @click=${() => this.#ask({ kind: 'act', act, down: true })}>
            ${actWords(act)}
          </button>`,
      )}
    </div>`;
    if (deck.leadLeft === 0) return byHand;
    return html`${byHand}<div class="row small-only">
      <lead-release
        .armed=${deck.armed}
        .pieces=${deck.leadLeft}
        .toggles=${deck.toggles}
        .keys=${deck.keys}
      ></lead-release>
    </div>`;
  }

  #valve() {
    if (this.valveHPa === null) return nothing;
    return html`<label
      >drysuit valve opens at ${this.valveHPa} hPa
      <input type="range" min="0" max="60" step="2" .value=${String(this.valveHPa)} @input=${this.#valveMoved}
    /></label>
    <div class="row">
      ${(['valve-open', 'valve-shut'] as const).map(
        (act) =>
          html`<button type="button" class="tool" @click=${() => this.#ask({ kind: 'act', act, down: true })}>
            ${actWords(act)}
          </button>`,
      )}
    </div>`;
  }

  #lungs() {
    if (this.breathing === null) return nothing;
    const choices = [
      ['automatic', 'automatic, around the level'],
      ['direct', 'direct: in and out move the lungs themselves'],
      ['held', 'held: the airway is closed'],
    ] as const;
    return html`<section>
      <h3>Lungs</h3>
      <p class="caution">${CAUTION.lungs}</p>
      ${choices.map(
        ([value, words]) =>
          html`<label class="choice"
            ><input
              type="radio"
              name="breathing"
              .checked=${this.breathing === value}
              ?disabled=${value === 'held' && this.breathing === 'automatic'}
              @change=${() => this.#ask({ kind: 'breathing', breathing: value })}
            />
            ${words}</label
          >`,
      )}
    </section>`;
  }

  #screen() {
    const { theme, units, toggles, swapped } = this.settings;
    return html`<section>
      <h3>Screen and hands</h3>
      <label
        >light
        <select @change=${(event: Event) => this.#set({ theme: valueOf(event) as Settings['theme'] })}>
          <option value="system" ?selected=${theme === 'system'}>as this device</option>
          <option value="light" ?selected=${theme === 'light'}>light</option>
          <option value="dark" ?selected=${theme === 'dark'}>dark</option>
        </select></label
      >
      <label
        >units of the numbers beside the water
        <select @change=${(event: Event) => this.#set({ units: valueOf(event) as Settings['units'] })}>
          <option value="metric" ?selected=${units === 'metric'}>metres, kilograms</option>
          <option value="imperial" ?selected=${units === 'imperial'}>feet, pounds</option>
        </select></label
      >
      ${this.#check('press once to begin, again to end', toggles, (on) => this.#set({ toggles: on }))}
      ${this.#check('breath left, gas right', swapped, (on) => this.#set({ swapped: on }))}
      ${this.#check('projector', this.projector, (on) => this.#ask({ kind: 'projector', on }))}
    </section>`;
  }

  #check(words: string, on: boolean, changed: (on: boolean) => void) {
    return html`<label class="choice"
      ><input
        type="checkbox"
        .checked=${on}
        @change=${(event: Event) => changed((event.target as HTMLInputElement).checked)}
      />
      ${words}</label
    >`;
  }

  #ask(what: Wish): void {
    wish(this, what);
  }

  #set(settings: Partial<Settings>): void {
    wish(this, { kind: 'settings', settings });
  }

  #closed(): void {
    if (this.open) wish(this, { kind: 'more', open: false });
  }

  #setupChosen(event: Event): void {
    if (valueOf(event)) wish(this, { kind: 'setup', id: valueOf(event) });
  }

  #valveMoved(event: Event): void {
    wish(this, { kind: 'valve', hPa: Number(valueOf(event)) });
  }

  #fileChosen(event: Event): void {
    const file = (event.target as HTMLInputElement).files?.[0];
    if (file) wish(this, { kind: 'file', file });
  }
}
customElements.define('more-sheet', MoreSheet);

function valueOf(event: Event): string {
  return (event.target as HTMLInputElement | HTMLSelectElement).value;
}
