import { WishEvent, fetchCaptions, usualPlace, type Settings } from '../panels/index.ts';
import type { Dives } from './dives.ts';
import { focusOf } from './keys.ts';
import { timeStands } from './page-view.ts';
import type { Shell } from './shell.ts';
import { Captions } from './sound-captions.ts';
import { listened, soundsBetween, type Listened, type Sounds } from './sound-heard.ts';
import type { SoundOut } from './sound-out.ts';
import './sound.css';

/** Without a new tick for so long nothing sounds any more, milliseconds: at quarter speed a frame may bring none. */
const HELD_MS = 150;
/** How often captions are told, milliseconds. */
const TOLD_MS = 100;

/** Listens to the dive in hand, and lets it be heard, read, or both; while neither is wanted it does nothing. */
class Sound {
  readonly #shell: Shell;
  readonly #dives: () => Dives;
  readonly #captions = new Captions();
  #context: AudioContext | null = null;
  #out: SoundOut | null = null;
  #following = false;
  #flight: unknown = null;
  #last: Listened | null = null;
  #sounds: Sounds | null = null;
  #newMs = -Infinity;
  #toldMs = -Infinity;
  #told = '';

  constructor(shell: Shell, dives: () => Dives) {
    this.#shell = shell;
    this.#dives = dives;
    const { window: view, root } = shell;
    root.addEventListener('wish', (event) => {
      if (event instanceof WishEvent && event.wish.kind === 'settings') this.#chosen();
    });
    // A browser lets a page be heard only after somebody has touched it; who comes back with sound on is heard from then on.
    for (const type of ['keydown', 'pointerup'] as const) view.addEventListener(type, () => this.#wake());
    view.addEventListener('keydown', (event) => this.#key(event));
    view.document.addEventListener('visibilitychange', () => {
      if (view.document.hidden) this.#out?.rest();
    });
    this.#chosen();
  }

  #chosen(): void {
    const { sound, captions } = this.#shell.view.settings;
    if (sound) this.#wake();
    else this.#out?.rest();
    if (captions) void fetchCaptions().catch(() => undefined);
    else if (this.#shell.view.captions) this.#shell.show({ captions: null });
    this.#told = '';
    if ((sound || captions) && !this.#following) this.#next();
  }

  #key(event: KeyboardEvent): void {
    const { moreOpen, settings } = this.#shell.view;
    const shortcut = event.ctrlKey || event.metaKey || event.altKey || event.repeat;
    if (shortcut || moreOpen || usualPlace(event.code, settings.keys) !== 'Slash') return;
    if (focusOf(this.#shell.root.ownerDocument.activeElement) === 'typing') return;
    event.preventDefault();
    this.#set({ sound: !settings.sound });
    this.#shell.show({ spoken: this.#shell.view.settings.sound ? 'Sound is on.' : 'Sound is off.' });
  }

  #wake(): void {
    const { window: view } = this.#shell;
    if (!this.#shell.view.settings.sound || this.#context) return;
    if (view.navigator.userActivation && !view.navigator.userActivation.hasBeenActive) return;
    try {
      this.#context = new AudioContext();
    } catch {
      this.#set({ sound: false });
      this.#shell.show({ trouble: 'This browser makes no sounds for us. Captions say what would be heard.' });
      return;
    }
    void this.#begin(this.#context);
  }

  async #begin(context: AudioContext): Promise<void> {
    try {
      const { SoundOut } = await import('./sound-out.ts');
      this.#out = new SoundOut(context);
    } catch {
      this.#context = null;
      this.#set({ sound: false });
      this.#shell.show({
        trouble: 'Sound was not loaded. Check the connection and try again, or load the page again.',
      });
    }
  }

  #set(settings: Partial<Settings>): void {
    this.#shell.root.dispatchEvent(new WishEvent({ kind: 'settings', settings }));
  }

  /** Frame by frame while something is wanted. */
  #next(): void {
    this.#following = true;
    this.#shell.window.requestAnimationFrame((nowMs) => {
      const { sound, captions, soundVolume } = this.#shell.view.settings;
      this.#following = sound || captions;
      if (!this.#following) return;
      this.#listen(nowMs);
      if (sound) this.#out?.play(this.#sounds, soundVolume);
      if (captions && nowMs - this.#toldMs >= TOLD_MS) this.#tell(nowMs);
      this.#next();
    });
  }

  #listen(nowMs: number): void {
    const { lookedBack, flight } = this.#dives();
    const { view } = this.#shell;
    const { place } = view;
    const flown = place === 'fly' || place === 'lesson';
    const now = listened(lookedBack ?? flight.dive);
    const before = this.#last;
    const stands = !flown || timeStands(view);
    const same = flight === this.#flight && before !== null;
    this.#flight = flight;
    if (same && now.state.tick === before.state.tick) {
      if (stands || nowMs - this.#newMs > HELD_MS) this.#sounds = null;
      return;
    }
    this.#last = now;
    this.#newMs = nowMs;
    const sounds = same ? soundsBetween(flight.rig, before, now) : null;
    if (sounds) this.#captions.hear(sounds, now.state.tick);
    else this.#captions.clear();
    this.#sounds = stands ? null : sounds;
  }

  #tell(nowMs: number): void {
    this.#toldMs = nowMs;
    const captions = this.#captions.view;
    const text = JSON.stringify(captions);
    if (text === this.#told) return;
    this.#told = text;
    this.#shell.show({ captions });
  }
}

/** Lets dives be heard, off until somebody switches it on. */
export function keepSound(shell: Shell, dives: () => Dives): void {
  new Sound(shell, dives);
}
