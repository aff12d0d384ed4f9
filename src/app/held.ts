import { ACTS, type Act } from '../panels/index.ts';

/** What is down now. Opposite acts are never down together: the second one is ignored until the first lets go. */
export class Held {
  #down: ReadonlySet<Act> = new Set();

  /** A set that never changes: each press makes a new one. */
  get acts(): ReadonlySet<Act> {
    return this.#down;
  }

  /** @returns whether it is down now that was not before */
  press(act: Act): boolean {
    if (this.#down.has(act)) return false;
    for (const other of this.#down) if (ACTS[other].opposite === act || ACTS[act].opposite === other) return false;
    this.#down = new Set([...this.#down, act]);
    return true;
  }

  /** Lets go what is the opposite of an act: where nothing is held down, the later press is the one that is meant. */
  yield(act: Act): void {
    for (const other of this.#down)
      if (ACTS[other].opposite === act || ACTS[act].opposite === other) this.release(other);
  }

  release(act: Act): void {
    if (this.#down.has(act)) this.#down = new Set([...this.#down].filter((other) => other !== act));
  }

  releaseAll(): void {
    if (this.#down.size > 0) this.#down = new Set();
  }
}
