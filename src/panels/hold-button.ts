import { html, nothing } from 'lit';
import { ACTS, isHeld, type Act } from './acts.ts';
import { keyText, type MovedKeys } from './key-places.ts';
import { Panel } from './panel.ts';

/**
 * A button that acts while it is down: pointer, touch (captured, so that a sliding thumb lets go only where it lifts), Enter
 * and Space. As a toggle, one press begins and the next ends. Whether it is down is the page's to say: it also hears keys.
 */
export class HoldButton extends Panel {
  static override properties = {
    act: { attribute: false },
    down: { attribute: false },
    toggles: { attribute: false },
    pressed: { attribute: false },
    note: { attribute: false },
    holds: { attribute: false },
    keys: { attribute: false },
  };
  declare act: Act;
  declare down: boolean;
  declare toggles: boolean;
  /** Of acts that stay: whether it is in force; undefined where nothing stays. */
  declare pressed: boolean | undefined;
  /** Said below the word, as "nothing left". */
  declare note: string;
  /** What the bag of gas holds that it fills; a small screen has no bars that show it. */
  declare holds: string;
  declare keys: MovedKeys;
  #pointer: number | undefined;
  #keyed = false;

  constructor() {
    super();
    this.act = 'add';
    this.down = false;
    this.toggles = false;
    this.pressed = undefined;
    this.note = this.holds = '';
    this.keys = {};
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.#pointer !== undefined || this.#keyed) this.#send(false);
    this.#pointer = undefined;
    this.#keyed = false;
  }

  override render() {
    const { words, code } = ACTS[this.act];
    const stays = this.pressed ?? (isHeld(this.act) && this.toggles ? this.down : undefined);
    return html`<button
      type="button"
      class="act ${this.down || this.pressed ? 'is-down' : ''}"
      data-act=${this.act}
      aria-pressed=${stays ?? nothing}
      @pointerdown=${this.#pointerDown}
      @pointerup=${this.#pointerUp}
      @pointercancel=${this.#pointerUp}
      @lostpointercapture=${this.#pointerUp}
      @contextmenu=${(event: Event) => event.preventDefault()}
      @keydown=${this.#keyDown}
      @keyup=${this.#keyUp}
      @blur=${this.#blurred}
      @click=${this.#clicked}
    >
      <span class="word">${words}</span>
      ${this.note ? html`<span class="note">${this.note}</span>` : ''}
      ${this.holds ? html`<span class="note holds" aria-hidden="true">${this.holds}</span>` : ''}
      <kbd aria-hidden="true">${keyText(code, this.keys)}</kbd>
    </button>`;
  }

  #send(down: boolean): void {
    this.send({ kind: 'act', act: this.act, down });
  }

  #begin(): void {
    this.#send(this.toggles && isHeld(this.act) ? !this.down : true);
  }

  #end(): void {
    if (!this.toggles || !isHeld(this.act)) this.#send(false);
  }

  #pointerDown(event: PointerEvent): void {
    if (this.#pointer !== undefined || event.button !== 0) return;
    this.#pointer = event.pointerId;
    if (event.target instanceof Element && event.isTrusted)
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
    this.#begin();
  }

  #pointerUp(event: PointerEvent): void {
    if (event.pointerId !== this.#pointer) return;
    this.#pointer = undefined;
    this.#end();
  }

  #keyDown(event: KeyboardEvent): void {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    event.stopPropagation();
    if (event.repeat || this.#keyed) return;
    this.#keyed = true;
    this.#begin();
  }

  #keyUp(event: KeyboardEvent): void {
    if ((event.key !== 'Enter' && event.key !== ' ') || !this.#keyed) return;
    this.#keyed = false;
    this.#end();
  }

  #blurred(): void {
    if (!this.#keyed) return;
    this.#keyed = false;
    this.#end();
  }

  /** A click that no finger or key began, as assistive programs send: begins, and ends a moment later by itself. */
  #clicked(event: MouseEvent): void {
    if (event.detail !== 0 || this.#keyed || this.#pointer !== undefined) return;
    this.#begin();
    if (!this.toggles) setTimeout(() => this.#end(), 400);
  }
}
customElements.define('hold-button', HoldButton);
