import type { BenchMode } from '../bench/index.ts';
import type { Answer, Demonstrator } from '../lesson/index.ts';
import type { Act } from './acts.ts';
import type { BenchWish } from './bench-view.ts';
import type { DebriefAsk } from './debrief-view.ts';
import type { KeptAsk } from './kept-view.ts';
import type { KitAsk } from './kit-view.ts';
import type { LearnAsk } from './learn-view.ts';
import type { LookChoice, LookToggle } from './looks.ts';
import type { PairAsk } from './pair-view.ts';
import type { PresentAsk } from './presenting-view.ts';
import type { Settings } from './settings.ts';
import type { TimeAsk } from './time-view.ts';
import type { TraceAsk } from './trace-view.ts';

/** What a person asks of the program; the page decides. */
export type Wish =
  | { readonly kind: 'act'; readonly act: Act; readonly down: boolean }
  | { readonly kind: 'freeze' | 'restart' | 'back' | 'leave' | 'caution-read' | 'problems-read' | 'save-run' }
  /** The lesson in hand from its beginning, with all hints and gauges again. */
  | { readonly kind: 'all-gauges' }
  | { readonly kind: 'speed'; readonly speed: number }
  | { readonly kind: 'setup'; readonly id: string }
  | { readonly kind: 'let-go'; readonly depthM: number }
  | { readonly kind: 'more'; readonly open: boolean }
  | { readonly kind: 'place'; readonly place: 'start' | 'column' | 'fly' | 'teach' | 'learn' | 'debrief' }
  | { readonly kind: 'place'; readonly place: 'kit'; readonly id?: string }
  | { readonly kind: 'place'; readonly place: 'bench'; readonly mode?: BenchMode }
  | { readonly kind: 'kit'; readonly ask: KitAsk }
  | { readonly kind: 'bench'; readonly ask: BenchWish }
  | {
      readonly kind: 'lesson';
      readonly id: string;
      /** Goes on with it where it was left. */ readonly resumed?: boolean;
      /** A simulated diver flies it. */ readonly by?: Demonstrator;
    }
  | { readonly kind: 'learn'; readonly ask: LearnAsk }
  | { readonly kind: 'answer'; readonly answer: Answer }
  | { readonly kind: 'moment'; readonly atS: number }
  | { readonly kind: 'arm'; readonly armed: boolean }
  | { readonly kind: 'release'; readonly all: boolean }
  | { readonly kind: 'breathing'; readonly breathing: 'automatic' | 'direct' | 'held' }
  | { readonly kind: 'valve'; readonly hPa: number }
  | { readonly kind: 'projector'; readonly on: boolean }
  | { readonly kind: 'look'; readonly look: LookToggle }
  | { readonly kind: 'look-choice'; readonly choice: Partial<LookChoice> }
  | { readonly kind: 'look-menu'; readonly open: boolean }
  | { readonly kind: 'settings'; readonly settings: Partial<Settings> }
  | { readonly kind: 'present'; readonly ask: PresentAsk }
  | { readonly kind: 'traces'; readonly ask: TraceAsk }
  | { readonly kind: 'kept'; readonly ask: KeptAsk }
  | { readonly kind: 'debrief'; readonly ask: DebriefAsk }
  | { readonly kind: 'pair'; readonly ask: PairAsk }
  | { readonly kind: 'time'; readonly ask: TimeAsk }
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
