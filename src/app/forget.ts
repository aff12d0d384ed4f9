/** What all keys of ours in a browser's storage begin with. */
const OURS = 'midwater';

/** Takes all settings, and what the tab remembers, out of the browser's storage; where it may not be asked for there are none. */
export function forgetSettings(view: Window): void {
  try {
    for (const shelf of [view.localStorage, view.sessionStorage]) {
      const keys = Array.from({ length: shelf.length }, (_, i) => shelf.key(i) ?? '');
      for (const key of keys) if (key.startsWith(OURS)) shelf.removeItem(key);
    }
  } catch {
    // Refused: nothing of ours can be there.
  }
}
