import type { MapAnswer, MapRequest } from './map-work.ts';

/** The part of a worker that is used. */
export interface Bench {
  postMessage(request: MapRequest): void;
  onmessage: ((event: MessageEvent<MapAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/**
 * Has maps reckoned beside the page: one at a time; of those asked for meanwhile only the newest is kept, and begun when the
 * one in hand is done.
 */
export class MapDesk {
  readonly #hire: () => Bench;
  readonly #done: (answer: MapAnswer, request: MapRequest) => void;
  readonly #failed: () => void;
  #bench: Bench | null = null;
  #inHand: MapRequest | null = null;
  #next: MapRequest | null = null;

  /** @param hire makes the worker, when the first map is asked for */
  constructor(hire: () => Bench, done: (answer: MapAnswer, request: MapRequest) => void, failed: () => void) {
    this.#hire = hire;
    this.#done = done;
    this.#failed = failed;
  }

  ask(request: MapRequest): void {
    if (this.#inHand) this.#next = request;
    else this.#begin(request);
  }

  #begin(request: MapRequest): void {
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
      this.#inHand = null;
      this.#next = null;
      this.#failed();
    };
    return bench;
  }
}
