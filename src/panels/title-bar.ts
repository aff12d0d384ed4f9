import { html, nothing } from 'lit';
import type { ReadySetup } from '../diver/index.ts';
import { keyText, type MovedKeys } from './key-places.ts';
import { Panel } from './panel.ts';
import { unbroken } from './unbroken.ts';
import { wish } from './wish.ts';

/** Speeds of the clock, and how they are written. */
export const SPEEDS: readonly (readonly [speed: number, words: string])[] = [
  [0.25, '×¼'],
  [0.5, '×½'],
  [1, '×1'],
  [2, '×2'],
];

/** The bar at the top: what is to be done, and the clock. */
export class TitleBar extends Panel {
  static override properties = {
    words: { attribute: false },
    progress: { attribute: false },
    frozen: { attribute: false },
    flying: { attribute: false },
    speed: { attribute: false },
    setups: { attribute: false },
    setupId: { attribute: false },
    canGoBack: { attribute: false },
    away: { attribute: false },
    canLeave: { attribute: false },
    kit: { attribute: false },
    projector: { attribute: false },
    looks: { attribute: false },
    menuOpen: { attribute: false },
    keys: { attribute: false },
    oneButton: { attribute: false },
  };
  declare words: string;
  declare progress: string;
  declare frozen: boolean;
  /** Whether there is a dive whose clock can be worked. */
  declare flying: boolean;
  declare speed: number;
  /** Empty where the setup is not the person's to choose. */
  declare setups: readonly ReadySetup[];
  declare setupId: string;
  declare canGoBack: boolean;
  /** Somewhere else than on the first screen: the way back to it stands here. */
  declare away: boolean;
  declare canLeave: boolean;
  /** Whether the way to *Kit and water* stands here, on small screens too or on wide ones. */
  declare kit: 'none' | 'wide' | 'always';
  declare projector: boolean;
  /** Whether there is something to look at, and whether the menu for it is open. */
  declare looks: boolean;
  declare menuOpen: boolean;
  declare keys: MovedKeys;
  /** The space bar breathes: another key freezes. */
  declare oneButton: boolean;

  constructor() {
    super();
    this.words = '';
    this.progress = '';
    this.frozen = false;
    this.flying = false;
    this.speed = 1;
    this.setups = [];
    this.setupId = '';
    this.canGoBack = false;
    this.away = false;
    this.canLeave = false;
    this.oneButton = false;
    this.kit = 'none';
    this.projector = false;
    this.looks = false;
    this.menuOpen = false;
    this.keys = {};
  }

  /** Who chose in the menu by keys is back at its button: the menu goes away with its focus. */
  override updated(changed: Map<PropertyKey, unknown>): void {
    if (!changed.get('menuOpen') || this.menuOpen) return;
    if (this.ownerDocument.activeElement?.closest('look-menu')) this.querySelector<HTMLElement>('.look')?.focus();
  }

  override render() {
    return html`${
      this.away
        ? html`<button
              type="button"
              class="tool to-start"
              title=${keyText('F4', this.keys)}
              @click=${() => wish(this, { kind: 'place', place: 'start' })}
            >
              start
            </button>`
        : html`<p class="brand">midwater</p>`
    }
      <h1>
        ${this.#task()}
        ${this.progress && !this.projector ? html`<span class="progress">${this.progress}</span>` : nothing}
      </h1>
      <div class="tools">
        ${this.flying ? this.#clock() : nothing} ${this.setups.length > 0 ? this.#chooser() : nothing}
        ${
          this.looks
            ? html`<button
                type="button"
                class="tool look"
                aria-expanded=${this.menuOpen}
                @click=${() => wish(this, { kind: 'look-menu', open: !this.menuOpen })}
              >
                look
              </button>`
            : nothing
        }
        ${
          this.projector
            ? html`<button type="button" class="tool end-class" @click=${() => wish(this, { kind: 'projector', on: false })}>
                end class
              </button>`
            : nothing
        }
        ${
          this.canLeave
            ? html`<button type="button" class="tool" @click=${() => wish(this, { kind: 'leave' })}>leave</button>`
            : nothing
        }
        ${
          this.kit === 'none'
            ? nothing
            : html`<button
                type="button"
                class="tool ${this.kit === 'wide' ? 'roomy-only' : ''}"
                aria-label="kit and water"
                @click=${() => wish(this, { kind: 'place', place: 'kit' })}
              >
                kit<span class="wide-word"> and water</span>
              </button>`
        }
        ${
          this.kit === 'always'
            ? html`<button type="button" class="tool" @click=${() => wish(this, { kind: 'place', place: 'bench' })}>bench</button>`
            : nothing
        }
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'more', open: true })}>more</button>
      </div>`;
  }

  /** "Hover: stay between 7 and 9 m": its limits are a part of their own, which a narrow screen leaves out while it asks. */
  #task() {
    const words = unbroken(this.words);
    const at = words.indexOf(': ');
    return at < 0 ? words : html`${words.slice(0, at)}<span class="limits">${words.slice(at)}</span>`;
  }

  #clock() {
    const next = SPEEDS[(SPEEDS.findIndex(([speed]) => speed === this.speed) + 1) % SPEEDS.length]!;
    const now = SPEEDS.find(([speed]) => speed === this.speed)?.[1] ?? '';
    return html`<button
        type="button"
        class="tool freeze"
        title="${this.oneButton ? '' : `${keyText('Space', this.keys)} or `}${keyText('KeyP', this.keys)}"
        @click=${() => wish(this, { kind: 'freeze' })}
      >
        ${this.frozen ? 'go on' : 'freeze'}
        <kbd aria-hidden="true">${keyText(this.oneButton ? 'KeyP' : 'Space', this.keys)}</kbd>
      </button>
      <div class="speeds" role="group" aria-label="Speed of time">
        ${SPEEDS.map(
          ([speed, words]) =>
            html`<button
              type="button"
              class="tool"
              aria-pressed=${speed === this.speed}
              @click=${() => wish(this, { kind: 'speed', speed })}
            >
              ${words}
            </button>`,
        )}
      </div>
      <button
        type="button"
        class="tool one-speed"
        aria-label="Speed of time ${now}, press for ${next[1]}"
        @click=${() => wish(this, { kind: 'speed', speed: next[0] })}
      >
        ${now}
      </button>
      ${
        this.canGoBack
          ? html`<button type="button" class="tool wide-only" title=${keyText('KeyZ', this.keys)} @click=${() => wish(this, { kind: 'back' })}>
              back 10 s
            </button>`
          : nothing
      }
      <button type="button" class="tool wide-only" title=${keyText('KeyR', this.keys)} @click=${() => wish(this, { kind: 'restart' })}>
        restart
      </button>`;
  }

  #chooser() {
    return html`<select class="tool wide-only" aria-label="Diver and water" @change=${this.#chosen}>
      ${this.setupId ? nothing : html`<option selected value="">own file</option>`}
      ${this.setups.map(
        (setup) => html`<option value=${setup.id} ?selected=${setup.id === this.setupId}>${setup.name}</option>`,
      )}
    </select>`;
  }

  #chosen(event: Event): void {
    const select = event.target as HTMLSelectElement;
    const { value } = select;
    // The keys fly the diver again: a list that keeps the focus would take them all.
    select.blur();
    if (value) wish(this, { kind: 'setup', id: value });
  }
}
customElements.define('title-bar', TitleBar);
