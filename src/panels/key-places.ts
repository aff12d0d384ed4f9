/** Something that has a key, or a part of a gamepad: its words and its usual place. */
export interface KeyRow {
  readonly words: string;
  readonly usual: string;
}

/** Keys that somebody moved: the usual place of each to its place now, both as `KeyboardEvent.code`. */
export type MovedKeys = Readonly<Record<string, string>>;

/** The usual place of a key that is pressed; empty where that key was moved away and nothing came in its stead. */
export function usualPlace(code: string, moved: MovedKeys): string {
  for (const usual in moved) if (moved[usual] === code) return usual;
  return code in moved ? '' : code;
}

const DRAWN: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  BracketLeft: '[',
  BracketRight: ']',
  Comma: ',',
  Slash: '/',
  Quote: '’',
  Backquote: '`',
  Backslash: '\\',
  Minus: '−',
  Equal: '=',
  Semicolon: ';',
};

/** A key as it stands on a button, given by its usual place. */
export function keyText(usual: string, moved: MovedKeys = {}): string {
  const code = moved[usual] ?? usual;
  return DRAWN[code] ?? code.replace(/^(Key|Digit)/, '').replace(/^Numpad/, 'number pad ');
}

/**
 * What came of wanting something at another place, in words; what is already there goes where it came from.
 * @param text how a row is written as a place, given its usual one
 */
export function swapped(
  rows: readonly KeyRow[],
  text: (usual: string, places: MovedKeys) => string,
  places: MovedKeys,
  usual: string,
  code: string,
): { readonly keys: MovedKeys; readonly words: string } {
  const rowAt = (place: string) => rows.find((row) => row.usual === place);
  const row = rowAt(usual)!;
  const from = places[usual] ?? usual;
  if (code === from) return { keys: places, words: `“${row.words}” stays on ${text(usual, places)}.` };
  const there = rowAt(usualPlace(code, places));
  const all = { ...places, [usual]: code, ...(there ? { [there.usual]: from } : {}) };
  const next = Object.fromEntries(Object.entries(all).filter(([place, now]) => place !== now));
  const now = `“${row.words}” is on ${text(usual, next)} now`;
  if (!there) return { keys: next, words: `${now}.` };
  return { keys: next, words: `${now}; “${there.words}”, which was there, is on ${text(there.usual, next)}.` };
}
