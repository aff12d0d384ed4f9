/** What a diver does with the hands, the lungs, the fins and the body. Those that are held act as long as they are down. */
export interface ActLabel {
  readonly words: string;
  /** Words away from the deck, where no heading stands above them. */
  readonly alone?: string;
  /** `KeyboardEvent.code`, the place of the key whatever the layout. */
  readonly code: string;
  /** The act that undoes it: a second finger there is ignored while this one is down. */
  readonly opposite?: Act;
}

export type Act =
  | 'add'
  | 'vent'
  | 'blow'
  | 'vent-all'
  | 'suit-add'
  | 'suit-vent'
  | 'valve-open'
  | 'valve-shut'
  | 'in'
  | 'out'
  | 'middle'
  | 'lungs'
  | 'hold'
  | 'kick-up'
  | 'kick-down'
  | 'head-up'
  | 'level'
  | 'head-down'
  | 'line'
  | 'lead-off'
  | 'lead-on'
  | 'diluent'
  | 'nose-vent';

/** Words and usual keys of all acts. Our own choice: gas under the right hand, breath under the left, fins on the arrows. */
export const ACTS: Readonly<Record<Act, ActLabel>> = {
  add: { words: 'add', alone: 'jacket add', code: 'KeyI', opposite: 'vent' },
  vent: { words: 'vent', alone: 'jacket vent', code: 'KeyK', opposite: 'add' },
  blow: { words: 'by mouth', alone: 'jacket by mouth', code: 'KeyO', opposite: 'vent' },
  'vent-all': { words: 'vent all', alone: 'jacket vent all', code: 'KeyG' },
  'suit-add': { words: 'add', alone: 'suit add', code: 'KeyD', opposite: 'suit-vent' },
  'suit-vent': { words: 'vent', alone: 'suit vent', code: 'KeyC', opposite: 'suit-add' },
  'valve-open': { words: 'valve opens earlier', alone: 'suit valve opens earlier', code: 'ArrowLeft' },
  'valve-shut': { words: 'valve opens later', alone: 'suit valve opens later', code: 'ArrowRight' },
  in: { words: 'in', alone: 'breath in', code: 'KeyW', opposite: 'out' },
  out: { words: 'out', alone: 'breath out', code: 'KeyS', opposite: 'in' },
  middle: { words: 'middle', alone: 'breath middle', code: 'KeyE' },
  lungs: { words: 'direct lungs', alone: 'lungs direct or automatic', code: 'Backquote' },
  hold: { words: 'hold', alone: 'hold breath, only with direct lungs', code: 'Backslash' },
  'kick-up': { words: 'kick up', code: 'ArrowUp', opposite: 'kick-down' },
  'kick-down': { words: 'kick down', code: 'ArrowDown', opposite: 'kick-up' },
  'head-up': { words: 'head up', code: 'KeyU' },
  level: { words: 'level', code: 'KeyJ' },
  'head-down': { words: 'head down', code: 'KeyN' },
  line: { words: 'hold line', code: 'KeyL' },
  'lead-off': { words: 'lead off', alone: 'lead off, at the surface', code: 'Delete' },
  'lead-on': { words: 'lead on', alone: 'lead on, at the surface', code: 'Insert' },
  diluent: { words: 'add', alone: 'loop add', code: 'KeyY', opposite: 'nose-vent' },
  'nose-vent': { words: 'out by nose', alone: 'loop out by nose', code: 'KeyH', opposite: 'diluent' },
};

const ONCE: ReadonlySet<Act> = new Set([
  'vent-all',
  'valve-open',
  'valve-shut',
  'middle',
  'lungs',
  'hold',
  'head-up',
  'level',
  'head-down',
  'line',
  'lead-off',
  'lead-on',
]);

/** Whether an act lasts as long as it is down; the others happen once. */
export function isHeld(act: Act): boolean {
  return !ONCE.has(act);
}

/** An act in words that stand alone. */
export function actWords(act: Act): string {
  return ACTS[act].alone ?? ACTS[act].words;
}
