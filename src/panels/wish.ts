import type { Answer } from '../lesson/index.ts';
import type { Act } from './acts.ts';
import type { Settings } from './settings.ts';

/** What a person asks of the program; the page decides. */
export type Wish =
  | { readonly kind: 'act'; readonly act: Act; readonly down: boolean }
  | { readonly kind: 'freeze' | 'restart' | 'back' | 'leave' | 'caution-read' | 'problems-read' | 'save-run' }
  | { readonly kind: 'speed'; readonly speed: number }
  | { readonly kind: 'setup'; readonly id: string }
  | { readonly kind: 'more'; readonly open: boolean }
  | { readonly kind: 'place'; readonly place: 'fly' | 'teach' | 'learn' }
  | { readonly kind: 'lesson'; readonly id: string }
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'moment'; readonly atS: number }
  | { readonly kind: 'arm'; readonly armed: boolean }
  | { readonly kind: 'release'; readonly all: boolean }
  | { readonly kind: 'breathing'; readonly breathing: 'automatic' | 'direct' | 'held' }
  | { readonly kind: 'valve'; readonly hPa: number }
  | { readonly kind: 'projector'; readonly on: boolean }
  | { readonly kind: 'settings'; readonly settings: Partial<Settings> }
  | { readonly kind: 'file'; readonly file: File };

/** A wish on its way up the page. */
export class WishEvent extends Event {
  readonly wish: Wish;

  constructor(wish: Wish) {
    super('wish', { bubbles: true, composed: true });
    this.wish = wish;
  }
}

/** Sends a wish up from an element. */
export function wish(from: EventTarget, what: Wish): void {
  from.dispatchEvent(new WishEvent(what));
}
