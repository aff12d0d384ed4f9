import { ACTS, type Act } from '../panels/index.ts';
import type { KeyCommand } from './keys.ts';

/** What a part of a gamepad does. */
type Does = Act | KeyCommand | 'next';

/** A button by its index, or an axis and the way it is pushed. */
interface Part {
  readonly button?: number;
  readonly axis?: number;
  readonly way?: -1 | 1;
  readonly does: Does;
}

/** Right hand gas, left hand breath, as on the keys; the sticks turn and kick. Numbered as browsers number pads of the usual layout. */
export const PAD: readonly Part[] = [
  { button: 7, does: 'add' },
  { button: 5, does: 'vent' },
  { button: 6, does: 'in' },
  { button: 4, does: 'out' },
  { axis: 1, way: -1, does: 'kick-up' },
  { axis: 1, way: 1, does: 'kick-down' },
  { axis: 3, way: -1, does: 'head-up' },
  { axis: 3, way: 1, does: 'head-down' },
  { button: 11, does: 'level' },
  { button: 0, does: 'middle' },
  { button: 1, does: 'blow' },
  { button: 2, does: 'line' },
  { button: 3, does: 'release' },
  { button: 12, does: 'suit-add' },
  { button: 13, does: 'suit-vent' },
  { axis: 0, way: 1, does: 'diluent' },
  { axis: 0, way: -1, does: 'nose-vent' },
  { button: 9, does: 'freeze' },
  { button: 8, does: 'restart' },
  { button: 14, does: 'back' },
  { button: 15, does: 'next' },
];

const COMMAND_WORDS: Readonly<Record<KeyCommand | 'next', string>> = {
  freeze: 'freeze, go on',
  restart: 'restart',
  back: 'back 10 s',
  release: 'release lead, pressed twice',
  next: 'next step',
};

/** A stick or a button counts as down from here on, and as up again below the second; between them it stays as it was. */
const DOWN = 0.5;
const UP = 0.35;

/** What each part does, in words that belong to no maker. */
export const PAD_ROWS: readonly { readonly part: string; readonly words: string }[] = PAD.map((part) => ({
  part: partWords(part),
  words: doesWords(part.does),
}));

function partWords({ button, axis = 0, way = 1 }: Part): string {
  if (button !== undefined) return `button ${button + 1}`;
  const stick = axis < 2 ? 'left stick' : 'right stick';
  const ways = axis % 2 === 0 ? (['left', 'right'] as const) : (['up', 'down'] as const);
  return `${stick} ${ways[way < 0 ? 0 : 1]}`;
}

function doesWords(does: Does): string {
  if (!(does in ACTS)) return COMMAND_WORDS[does as KeyCommand | 'next'];
  const { words } = ACTS[does as Act];
  return does.startsWith('suit-') ? `suit ${words}` : does === 'diluent' ? 'loop add' : words;
}

/** Who hears a pad. */
export interface PadEars {
  act(act: Act, down: boolean): void;
  command(command: KeyCommand): void;
  next(): void;
}

/** Looks at every gamepad before each frame; one that is plugged in, or pulled out, in the middle of a dive is as welcome. */
export class Pads {
  readonly #navigator: Pick<Navigator, 'getGamepads'>;
  readonly #ears: PadEars;
  readonly #down = new Set<Part>();
  there = false;

  constructor(navigator: Pick<Navigator, 'getGamepads'>, ears: PadEars) {
    this.#navigator = navigator;
    this.#ears = ears;
  }

  poll(): void {
    const pads = this.#connected();
    this.there = pads.length > 0;
    if (!this.there && this.#down.size === 0) return;
    for (const part of PAD) {
      const was = this.#down.has(part);
      const pushed = Math.max(0, ...pads.map((pad) => pushOf(pad, part)));
      const is = pushed >= (was ? UP : DOWN);
      if (is === was) continue;
      if (is) this.#down.add(part);
      else this.#down.delete(part);
      this.#tell(part.does, is);
    }
  }

  /** None where a browser knows no pads, or where whoever frames the page forbids them. */
  #connected(): Gamepad[] {
    try {
      return this.#navigator.getGamepads?.().filter((pad): pad is Gamepad => pad !== null && pad.connected) ?? [];
    } catch {
      return [];
    }
  }

  #tell(does: Does, down: boolean): void {
    if (does in ACTS) this.#ears.act(does as Act, down);
    else if (!down) return;
    else if (does === 'next') this.#ears.next();
    else this.#ears.command(does as KeyCommand);
  }
}

function pushOf(pad: Gamepad, { button, axis, way = 1 }: Part): number {
  if (button !== undefined) {
    const { pressed = false, value = 0 } = pad.buttons[button] ?? {};
    return pressed ? 1 : value;
  }
  return (pad.axes[axis ?? 0] ?? 0) * way;
}
