import { focusOf } from './keys.ts';
import type { Presented } from './presented.ts';

/** What keeps a press for itself. */
const OWN = 'button, a, input, select, textarea, summary, label, dialog, [role=dialog]';

/** One key, or the whole page where nothing else is to be pressed: down breathes in, up breathes out, until the next. */
export class OneButton {
  readonly #program: Presented;
  on = false;
  #pointer: number | undefined;

  constructor(program: Presented) {
    this.#program = program;
    const { window: view, root } = program.shell;
    const free = () => focusOf(root.ownerDocument.activeElement) === 'elsewhere';
    view.addEventListener(
      'keydown',
      (event) => {
        if (!this.#takes() || event.code !== 'Space' || !free() || event.ctrlKey || event.metaKey || event.altKey)
          return;
        event.preventDefault();
        event.stopImmediatePropagation();
        if (!event.repeat) this.#down();
      },
      { capture: true },
    );
    view.addEventListener('keyup', (event) => {
      if (this.#takes() && event.code === 'Space' && free()) this.#up();
    });
    root.addEventListener('pointerdown', (event) => {
      if (!this.#takes() || this.#pointer !== undefined || event.button !== 0) return;
      if (event.target instanceof Element && event.target.closest(OWN)) return;
      this.#pointer = event.pointerId;
      this.#down();
    });
    for (const type of ['pointerup', 'pointercancel'] as const)
      view.addEventListener(type, (event) => {
        if (event.pointerId !== this.#pointer) return;
        this.#pointer = undefined;
        if (this.on) this.#up();
      });
  }

  #takes(): boolean {
    const { place, prompt, moreOpen } = this.#program.shell.view;
    return this.on && !prompt && !moreOpen && (place === 'start' || place === 'fly' || place === 'lesson');
  }

  #down(): void {
    const { shell } = this.#program;
    if (shell.view.settings.toggles && this.#breathesIn()) return this.#out();
    this.#program.act('out', false);
    this.#program.act('in', true);
  }

  #up(): void {
    if (!this.#program.shell.view.settings.toggles) this.#out();
  }

  #out(): void {
    this.#program.act('in', false);
    this.#program.act('out', true);
  }

  #breathesIn(): boolean {
    return this.#program.shell.view.deck?.down.has('in') ?? false;
  }
}
