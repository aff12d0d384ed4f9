import { html } from 'lit';
import { keyText, type MovedKeys } from './key-places.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** How long a finger holds before lead can be let go, milliseconds. */
const HOLD_MS = 600;

/** Lets lead go in two steps: hold, then confirm elsewhere; with keys twice. One touch never drops a belt. */
export class LeadRelease extends Panel {
  static override properties = {
    armed: { attribute: false },
    pieces: { attribute: false },
    toggles: { attribute: false },
    keys: { attribute: false },
  };
  declare armed: boolean;
  /** Pieces that can still be let go. */
  declare pieces: number;
  /** For those who cannot hold: a click arms as well. */
  declare toggles: boolean;
  declare keys: MovedKeys;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.armed = false;
    this.pieces = 0;
    this.toggles = false;
    this.keys = {};
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop();
  }

  override render() {
    return html`<button
        type="button"
        class="act release ${this.armed ? 'is-armed' : ''}"
        @pointerdown=${this.#start}
        @pointerup=${this.#stop}
        @pointercancel=${this.#stop}
        @pointerleave=${this.#stop}
        @contextmenu=${(event: Event) => event.preventDefault()}
        @click=${this.#clicked}
      >
        <span class="word">release</span>
        <span class="note touch-only">${this.toggles ? 'press' : 'hold'}</span>
        <kbd aria-hidden="true">${keyText('KeyX', this.keys)} twice</kbd>
      </button>
      ${
        this.armed
          ? html`<div class="confirm" role="group" aria-label="Let lead go">
              <button type="button" class="tool" @click=${() => wish(this, { kind: 'release', all: false })}>
                let one piece go
              </button>
              ${
                this.pieces > 1
                  ? html`<button type="button" class="tool" @click=${() => wish(this, { kind: 'release', all: true })}>
                      let all ${this.pieces} go
                    </button>`
                  : ''
              }
              <button type="button" class="tool" @click=${() => wish(this, { kind: 'arm', armed: false })}>
                keep it
              </button>
            </div>`
          : ''
      }`;
  }

  /** What is to be confirmed must be in sight, also at the end of a list. */
  override updated(changed: ReadonlyMap<PropertyKey, unknown>): void {
    if (changed.has('armed') && this.armed) this.querySelector('.confirm')?.scrollIntoView({ block: 'nearest' });
  }

  #start(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.#timer = setTimeout(() => wish(this, { kind: 'arm', armed: true }), HOLD_MS);
  }

  #stop(): void {
    clearTimeout(this.#timer);
  }

  /** Keys and assistive programs click without a pointer: the first arms, the second lets one piece go. */
  #clicked(event: MouseEvent): void {
    if (event.detail !== 0 && !(this.toggles && !this.armed)) return;
    wish(this, this.armed ? { kind: 'release', all: false } : { kind: 'arm', armed: true });
  }
}
customElements.define('lead-release', LeadRelease);
