/** A kept dive, as the list shows it. */
export interface KeptCard {
  readonly id: number;
  /** When it was last kept, milliseconds since 1970. */
  readonly savedMs: number;
  readonly name: string;
  readonly lengthS: number;
  readonly lesson: boolean;
  /** It is the one that is being flown. */
  readonly here: boolean;
  /** It cannot be read: it can only be removed. */
  readonly damaged: boolean;
}

/** What is said beside the water of a dive that came back, or could. */
export interface KeptNote {
  readonly words: string;
  readonly lesson: boolean;
  /** `back`: it is in hand; `offer`: it is in hand only when that is wished; `left`: it was, before another diver was chosen. */
  readonly kind: 'back' | 'offer' | 'left';
}

/** What the page shows of kept dives. */
export interface KeptView {
  readonly note: KeptNote | null;
  /** Null until they were read. */
  readonly cards: readonly KeptCard[] | null;
  /** What came of the last wish, or why nothing is kept; empty where there is nothing to say. */
  readonly words: string;
}

/** What a person asks about kept dives. */
export type KeptAsk =
  | { readonly do: 'open' | 'save' | 'remove'; readonly id: number }
  | { readonly do: 'erase' | 'bring' | 'anew' | 'away' | 'back-to' };
