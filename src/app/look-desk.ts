import type { LookAnswer, LookRequest } from './look-work.ts';

/** The part of a worker that is used. */
export interface Bench {
  postMessage(request: LookRequest): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<LookAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/**
 * Has looks reckoned beside the page: one at a time; of those asked for meanwhile only the newest is kept, and begun when the
 * one in hand is done.
 */
export class LookDesk {
  readonly #hire: () => Bench;
  readonly #done: (answer: LookAnswer, request: LookRequest) => void;
  readonly #failed: () => void;
  #bench: Bench | null = null;
  #inHand: LookRequest | null = null;
  #next: LookRequest | null = null;

  /** @param hire makes the worker, when the first look is asked for */
  constructor(hire: () => Bench, done: (answer: LookAnswer, request: LookRequest) => void, failed: () => void) {
    this.#hire = hire;
    this.#done = done;
    this.#failed = failed;
  }

  ask(request: LookRequest): void {
    if (this.#inHand) this.#next = request;
    else this.#begin(request);
  }

  #begin(request: LookRequest): void {
    this.#inHand = request;
    const bench = (this.#bench ??= this.#made());
    bench.postMessage(request);
  }

  #made(): Bench {
    const bench = this.#hire();
    bench.onmessage = ({ data }) => {
      const request = this.#inHand!;
      const next = this.#next;
      this.#inHand = null;
      this.#next = null;
      this.#done(data, request);
      if (next) this.#begin(next);
    };
    bench.onerror = () => {
      // One that could not be loaded would never answer: another is hired for what is asked next.
      bench.terminate();
      this.#bench = null;
      this.#inHand = null;
      this.#next = null;
      this.#failed();
    };
    return bench;
  }
}
