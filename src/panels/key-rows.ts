import { ACTS, type Act } from './acts.ts';
import { keyText, usualPlace, type MovedKeys } from './key-places.ts';
import { LOOKS } from './looks.ts';

/** Something that has a key: its words and the usual place of the key. */
export interface KeyRow {
  readonly words: string;
  readonly usual: string;
}

/** Every act, look and command that has a key, in the order of the list. */
export const KEY_ROWS: readonly KeyRow[] = [
  ...(Object.keys(ACTS) as Act[]).map((act) => ({ words: actWords(act), usual: ACTS[act].code })),
  ...LOOKS.map(({ key, words }) => ({ words, usual: `Digit${key}` })),
  { words: 'release lead, pressed twice', usual: 'KeyX' },
  { words: 'freeze, go on', usual: 'KeyP' },
  { words: 'freeze, go on; one-button breath', usual: 'Space' },
  { words: 'back 10 s', usual: 'KeyZ' },
  { words: 'restart', usual: 'KeyR' },
  { words: 'traces', usual: 'KeyT' },
  { words: 'a tenth of a second back; with shift a second', usual: 'BracketLeft' },
  { words: 'a tenth of a second on; with shift a second', usual: 'BracketRight' },
  { words: 'take over from here', usual: 'KeyV' },
  { words: 'bookmark', usual: 'KeyM' },
  { words: 'to the bookmark before', usual: 'KeyA' },
  { words: 'strip of time', usual: 'Comma' },
  { words: 'sound', usual: 'Slash' },
  { words: 'next step', usual: 'PageDown' },
  { words: 'a step back', usual: 'PageUp' },
  { words: 'blank, show again', usual: 'KeyB' },
  { words: 'blank, show again', usual: 'Period' },
  { words: 'full screen', usual: 'KeyF' },
  { words: 'presenter’s strip', usual: 'KeyQ' },
  ...['A', 'B', 'C', 'D'].map((letter, at) => ({ words: `a hand for ${letter}`, usual: `Digit${at + 6}` })),
];

/** Keys that stay what they are: the page, the browser and assistive programs need them. */
const KEPT = /^(Escape|Tab|Enter|NumpadEnter|F\d+|(Shift|Control|Alt|Meta)(Left|Right)|CapsLock|ContextMenu|)$/;

/** What came of wanting a key somewhere else, in words; what is already there goes where the other came from. */
export function moved(
  keys: MovedKeys,
  usual: string,
  code: string,
): { readonly keys: MovedKeys; readonly words: string } {
  const row = rowAt(usual)!;
  if (KEPT.test(code))
    return { keys, words: `${keyText(code) || 'That key'} stays what it is: nothing can be moved there.` };
  const from = keys[usual] ?? usual;
  if (code === from) return { keys, words: `“${row.words}” stays on ${keyText(usual, keys)}.` };
  const there = rowAt(usualPlace(code, keys));
  const all = { ...keys, [usual]: code, ...(there ? { [there.usual]: from } : {}) };
  const next = Object.fromEntries(Object.entries(all).filter(([place, now]) => place !== now));
  const now = `“${row.words}” is on ${keyText(usual, next)} now`;
  if (!there) return { keys: next, words: `${now}.` };
  return { keys: next, words: `${now}; “${there.words}”, which was there, is on ${keyText(there.usual, next)}.` };
}

function rowAt(usual: string): KeyRow | undefined {
  return KEY_ROWS.find((row) => row.usual === usual);
}

function actWords(act: Act): string {
  const { words } = ACTS[act];
  if (act.startsWith('suit-')) return `suit ${words}`;
  if (act === 'diluent') return 'loop add';
  if (act === 'nose-vent') return 'loop out by nose';
  if (act === 'add' || act === 'vent') return `jacket ${words}`;
  if (act === 'in' || act === 'out' || act === 'middle') return `breath ${words}`;
  return act === 'blow' ? 'jacket by mouth' : words;
}
