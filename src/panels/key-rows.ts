import { ACTS, actWords, type Act } from './acts.ts';
import { keyText, swapped, type KeyRow, type MovedKeys } from './key-places.ts';
import { LOOKS } from './looks.ts';

/** The second diver's own hands. */
const SECOND_ROWS: readonly KeyRow[] = [
  { words: 'second diver: jacket add', usual: 'Numpad8' },
  { words: 'second diver: jacket vent', usual: 'Numpad2' },
  { words: 'second diver: breath in', usual: 'Numpad6' },
  { words: 'second diver: breath out', usual: 'Numpad4' },
  { words: 'second diver: kick up', usual: 'Numpad9' },
  { words: 'second diver: kick down', usual: 'Numpad3' },
];

/** What keys do at the bench that do something else over the water. */
const AT_BENCH: Readonly<Record<string, string>> = {
  ArrowLeft: 'carry left',
  ArrowRight: 'carry right',
  ArrowUp: 'carry up; with shift by five',
  ArrowDown: 'carry down; with shift by five',
  KeyN: 'choose another',
  Digit1: 'a ball',
  Digit2: 'a tray',
  Digit3: 'a boat',
  Digit4: 'spring balance',
  Digit5: 'spout and glass',
  Minus: 'squeeze less',
  Equal: 'squeeze more',
};

/** Every act, look and command that has a key, in the order of the list. */
export const KEY_ROWS: readonly KeyRow[] = [
  ...(Object.keys(ACTS) as Act[]).map((act) => ({ words: actWords(act), usual: ACTS[act].code })),
  ...LOOKS.map(({ key, words }) => ({ words: words + handWords(key), usual: `Digit${key}` })),
  { words: 'bench', usual: 'F2' },
  { words: 'start', usual: 'F4' },
  { words: 'release lead, pressed twice', usual: 'KeyX' },
  { words: 'release all lead, pressed twice', usual: 'Backspace' },
  { words: 'freeze, go on', usual: 'KeyP' },
  { words: 'freeze, go on; one-button breath', usual: 'Space' },
  { words: 'back 10 s', usual: 'KeyZ' },
  { words: 'restart', usual: 'KeyR' },
  { words: 'time slower', usual: 'Minus' },
  { words: 'time faster', usual: 'Equal' },
  { words: 'traces', usual: 'KeyT' },
  { words: 'a tenth of a second back; with shift a second', usual: 'BracketLeft' },
  { words: 'a tenth of a second on; with shift a second', usual: 'BracketRight' },
  { words: 'take over from here', usual: 'KeyV' },
  { words: 'bookmark', usual: 'KeyM' },
  { words: 'to the bookmark before', usual: 'KeyA' },
  { words: 'strip of time', usual: 'Comma' },
  { words: 'a second diver', usual: 'Quote' },
  { words: 'fly the other diver from here', usual: 'Semicolon' },
  ...SECOND_ROWS,
  { words: 'sound', usual: 'Slash' },
  { words: 'next step', usual: 'PageDown' },
  { words: 'a step back', usual: 'PageUp' },
  { words: 'blank, show again', usual: 'KeyB' },
  { words: 'blank, show again', usual: 'Period' },
  { words: 'full screen', usual: 'KeyF' },
  { words: 'presenter’s strip', usual: 'KeyQ' },
].map(({ words, usual }) => ({ words: words + (AT_BENCH[usual] ? `; at the bench ${AT_BENCH[usual]}` : ''), usual }));

/** While a question stands the keys of some looks count the hands of a class. */
function handWords(key: string): string {
  const letter = ['A', 'B', 'C', 'D'][Number(key) - 6];
  return letter ? `; in a question a hand for ${letter}` : '';
}

/** Keys that stay what they are: the page, the browser and assistive programs need them. */
const KEPT = /^(Escape|Tab|Enter|NumpadEnter|F\d+|(Shift|Control|Alt|Meta)(Left|Right)|CapsLock|ContextMenu|)$/;

/** What came of wanting a key somewhere else, in words; what is already there goes where the other came from. */
export function moved(
  keys: MovedKeys,
  usual: string,
  code: string,
): { readonly keys: MovedKeys; readonly words: string } {
  // What has its usual place among them may go back there.
  if (KEPT.test(code) && code !== usual)
    return { keys, words: `${keyText(code) || 'That key'} stays what it is: nothing can be moved there.` };
  return swapped(KEY_ROWS, keyText, keys, usual, code);
}
