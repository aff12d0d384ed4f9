/** What one of two divers is compared by; gas is what went out of his cylinders, m³ at the surface. */
export interface PairSide {
  readonly depthM: number;
  /** Positive down. */
  readonly speedMps: number;
  readonly presses: { readonly count: number; readonly seconds: number };
  readonly gasUsedM3: number;
}

/** What can be chosen, in groups. */
export interface PairGroup {
  readonly words: string;
  readonly options: readonly { readonly id: string; readonly words: string }[];
}

/** What the page shows of two divers; a new object whenever something of it changed. */
export interface PairView {
  /** Both as they are at the moment shown, the one who is flown first; null while there is but one. */
  readonly sides: readonly [PairSide, PairSide] | null;
  /** What the second one has that the first has not. */
  readonly words: string;
  /** Both in one sentence; empty while there is but one. */
  readonly sentence: string;
  readonly folded: boolean;
  /** A demonstration brings both: they stay two, and the first is flown. */
  readonly brought: boolean;
  /** Whose looks lie over the water, 1 or 2; null where none does. */
  readonly looksAt: 1 | 2 | null;
  /** Ids of what is chosen. */
  readonly difference: string;
  readonly by: string;
  /** What else could be chosen; null until somebody looks for it. */
  readonly differences: readonly PairGroup[] | null;
  /** What came of the last wish, where it is not seen. */
  readonly said: string;
}

/** What is asked of two divers. */
export type PairAsk =
  /** On or off, as chosen; folded or open; the other one is flown from here; two are shown as a demonstration brings them. */
  | { readonly do: 'toggle' | 'away' | 'fold' | 'swap' | 'shown' }
  | { readonly do: 'begin'; readonly difference: string; readonly by: string }
  | { readonly do: 'file'; readonly file: File }
  | { readonly do: 'looks-at'; readonly diver: 1 | 2 };
