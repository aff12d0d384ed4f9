/** What a diver does with the hands, the lungs, the fins and the body. Those that are held act as long as they are down. */
export interface ActLabel {
  readonly words: string;
  /** The key as it stands on the button. */
  readonly key: string;
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

/** Words and keys of all acts. Our own choice: gas under the right hand, breath under the left, fins on the arrows. */
export const ACTS: Readonly<Record<Act, ActLabel>> = {
  add: { words: 'add', key: 'I', code: 'KeyI', opposite: 'vent' },
  vent: { words: 'vent', key: 'K', code: 'KeyK', opposite: 'add' },
  blow: { words: 'by mouth', key: 'O', code: 'KeyO', opposite: 'vent' },
  'suit-add': { words: 'add', key: 'D', code: 'KeyD', opposite: 'suit-vent' },
  'suit-vent': { words: 'vent', key: 'C', code: 'KeyC', opposite: 'suit-add' },
  in: { words: 'in', key: 'W', code: 'KeyW', opposite: 'out' },
  out: { words: 'out', key: 'S', code: 'KeyS', opposite: 'in' },
  middle: { words: 'middle', key: 'E', code: 'KeyE' },
  'kick-up': { words: 'kick up', key: '↑', code: 'ArrowUp', opposite: 'kick-down' },
  'kick-down': { words: 'kick down', key: '↓', code: 'ArrowDown', opposite: 'kick-up' },
  'head-up': { words: 'head up', key: 'U', code: 'KeyU' },
  level: { words: 'level', key: 'J', code: 'KeyJ' },
  'head-down': { words: 'head down', key: 'N', code: 'KeyN' },
  line: { words: 'hold line', key: 'L', code: 'KeyL' },
  diluent: { words: 'add', key: 'Y', code: 'KeyY', opposite: 'nose-vent' },
  'nose-vent': { words: 'out by nose', key: 'H', code: 'KeyH', opposite: 'diluent' },
};

/** Whether an act lasts as long as it is down; the others happen once. */
export function isHeld(act: Act): boolean {
  return !['middle', 'head-up', 'level', 'head-down', 'line'].includes(act);
}
