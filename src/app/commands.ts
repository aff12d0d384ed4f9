import type { LookToggle, Wish } from '../panels/index.ts';
import type { KeyCommand } from './keys.ts';
import type { PageView } from './page-view.ts';

/** What a key wishes for where it is pressed; null where it means nothing now. */
export function wishOf(key: KeyCommand | LookToggle, { place, prompt, deck }: PageView): Wish | null {
  const flown = place === 'fly' || place === 'lesson';
  if (prompt) return null;
  switch (key) {
    case 'release':
      if (!flown) return null;
      return deck?.armed ? { kind: 'release', all: false } : { kind: 'arm', armed: true };
    case 'freeze':
      return flown ? { kind: 'freeze' } : null;
    case 'back':
    case 'restart':
      return place === 'fly' ? { kind: key } : null;
    default:
      return flown || place === 'debrief' ? { kind: 'look', look: key } : null;
  }
}
