const KEY = 'midwater-counted';

/** Hands that were counted for the answers of a class, by lesson and question: kept as long as the tab lives, where a browser lets us. */
export class CountedMemory {
  readonly #view: Window;

  constructor(view: Window) {
    this.#view = view;
  }

  /** Hands for the answer to a question that was locked last; 0 where nobody counted. */
  hands(lessonId: string, question: string): number {
    const found = this.#all()[`${lessonId}/${question}`];
    return typeof found === 'number' && found > 0 ? found : 0;
  }

  /** Whoever answers next is counted anew: 0 forgets. */
  keep(lessonId: string, question: string, hands: number): void {
    try {
      const all = { ...this.#all(), [`${lessonId}/${question}`]: hands };
      this.#view.sessionStorage.setItem(KEY, JSON.stringify(all));
    } catch {
      // Then a reload says "you said" where hands had been counted.
    }
  }

  #all(): Readonly<Record<string, unknown>> {
    try {
      return (JSON.parse(this.#view.sessionStorage.getItem(KEY) ?? '{}') ?? {}) as Record<string, unknown>;
    } catch {
      return {};
    }
  }
}
