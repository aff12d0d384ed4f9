import { WishEvent, isHeld, swapped, type PadView, type PresentAsk, type Wish } from '../panels/index.ts';
import type { Latency } from './latency.ts';
import { PAD_ROWS, Pads, padText } from './pads.ts';
import type { Presented } from './presented.ts';

/** A gamepad on the dive, and its parts given other things to do. */
export class PadHands {
  readonly #program: Presented;
  readonly #pads: Pads;
  #waiting = '';
  #words = '';

  constructor(program: Presented, latency: Latency) {
    this.#program = program;
    const { shell } = program;
    this.#pads = new Pads(shell.window.navigator, {
      moved: () => shell.view.settings.pads,
      act: (act, down) => {
        latency.heard(performance.now());
        // Under an open sheet nothing is flown; what was down lets go.
        if (down && shell.view.moreOpen) return;
        if (!shell.view.settings.toggles || !isHeld(act)) program.act(act, down);
        else if (down) program.toggle(act);
      },
      command: (command) => {
        if (!shell.view.moreOpen) program.command(command);
      },
      present: (what) => this.#wish({ kind: 'present', ask: { do: what } }),
      time: (ask) => this.#wish({ kind: 'time', ask }),
    });
  }

  /** Before a frame. @returns whether something changed that the page shows */
  poll(): boolean {
    const { there } = this.#pads;
    this.#pads.poll();
    // Who closes the sheet has changed his mind.
    if (this.#waiting && !this.#program.shell.view.moreOpen) this.wait({ do: 'pad', usual: '' });
    return there !== this.#pads.there;
  }

  get view(): PadView {
    const { pads } = this.#program.shell.view.settings;
    return {
      there: this.#pads.there,
      rows: PAD_ROWS.map(({ usual, words }) => ({ usual, words, part: padText(usual, pads) })),
      waiting: this.#waiting,
      words: this.#words,
      moved: Object.keys(pads).length > 0,
    };
  }

  /** Waits for the part that is to do what another one usually does; the same once more, or none, waits no longer. */
  wait({ usual }: Extract<PresentAsk, { do: 'pad' }>): void {
    this.#waiting = usual === this.#waiting ? '' : usual;
    this.#words = '';
    const waited = this.#waiting;
    this.#pads.wait(waited ? (part) => this.#took(waited, part) : null);
  }

  #took(usual: string, part: string): void {
    const { keys: pads, words } = swapped(PAD_ROWS, padText, this.#program.shell.view.settings.pads, usual, part);
    this.#waiting = '';
    this.#words = words;
    this.#wish({ kind: 'settings', settings: { pads } });
    this.#program.refresh();
  }

  #wish(wish: Wish): void {
    if (wish.kind === 'settings' || !this.#program.shell.view.moreOpen)
      this.#program.shell.root.dispatchEvent(new WishEvent(wish));
  }
}
