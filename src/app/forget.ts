/** What all keys of ours in a browser's storage begin with. */
const OURS = 'midwater';

/** Takes all settings out of the browser's storage; where it may not be asked for there are none. */
export function forgetSettings(view: Window): void {
  try {
    const keys = Array.from({ length: view.localStorage.length }, (_, i) => view.localStorage.key(i) ?? '');
    for (const key of keys) if (key.startsWith(OURS)) view.localStorage.removeItem(key);
  } catch {
    // Refused: nothing of ours can be there.
  }
}
