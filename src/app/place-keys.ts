import { WishEvent, usualPlace } from '../panels/index.ts';
import { focusOf } from './keys.ts';
import type { Shell } from './shell.ts';

/** Keys that go to a place from anywhere, by their usual places. */
const PLACES: Readonly<Record<string, 'bench' | 'start'>> = { F2: 'bench', F4: 'start' };

/** Hears the keys that go to a place; at the bench its own goes to what is done first there. */
export function keepPlaceKeys(shell: Shell): void {
  const { root } = shell;
  shell.window.addEventListener('keydown', (event) => {
    const shortcut = event.ctrlKey || event.metaKey || event.altKey || event.shiftKey;
    const place = PLACES[usualPlace(event.code, shell.view.settings.keys)];
    if (shortcut || event.repeat || !place) return;
    if (focusOf(root.ownerDocument.activeElement) === 'typing') return;
    event.preventDefault();
    if (place === 'bench' && shell.view.place === 'bench')
      root.querySelector<HTMLElement>('bench-sheet .main')?.focus();
    else root.dispatchEvent(new WishEvent({ kind: 'place', place }));
  });
}
