import { html } from 'lit';
import { keyText } from './key-places.ts';
import { Panel } from './panel.ts';
import { USUAL_SETTINGS, type Settings } from './settings.ts';
import { wish } from './wish.ts';

/** Sound and captions: whether, and how loud. A part of *more*. */
export class SoundChoice extends Panel {
  static override properties = { settings: { attribute: false } };
  declare settings: Settings;

  constructor() {
    super();
    this.settings = USUAL_SETTINGS;
  }

  override render() {
    const { sound, soundVolume, captions, keys } = this.settings;
    return html`<section>
      <h3>Sound</h3>
      <label class="choice"
        ><input type="checkbox" .checked=${sound} @change=${(event: Event) => this.#set({ sound: checked(event) })} />
        breath, inflator, bubbles, and a tone for vertical speed <kbd>${keyText('Slash', keys)}</kbd></label
      >
      <p>The tone: higher the faster you rise, lower the faster you sink, silent while you are still.</p>
      <label
        >how loud
        <input
          type="range"
          min="0.1"
          max="1"
          step="0.1"
          .value=${String(soundVolume)}
          @input=${(event: Event) => this.#set({ soundVolume: Number((event.target as HTMLInputElement).value) })}
      /></label>
      <label class="choice"
        ><input
          type="checkbox"
          .checked=${captions}
          @change=${(event: Event) => this.#set({ captions: checked(event) })}
        />
        captions: what sounds, in words, with or without sound</label
      >
    </section>`;
  }

  #set(settings: Partial<Settings>): void {
    wish(this, { kind: 'settings', settings });
  }
}
customElements.define('sound-choice', SoundChoice);

const checked = (event: Event): boolean => (event.target as HTMLInputElement).checked;
