import { html, nothing } from 'lit';
import { demonstratorDoes, type Demonstrator } from '../lesson/index.ts';
import { PILOTS, PILOT_NAMES, type PilotName } from '../pilot/index.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** Simulated divers that have something to show: those of a skill, those with a habit, and those who do nothing. */
const SHOWN = PILOT_NAMES.filter((name) => ['diver', 'habit', 'nobody'].includes(PILOTS[name].sort));

/** Names that are no nouns. */
const CALLED: Partial<Record<Demonstrator, string>> = {
  steady: 'the steady diver',
  able: 'the able diver',
  random: 'the diver who presses by chance',
  script: 'one who acts by the clock',
};

/** A simulated diver as people say it: the latecomer. */
export function pilotWords(name: Demonstrator): string {
  return CALLED[name] ?? `the ${name}`;
}

/** Chooses a simulated diver who flies a lesson while one watches; each says what he does. */
export class WatchChoice extends Panel {
  static override properties = {
    lessonId: { attribute: false },
    lessonTitle: { attribute: false },
    chosen: { state: true },
  };
  declare lessonId: string;
  declare lessonTitle: string;
  declare chosen: PilotName;

  constructor() {
    super();
    this.lessonId = '';
    this.lessonTitle = '';
    this.chosen = 'steady';
  }

  override render() {
    return html`<details>
      <summary>Watch a simulated diver fly it</summary>
      <label
        >who flies ${this.lessonTitle}
        <select @change=${(event: Event) => (this.chosen = (event.target as HTMLSelectElement).value as PilotName)}>
          ${SHOWN.map((name) => html`<option value=${name} ?selected=${name === this.chosen}>${pilotWords(name)}</option>`)}
        </select></label
      >
      <p>${PILOTS[this.chosen].does}</p>
      <button
        type="button"
        class="tool"
        @click=${() => wish(this, { kind: 'lesson', id: this.lessonId, by: this.chosen })}
      >
        watch ${pilotWords(this.chosen)}
      </button>
    </details>`;
  }
}
customElements.define('watch-choice', WatchChoice);

/** Who flies instead of the person: said for as long as he does. */
export class FlownBy extends Panel {
  static override properties = {
    pilot: { attribute: false },
    takes: { attribute: false },
    offers: { attribute: false },
  };
  declare pilot: Demonstrator | null;
  /** Taking over is offered here, and nowhere else at the time. */
  declare takes: boolean;
  /** Where nobody flies instead, a class may let somebody. */
  declare offers: boolean;

  constructor() {
    super();
    this.pilot = null;
    this.takes = true;
    this.offers = false;
  }

  override render() {
    if (!this.pilot) return this.offers ? this.#offer() : html``;
    return html`<p>
      <span><b>Flown by a simulated diver</b><span class="does">, ${pilotWords(this.pilot)}: ${doesWords(this.pilot)}</span></span>
      ${
        this.takes
          ? html`<button type="button" class="tool" @click=${() => wish(this, { kind: 'time', ask: { do: 'take-over' } })}>
              take over from here
            </button>`
          : nothing
      }
    </p>`;
  }

  #offer() {
    return html`<p>
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'learn', ask: { do: 'hand-over' } })}>
        let a simulated diver fly on
      </button>
    </p>`;
  }
}
customElements.define('flown-by', FlownBy);

/** What he does, in the middle of a sentence. */
function doesWords(name: Demonstrator): string {
  const does = demonstratorDoes(name);
  return does.charAt(0).toLowerCase() + does.slice(1);
}
