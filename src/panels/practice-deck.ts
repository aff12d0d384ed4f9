import { html, nothing } from 'lit';
import type { HandNeeded } from '../lesson/index.ts';
import type { Act } from './acts.ts';
import './breath-level.ts';
import './hold-button.ts';
import type { MovedKeys } from './key-places.ts';
import './lead-release.ts';
import { Panel } from './panel.ts';
import type { Pulls, Readings } from './readings.ts';
import type { Units } from './settings.ts';
import { litresText } from './units.ts';

/** What the deck offers at one moment: only what works for this diver. */
export interface DeckView {
  /** Before the first press: vent and out alone. */
  readonly first: boolean;
  readonly drysuit: boolean;
  readonly loop: boolean;
  readonly line: boolean;
  readonly lineHeld: boolean;
  readonly down: ReadonlySet<Act>;
  /** Commanded attitude, or null where it follows the depth. */
  readonly posture: 'head-up' | 'level' | 'head-down' | null;
  readonly leadLeft: number;
  /** Lead comes off and on at the surface: the lesson asks for it. */
  readonly byHand: boolean;
  /** The head is out of the water: under it no lead comes off or on by hand. */
  readonly headOut: boolean;
  /** What the task is flown with besides gas, breath and fins: in sight on a narrow screen too. */
  readonly wanted: readonly HandNeeded[];
  readonly armed: boolean;
  readonly jacketEmpty: boolean;
  /** Venting until the jacket is empty. */
  readonly ventsAll: boolean;
  readonly breathing: 'automatic' | 'direct' | 'held';
  readonly toggles: boolean;
  readonly keys: MovedKeys;
  readonly readings: Readings | null;
  /** Whether the ledger is shown: not where a lesson hides gauges. */
  readonly ledger: boolean;
}

/** Whether an act that stays is in force; undefined for one that does not stay. */
function staysOf(act: Act, deck: DeckView): boolean | undefined {
  if (act === 'vent-all') return deck.ventsAll;
  if (act === 'hold') return deck.breathing === 'held';
  if (act === 'line') return deck.lineHeld;
  return act === 'head-up' || act === 'head-down' || act === 'level' ? deck.posture === act : undefined;
}

/** The practice deck: jacket or suit, breath, fins and attitude, lead, and the ledger. */
export class PracticeDeck extends Panel {
  static override properties = {
    deck: { attribute: false },
    units: { attribute: false },
    plain: { attribute: false },
    said: { attribute: false },
  };
  declare deck: DeckView | null;
  declare units: Units;
  /** Projector: no numbers beside the three. */
  declare plain: boolean;
  /** Pulls whose numbers the ledger writes, where a sentence over the water is about them. */
  declare said: Pulls | null;

  constructor() {
    super();
    this.deck = null;
    this.units = 'metric';
    this.plain = false;
    this.said = null;
  }

  override render() {
    const deck = this.deck;
    if (!deck) return html``;
    const { first } = deck;
    // The two buttons of the first press stay what they are while the others come: the finger is still on one of them.
    return html`${this.#jacket(first)}
      ${deck.drysuit && !first ? this.#group('suit', 'Suit', ['suit-add', 'suit-vent']) : nothing}
      ${deck.loop && !first ? this.#group('breath', 'Loop', ['diluent', 'nose-vent']) : this.#breath(deck)}
      ${first ? nothing : this.#others(deck)}`;
  }

  #others(deck: DeckView) {
    return html`${this.#group('fins', 'Fins', ['kick-up', 'kick-down'])}
      ${this.#group(deck.wanted.includes('attitude') ? 'attitude wanted' : 'attitude', 'Attitude', ['head-up', 'level', 'head-down'])}
      ${this.#lineAndLead(deck)}
      ${
        this.plain || !deck.readings || !deck.ledger
          ? nothing
          : html`<ledger-bars
              .up=${deck.readings.up}
              .down=${deck.readings.down}
              .afloat=${deck.readings.place === 'afloat'}
              .said=${this.said}
              .units=${this.units}
            ></ledger-bars>`
      }`;
  }

  #jacket(first: boolean) {
    return html`<section class="group gas">
      <h2>Jacket</h2>
      <div class="acts">
        ${first ? nothing : this.#button('add')} ${this.#button('vent')}
        ${first ? nothing : html`<div class="stacked">${this.#button('blow')} ${this.#button('vent-all')}</div>`}
      </div>
    </section>`;
  }

  #breath(deck: DeckView) {
    return html`<section class="group breath">
      <h2>Breath</h2>
      <div class="acts">
        ${deck.first ? nothing : this.#button('in')} ${this.#button('out')} ${deck.first ? nothing : this.#level(deck)}
      </div>
    </section>`;
  }

  #level(deck: DeckView) {
    return html`<div class="level-and-middle ${deck.breathing === 'automatic' ? '' : 'direct'}">
      ${this.plain ? nothing : html`<breath-level .readings=${deck.readings}></breath-level>`}
      ${this.#button('middle')} ${deck.breathing === 'automatic' ? nothing : this.#button('hold')}
    </div>`;
  }

  #lineAndLead(deck: DeckView) {
    if (deck.byHand) return this.#group('by-hand', 'Lead', ['lead-off', 'lead-on']);
    const isGone = deck.leadLeft === 0 && deck.wanted.includes('lead');
    if (!deck.line && deck.leadLeft === 0 && !isGone) return nothing;
    const title = [deck.line ? 'Line' : '', deck.leadLeft > 0 || isGone ? 'Lead' : '']
      .filter(Boolean)
      .join(', ')
      .toLowerCase();
    const wanted = (['line', 'lead'] as const).filter((one) => deck.wanted.includes(one));
    const classes = [deck.line && deck.leadLeft > 0 ? 'two' : '', ...wanted.map((one) => `wanted with-${one}`)];
    return html`<section class="group lead ${classes.join(' ')}">
      <h2>${title[0]!.toUpperCase()}${title.slice(1)}</h2>
      ${deck.line ? this.#button('line') : nothing}
      ${
        deck.leadLeft > 0
          ? html`<lead-release
            .armed=${deck.armed}
            .pieces=${deck.leadLeft}
            .toggles=${deck.toggles}
            .keys=${deck.keys}
          ></lead-release>`
          : isGone
            ? html`<p class="none-left">all lead is off</p>`
            : nothing
      }
    </section>`;
  }

  #group(name: string, title: string, acts: readonly Act[]) {
    return html`<section class="group ${name}">
      <h2>${title}</h2>
      <div class="acts">${acts.map((act) => this.#button(act))}</div>
    </section>`;
  }

  /** "4.1 L": what jacket and suit hold, at the button that fills them; nothing where a lesson hides gauges. */
  #held(act: Act): string {
    const bag = act === 'add' ? 'jacket' : act === 'suit-add' ? 'suit' : '';
    const { first, ledger, readings } = this.deck!;
    const store = first || !ledger || !bag ? undefined : readings?.gas.find(({ name }) => name === bag);
    return store ? litresText(store.hereM3) : '';
  }

  /** Why a press would do nothing now. */
  #note(act: Act): string {
    const { jacketEmpty, headOut } = this.deck!;
    if (act === 'vent' && jacketEmpty) return 'jacket is empty';
    return (act === 'lead-off' || act === 'lead-on') && !headOut ? 'head out first' : '';
  }

  #button(act: Act) {
    const deck = this.deck!;
    return html`<hold-button
      class="of-${act}"
      .act=${act}
      .down=${deck.down.has(act)}
      .pressed=${staysOf(act, deck)}
      .toggles=${deck.toggles}
      .keys=${deck.keys}
      .note=${this.#note(act)}
      .holds=${this.#held(act)}
    ></hold-button>`;
  }
}
customElements.define('practice-deck', PracticeDeck);
