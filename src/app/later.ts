import { fetchSheets } from '../panels/index.ts';
import type { InsightFeed } from './insight-feed.ts';
import type * as Learning from './learning.ts';
import type { Presented } from './presented.ts';
import type { Presenting } from './presenting.ts';
import type { Shell } from './shell.ts';

/** One thing for the page, however often it is asked for; a fetch that failed is tried again the next time. */
class Once<T> {
  there: T | null = null;
  #coming: Promise<T> | null = null;

  async get(fetch: () => Promise<T>): Promise<T> {
    this.#coming ??= fetch();
    try {
      return (this.there = await this.#coming);
    } catch (problem) {
      this.#coming = null;
      throw problem;
    }
  }
}

/** What a first flight does not need: fetched when it is wanted, or before, while nothing else is to do. */
export class Later {
  readonly #shell: Shell;
  readonly #changed: () => void;
  readonly #looks = new Once<InsightFeed>();
  readonly #presenting = new Once<Presenting>();
  #learning: typeof Learning | null = null;

  /** @param changed called when the picture has to be drawn anew */
  constructor(shell: Shell, changed: () => void) {
    this.#shell = shell;
    this.#changed = changed;
  }

  /** What lessons need, once it is there. */
  get learning(): typeof Learning | null {
    return this.#learning;
  }

  /** The looks over the water, once they are there. */
  get looks(): InsightFeed | null {
    return this.#looks.there;
  }

  /** Presenting, gamepads and one button, once they are there. */
  get presenting(): Presenting | null {
    return this.#presenting.there;
  }

  /** Everything. */
  async fetchAll(program: Presented): Promise<void> {
    await Promise.all([this.fetchLearning(), this.fetchLooks(), this.fetchPresenting(program)]);
  }

  async fetchLearning(): Promise<typeof Learning> {
    const [learning] = await Promise.all([import('./learning.ts'), fetchSheets()]);
    return (this.#learning = learning);
  }

  fetchLooks(): Promise<InsightFeed> {
    return this.#looks.get(async () =>
      (await import('./insight-feed.ts')).InsightFeed.begin(this.#shell, this.#changed),
    );
  }

  fetchPresenting(program: Presented): Promise<Presenting> {
    return this.#presenting.get(async () => (await import('./presenting.ts')).Presenting.begin(program));
  }
}
