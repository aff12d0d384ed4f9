import type { KeptPair } from '../store/index.ts';
import type { Dives } from './dives.ts';
import { FORMER, OWN, isDifference } from './pair-difference.ts';
import { isBy, rememberPair, rememberedPair, type PairChoice } from './pair-memory.ts';

/** Said of a second diver who is kept in words that mean nothing here. */
const UNKNOWN = 'The second diver who was kept with this dive is not known here: it came back alone.';

/** What is to be kept of a choice with a dive; null where nobody is chosen, or he could not be had again. */
export function keptOf({ on, difference, by, own, words }: PairChoice): KeptPair | null {
  const named = difference === OWN || difference === FORMER;
  if (!on || (named && !own)) return null;
  return { difference, by, own: named ? own : null, words };
}

/** The choice that was kept with a dive, in place of the one before; null where it is none that can be chosen. */
export function choiceOf({ difference, by, own, words }: KeptPair, before: PairChoice): PairChoice | null {
  const named = difference === OWN || difference === FORMER;
  if (!isBy(by) || !isDifference(difference) || (named && !own)) return null;
  return { on: true, difference, by, own: named ? own : before.own, words };
}

/** Who was chosen for second diver: for this tab, for the dive in hand to be kept with, and as a dive brings him back. */
export class PairChosen {
  readonly #dives: Pick<Dives, 'pair'>;
  readonly #shelf: Storage | null;
  #choice: PairChoice;
  /** What the dive was last told; when it says otherwise, it came back with somebody else. */
  #told: KeptPair | null | undefined = undefined;

  constructor(dives: Pick<Dives, 'pair'>, shelf: Storage | null) {
    this.#dives = dives;
    this.#shelf = shelf;
    this.#choice = rememberedPair(shelf);
    if (dives.pair === undefined) this.#tell();
  }

  get choice(): PairChoice {
    return this.#choice;
  }

  /** Chooses, and keeps that. */
  choose(change: Partial<PairChoice>): void {
    this.#choice = { ...this.#choice, ...change };
    rememberPair(this.#shelf, this.#choice);
    this.#tell();
  }

  /** Takes the second diver of a dive that came back. @returns null where none did; else what is to be said of it, if anything */
  broughtBack(): string | null {
    const { pair } = this.#dives;
    if (pair === undefined || pair === this.#told) return null;
    // Who was alone stays so, and nothing is written of it.
    if (pair === null && !this.#choice.on) return (this.#told = null);
    const choice = pair && choiceOf(pair, this.#choice);
    this.choose(choice ?? { on: false });
    // The very object that is kept: nothing is new about it.
    if (choice) this.#told = this.#dives.pair = pair;
    return pair && !choice ? UNKNOWN : '';
  }

  /** Forgets what was chosen in this tab; who is shown stays. */
  forget(): void {
    rememberPair(this.#shelf, null);
  }

  #tell(): void {
    this.#told = this.#dives.pair = keptOf(this.#choice);
  }
}
