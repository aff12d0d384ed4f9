import { SPEEDS, type LookToggle, type Wish } from '../panels/index.ts';
import type { KeyCommand } from './keys.ts';
import type { PageView } from './page-view.ts';

/** What a key wishes for where it is pressed; null where it means nothing now. */
export function wishOf(key: KeyCommand | LookToggle, { place, prompt, deck, speed }: PageView): Wish | null {
  const flown = place === 'fly' || place === 'lesson';
  if (prompt) return null;
  switch (key) {
    case 'release':
      if (!flown) return null;
      return deck?.armed ? { kind: 'release', all: false } : { kind: 'arm', armed: true };
    case 'release-all':
      if (!flown) return null;
      return deck?.armed ? { kind: 'release', all: true } : { kind: 'arm', armed: true };
    case 'slower':
    case 'faster': {
      const at = SPEEDS.findIndex(([one]) => one === speed) + (key === 'faster' ? 1 : -1);
      return flown && SPEEDS[at] ? { kind: 'speed', speed: SPEEDS[at][0] } : null;
    }
    case 'freeze':
      return flown ? { kind: 'freeze' } : null;
    case 'back':
    case 'restart':
      return place === 'fly' ? { kind: key } : null;
    default:
      return flown || place === 'debrief' ? { kind: 'look', look: key } : null;
  }
}

/** Whether a wish puts another diver in the place of the one who is flown. */
export function choosesDiver(wish: Wish): boolean {
  return wish.kind === 'setup' || wish.kind === 'file' || (wish.kind === 'kit' && wish.ask.do === 'fly');
}
