import type { MishapAsk } from './mishap-kinds.ts';

/** A line beside the one that is flown; the ghost has no letter. */
export interface LineView {
  readonly letter: string;
  readonly name: string;
  /** Where its knot stands, seconds. */
  readonly knotS: number;
  readonly shown: boolean;
}

/** What the strip of time shows; a new object whenever something of it changed. */
export interface TimeView {
  readonly fromS: number;
  readonly toS: number;
  /** The moment that is looked at. */
  readonly atS: number;
  /** Whether that is an earlier one. */
  readonly lookedBack: boolean;
  readonly canTakeOver: boolean;
  readonly marks: readonly { readonly number: number; readonly atS: number; readonly name: string }[];
  readonly lines: readonly LineView[];
  readonly ghost: { readonly name: string; readonly shown: boolean } | null;
  readonly listOpen: boolean;
  /** What came of the last wish, where it is not seen. */
  readonly words: string;
}

/** What is asked of time. */
export type TimeAsk =
  | {
      readonly do:
        'open' | 'list' | 'compare' | 'take-over' | 'mark' | 'last-mark' | 'keep-ghost' | 'ghost-shown' | 'ghost-away';
    }
  /** By so many seconds from the moment that is looked at; from the end on the dive itself runs. */
  | { readonly do: 'step'; readonly byS: number }
  /** A moment of the dive; null: its end. */
  | { readonly do: 'at'; readonly atS: number | null }
  | { readonly do: 'line-shown' | 'switch' | 'line-away'; readonly letter: string }
  | { readonly do: 'call'; readonly letter: string; readonly name: string }
  | { readonly do: 'mark-away'; readonly number: number }
  | { readonly do: 'call-mark'; readonly number: number; readonly name: string }
  | { readonly do: 'ghost-file'; readonly file: File }
  /** Something goes wrong now, and is said. */
  | { readonly do: 'mishap'; readonly mishap: MishapAsk; readonly said: string };
