/** What a diver does with the hands, the lungs, the fins and the body. Those that are held act as long as they are down. */
export interface ActLabel {
  readonly words: string;
  /** `KeyboardEvent.code`, the place of the key whatever the layout. */
  readonly code: string;
  /** The act that undoes it: a second finger there is ignored while this one is down. */
  readonly opposite?: Act;
}

export type Act =
  | 'add'
  | 'vent'
  | 'blow'
  | 'suit-add'
  | 'suit-vent'
  | 'in'
  | 'out'
  | 'middle'
  | 'kick-up'
  | 'kick-down'
  | 'head-up'
  | 'level'
  | 'head-down'
  | 'line'
  | 'diluent'
  | 'nose-vent';

/** Words and usual keys of all acts. Our own choice: gas under the right hand, breath under the left, fins on the arrows. */
export const ACTS: Readonly<Record<Act, ActLabel>> = {
  add: { words: 'add', code: 'KeyI', opposite: 'vent' },
  vent: { words: 'vent', code: 'KeyK', opposite: 'add' },
  blow: { words: 'by mouth', code: 'KeyO', opposite: 'vent' },
  'suit-add': { words: 'add', code: 'KeyD', opposite: 'suit-vent' },
  'suit-vent': { words: 'vent', code: 'KeyC', opposite: 'suit-add' },
  in: { words: 'in', code: 'KeyW', opposite: 'out' },
  out: { words: 'out', code: 'KeyS', opposite: 'in' },
  middle: { words: 'middle', code: 'KeyE' },
  'kick-up': { words: 'kick up', code: 'ArrowUp', opposite: 'kick-down' },
  'kick-down': { words: 'kick down', code: 'ArrowDown', opposite: 'kick-up' },
  'head-up': { words: 'head up', code: 'KeyU' },
  level: { words: 'level', code: 'KeyJ' },
  'head-down': { words: 'head down', code: 'KeyN' },
  line: { words: 'hold line', code: 'KeyL' },
  diluent: { words: 'add', code: 'KeyY', opposite: 'nose-vent' },
  'nose-vent': { words: 'out by nose', code: 'KeyH', opposite: 'diluent' },
};

/** Whether an act lasts as long as it is down; the others happen once. */
export function isHeld(act: Act): boolean {
  return !['middle', 'head-up', 'level', 'head-down', 'line'].includes(act);
}
