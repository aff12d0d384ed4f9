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
};

/** A key as it stands on a button, given by its usual place. */
export function keyText(usual: string, moved: MovedKeys = {}): string {
  const code = moved[usual] ?? usual;
  return DRAWN[code] ?? code.replace(/^(Key|Digit)/, '');
}
