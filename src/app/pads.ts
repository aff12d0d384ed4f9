import { ACTS, actWords, usualPlace, type Act, type KeyRow, type MovedKeys, type TimeAsk } from '../panels/index.ts';
import type { KeyCommand } from './keys.ts';

/** What is asked of presenting and of time. */
const ASKS = {
  next: { words: 'next step' },
  previous: { words: 'a step back' },
  blank: { words: 'blank, show again' },
  'step-back': { words: 'a tenth of a second back', ask: { do: 'step', byS: -0.1 } },
  'step-on': { words: 'a tenth of a second on', ask: { do: 'step', byS: 0.1 } },
  'take-over': { words: 'take over from here', ask: { do: 'take-over' } },
  mark: { words: 'bookmark', ask: { do: 'mark' } },
  'last-mark': { words: 'to the bookmark before', ask: { do: 'last-mark' } },
} as const satisfies Record<string, { readonly words: string; readonly ask?: TimeAsk }>;

const COMMANDS: Readonly<Record<KeyCommand, string>> = {
  freeze: 'freeze, go on',
  restart: 'restart',
  back: 'back 10 s',
  release: 'release lead, pressed twice',
  'release-all': 'release all lead, pressed twice',
  slower: 'time slower',
  faster: 'time faster',
};

type Asked = keyof typeof ASKS;
/** What a part of a gamepad does. */
type Does = Act | KeyCommand | Asked;

/** The button that gives the others a second meaning while it is down: the ninth. */
const SECOND = 8;
const SECOND_TEXT = 'button 9 and ';

/** A button by its index, or an axis and the way it is pushed; numbered as browsers number pads of the usual layout. */
interface Part {
  readonly text: string;
  readonly push: (pad: Gamepad) => number;
}

const button = (index: number): Part => ({
  text: `button ${index + 1}`,
  push: ({ buttons }) => (buttons[index]?.pressed ? 1 : (buttons[index]?.value ?? 0)),
});
const stick = (axis: number, way: -1 | 1): Part => {
  const ways = axis % 2 === 0 ? (['left', 'right'] as const) : (['up', 'down'] as const);
  return {
    text: `${axis < 2 ? 'left' : 'right'} stick ${ways[way < 0 ? 0 : 1]}`,
    push: ({ axes }) => (axes[axis] ?? 0) * way,
  };
};
const SECOND_PART = button(SECOND);
const PARTS: readonly Part[] = [
  ...Array.from({ length: 17 }, (_, i) => button(i)).filter((_, i) => i !== SECOND),
  ...[0, 1, 2, 3].flatMap((axis) => [stick(axis, -1), stick(axis, 1)]),
];

/** Right hand gas, left hand breath, as on the keys; the sticks turn and kick. With the ninth button: the rarer one beside it. */
export const PAD: Readonly<Record<string, Does>> = {
  'button 8': 'add',
  'button 6': 'vent',
  'button 7': 'in',
  'button 5': 'out',
  'left stick up': 'kick-up',
  'left stick down': 'kick-down',
  'left stick left': 'nose-vent',
  'left stick right': 'diluent',
  'right stick up': 'head-up',
  'right stick down': 'head-down',
  'right stick left': 'slower',
  'right stick right': 'faster',
  'button 12': 'level',
  'button 1': 'middle',
  'button 2': 'blow',
  'button 3': 'line',
  'button 4': 'release',
  'button 13': 'suit-add',
  'button 14': 'suit-vent',
  'button 10': 'freeze',
  'button 11': 'mark',
  'button 15': 'back',
  'button 16': 'next',
  'button 9 and button 6': 'vent-all',
  'button 9 and button 1': 'lungs',
  'button 9 and button 2': 'hold',
  'button 9 and button 3': 'take-over',
  'button 9 and button 4': 'release-all',
  'button 9 and button 13': 'valve-shut',
  'button 9 and button 14': 'valve-open',
  'button 9 and button 10': 'restart',
  'button 9 and button 11': 'last-mark',
  'button 9 and button 12': 'previous',
  'button 9 and button 15': 'step-back',
  'button 9 and button 16': 'step-on',
  'button 9 and button 5': 'blank',
  'button 9 and right stick up': 'lead-off',
  'button 9 and right stick down': 'lead-on',
};

/** What each part does, in words that belong to no maker. */
export const PAD_ROWS: readonly KeyRow[] = Object.entries(PAD).map(([usual, does]) => ({
  usual,
  words: wordsOf(does),
}));

/** A part of a pad as it is written, given its usual one. */
export const padText = (usual: string, moved: MovedKeys): string => moved[usual] ?? usual;

function wordsOf(does: Does): string {
  if (does in ASKS) return ASKS[does as Asked].words;
  return does in COMMANDS ? COMMANDS[does as KeyCommand] : actWords(does as Act);
}

/** A stick or a button counts as down from here on, and as up again below the second; between them it stays as it was. */
const DOWN = 0.5;
const UP = 0.35;

/** Who hears a pad. */
export interface PadEars {
  /** Parts that somebody moved. */
  moved(): MovedKeys;
  act(act: Act, down: boolean): void;
  command(command: KeyCommand): void;
  present(what: 'next' | 'previous' | 'blank'): void;
  time(ask: TimeAsk): void;
}

/** Looks at every gamepad before each frame; one that is plugged in, or pulled out, in the middle of a dive is as welcome. */
export class Pads {
  readonly #navigator: Pick<Navigator, 'getGamepads'>;
  readonly #ears: PadEars;
  /** What is down, and what it was pressed for: a part lets go of what it began, whatever it would mean by then. */
  readonly #down = new Map<Part, Does | null>();
  #waits: ((place: string) => void) | null = null;
  #second = false;
  there = false;

  constructor(navigator: Pick<Navigator, 'getGamepads'>, ears: PadEars) {
    this.#navigator = navigator;
    this.#ears = ears;
  }

  /** The next part that goes down is told and does nothing; null waits no longer. */
  wait(waits: ((place: string) => void) | null): void {
    this.#waits = waits;
  }

  poll(): void {
    const pads = this.#connected();
    this.there = pads.length > 0;
    if (!this.there && this.#down.size === 0) return;
    const isDown = (part: Part, was: boolean) => Math.max(0, ...pads.map(part.push)) >= (was ? UP : DOWN);
    this.#second = isDown(SECOND_PART, this.#second);
    for (const part of PARTS) {
      const was = this.#down.has(part);
      const is = isDown(part, was);
      if (is && !was) this.#pressed(part);
      else if (was && !is) this.#let(part);
    }
  }

  #pressed(part: Part): void {
    const place = (this.#second ? SECOND_TEXT : '') + part.text;
    const waits = this.#waits;
    this.#waits = null;
    const does = waits ? null : (PAD[usualPlace(place, this.#ears.moved())] ?? null);
    this.#down.set(part, does);
    if (waits) waits(place);
    else if (does) this.#tell(does);
  }

  #let(part: Part): void {
    const does = this.#down.get(part);
    this.#down.delete(part);
    if (does && does in ACTS) this.#ears.act(does as Act, false);
  }

  #tell(does: Does): void {
    if (does in ACTS) this.#ears.act(does as Act, true);
    else if (does in COMMANDS) this.#ears.command(does as KeyCommand);
    else if (does === 'next' || does === 'previous' || does === 'blank') this.#ears.present(does);
    else this.#ears.time(ASKS[does as Exclude<Asked, 'next' | 'previous' | 'blank'>].ask);
  }

  /** None where a browser knows no pads, or where whoever frames the page forbids them. */
  #connected(): Gamepad[] {
    try {
      return this.#navigator.getGamepads?.().filter((pad): pad is Gamepad => pad !== null && pad.connected) ?? [];
    } catch {
      return [];
    }
  }
}
