import { WishEvent, usualPlace } from '../panels/index.ts';
import { focusOf } from './keys.ts';
import type { Shell } from './shell.ts';

/** The key that goes to the bench from anywhere, by its usual place; at the bench it goes to what is done first there. */
const KEY = 'F2';

/** Hears the key that goes to the bench. */
export function keepBenchKey(shell: Shell): void {
  const { root } = shell;
  shell.window.addEventListener('keydown', (event) => {
    const shortcut = event.ctrlKey || event.metaKey || event.altKey || event.shiftKey;
    if (shortcut || event.repeat || usualPlace(event.code, shell.view.settings.keys) !== KEY) return;
    if (focusOf(root.ownerDocument.activeElement) === 'typing') return;
    event.preventDefault();
    if (shell.view.place === 'bench') root.querySelector<HTMLElement>('bench-sheet .main')?.focus();
    else root.dispatchEvent(new WishEvent({ kind: 'place', place: 'bench' }));
  });
}
