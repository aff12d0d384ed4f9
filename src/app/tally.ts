import type { Answer, Prompt } from '../lesson/index.ts';
import type { LeftHands } from './watch-memory.ts';

/** The four counts of nothing. */
const NONE: readonly number[] = [0, 0, 0, 0];

/** Hands counted for the letters A to D, anew for each question. */
export class Tally {
  counts = NONE;
  #askedId = '';
  /** Answers that there are to count hands for: those of the last question. */
  #letters = NONE.length;

  /** One hand more; none for a letter that stands for no answer. */
  count(at: number): void {
    if (at >= this.#letters) return;
    this.counts = this.counts.map((count, i) => (i === at ? count + 1 : count));
  }

  clear(): void {
    this.counts = NONE;
  }

  /** Hears what is asked now. */
  asked(prompt: Prompt | null): void {
    if (!prompt) return;
    this.#letters = prompt.kind === 'choice' ? prompt.options.length : NONE.length;
    if (prompt.id === this.#askedId) return;
    this.#askedId = prompt.id;
    this.clear();
  }

  /** What is kept of it. */
  get left(): LeftHands {
    return { askedId: this.#askedId, counts: this.counts };
  }

  /** Hands that were counted before: they stand as long as the same is asked. */
  bringBack({ askedId, counts }: LeftHands): void {
    this.#askedId = askedId;
    this.counts = counts;
  }

  /** Hands counted for an answer to what is asked; 0 where nobody counted. */
  handsFor(prompt: Prompt | null, answer: Answer): number {
    if (prompt?.kind !== 'choice') return 0;
    return this.counts[prompt.options.findIndex(({ id }) => id === answer)] ?? 0;
  }

  /** What most hands said to a choice; null where nobody counted, two are even, or nothing is to be chosen. */
  said(prompt: Prompt | null): string | null {
    if (prompt?.kind !== 'choice') return null;
    const most = Math.max(...this.counts);
    const at = this.counts.indexOf(most);
    return most > 0 && at === this.counts.lastIndexOf(most) ? (prompt.options[at]?.id ?? null) : null;
  }
}
