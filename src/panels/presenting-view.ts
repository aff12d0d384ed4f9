import type { Prompt } from '../lesson/index.ts';

/** What a presenter, a clicker or one button asks for. */
export type PresentAsk =
  | {
      readonly do: 'next' | 'previous' | 'blank' | 'full-screen' | 'strip' | 'list' | 'list-away' | 'clear' | 'neutral';
    }
  | { readonly do: 'tally'; readonly at: number }
  /** The next part of a gamepad that is pressed is to do what this one usually does; empty: none is. */
  | { readonly do: 'pad'; readonly usual: string }
  | {
      readonly do: 'show';
      readonly id: string;
      /** Goes on with it where it was left. */ readonly resumed?: boolean;
    };

/** A demonstration as the list shows it. */
export interface ShowCard {
  readonly id: string;
  readonly title: string;
  readonly about: string;
}

/** The presenter's strip. */
export interface StripView {
  /** What *next* does, in words. */
  readonly next: string;
  readonly canGoBack: boolean;
  readonly notes: string;
  /** Hands counted for each letter of what is asked; empty where no letters are. */
  readonly tally: readonly number[];
  /** Whether the list of demonstrations can be opened from here. */
  readonly lists: boolean;
  /** Null where the browser knows no full screen. */
  readonly fullScreen: boolean | null;
}

/** A gamepad: whether one is there, what each part does, and which line waits for another part. */
export interface PadView {
  readonly there: boolean;
  readonly rows: readonly { readonly usual: string; readonly part: string; readonly words: string }[];
  readonly waiting: string;
  /** What came of the last change. */
  readonly words: string;
  readonly moved: boolean;
}

/** What presenting, other hands and measuring add to the page. */
export interface PresentingView {
  /** Open list of what can be shown; null while it is closed. */
  readonly cards: readonly ShowCard[] | null;
  /** Null while it is hidden, or nobody presents. */
  readonly strip: StripView | null;
  /** Id of the demonstration that is shown; null without one. */
  readonly shown: string | null;
  /** The one sentence on the stage; empty without a demonstration. */
  readonly words: string;
  /** A question comes next: nothing may answer it before. */
  readonly hush: boolean;
  /** What a demonstration asks. */
  readonly prompt: Prompt | null;
  readonly pad: PadView;
  /** From press to diver, as a sentence. */
  readonly latency: string;
  readonly fullScreen: boolean | null;
}
