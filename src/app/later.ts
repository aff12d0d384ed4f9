import { fetchSheets } from '../panels/index.ts';
import type { InsightFeed } from './insight-feed.ts';
import type * as Learning from './learning.ts';
import type { Presented } from './presented.ts';
import type { Presenting } from './presenting.ts';
import type { Shell } from './shell.ts';

/** What a first flight does not need: fetched when it is wanted, or before, while nothing else is to do. */
export class Later {
  readonly #shell: Shell;
  readonly #changed: () => void;
  #learning: typeof Learning | null = null;
  #looks: InsightFeed | null = null;
  #feed: Promise<InsightFeed> | null = null;
  #presenting: Presenting | null = null;
  #presents: Promise<Presenting> | null = null;

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
    return this.#looks;
  }

  /** Presenting, gamepads and one button, once they are there. */
  get presenting(): Presenting | null {
    return this.#presenting;
  }

  /** Everything. */
  async fetchAll(program: Presented): Promise<void> {
    await Promise.all([this.fetchLearning(), this.fetchLooks(), this.fetchPresenting(program)]);
  }

  async fetchLearning(): Promise<typeof Learning> {
    const [learning] = await Promise.all([import('./learning.ts'), fetchSheets()]);
    return (this.#learning = learning);
  }

  /** One feed for the page, however often it is asked for; a fetch that failed is tried again the next time. */
  async fetchLooks(): Promise<InsightFeed> {
    this.#feed ??= import('./insight-feed.ts').then((part) => part.InsightFeed.begin(this.#shell, this.#changed));
    try {
      return (this.#looks = await this.#feed);
    } catch (problem) {
      this.#feed = null;
      throw problem;
    }
  }

  /** One of these, too. */
  async fetchPresenting(program: Presented): Promise<Presenting> {
    this.#presents ??= import('./presenting.ts').then((part) => part.Presenting.begin(program));
    try {
      return (this.#presenting = await this.#presents);
    } catch (problem) {
      this.#presents = null;
      throw problem;
    }
  }
}
