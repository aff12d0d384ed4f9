import type { LookToggle } from '../panels/index.ts';

/** A dive that is shown to a class and walked by *next* and *back* alone. Plain data, lengths in metres, times in seconds. */
export interface Demonstration {
  readonly id: string;
  readonly title: string;
  /** What it is about, as one sentence of the list. */
  readonly about: string;
  readonly steps: readonly ShowStep[];
}

export type ShowStep = BeginStep | AskStep | RunStep | SayStep | RewindStep;

interface Shown {
  /** The one sentence on the stage; names in braces are filled from the dive: {depth}, {speed}, {gas}, {right}, of two divers {first}, {second} and {apart}, or what was kept. */
  readonly words: string;
  /** What stands in the presenter's strip. */
  readonly notes: string;
}

/** A diver put into the water, frozen. */
export interface BeginStep extends Shown {
  readonly kind: 'begin';
  readonly setup: string;
  readonly moreLeadKg: number;
  readonly atM: number;
  /** The jacket holds what makes him neutral there; null: it is empty. */
  readonly neutralAtM: number | null;
  /** Keeps the jacket's gas under this name, in litres where he is neutral. */
  readonly keepGas?: string;
  /** A second diver beside him, put into the water in the same way, and nobody acts for either but by the same hands. */
  readonly beside?: BesideDiver;
}

/** The second of two divers who are shown: what he carries more, and that in words. */
export interface BesideDiver {
  readonly moreLeadKg: number;
  /** What he has that the first has not, and what the first has that he has not. */
  readonly words: string;
  readonly back: string;
  /** Keeps his jacket's gas under this name. */
  readonly keepGas: string;
}

/** A question with lettered answers; the run that follows it says which is true. */
export interface AskStep {
  readonly kind: 'ask';
  readonly question: string;
  readonly options: readonly { readonly id: string; readonly words: string }[];
  /** How the true one is found once the run has been: its id is an outcome of this. */
  readonly truth: Truth;
  readonly notes: string;
}

/** What a run can be asked afterwards. */
export type Truth =
  /** up, down, stays: where the diver came to from where he was asked about. */
  | 'way'
  /** sooner, same, later, never: when the second diver came to the depth that the run ended at, beside the first. */
  | 'beside-first'
  /** faster, steady, slower: vertical speed at the end of the run beside that at the question. */
  | 'speed';

/** Time goes on until the diver has come to a depth, or for so long. */
export interface RunStep extends Shown {
  readonly kind: 'run';
  readonly untilM: number | null;
  readonly atMostS: number;
}

/** Something said while time stands still, with a look over the water where it helps. */
export interface SayStep extends Shown {
  readonly kind: 'say';
  readonly look?: LookToggle;
}

/** Back to a moment after the diver was put into the water: somebody takes over from there. */
export interface RewindStep extends Shown {
  readonly kind: 'rewind';
  readonly toS: number;
  readonly look?: LookToggle;
}
