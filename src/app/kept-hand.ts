import { TICKS_PER_S } from '../dive/index.ts';
import type { Keeping, KeptWhat, Store } from '../store/index.ts';
import type { Dives } from './dives.ts';
import type { Flight } from './flight.ts';
import type { OtherLines } from './other-lines.ts';
import type { Shell } from './shell.ts';
import { storeWords } from './store-words.ts';

/** Whose dives are kept. */
interface Hand {
  readonly shell: Shell;
  readonly dives: Dives;
  readonly otherLines: OtherLines | null;
}

/** After a failure it is tried again so much later, milliseconds. */
const AGAIN_MS = 5000;
/** A dive that is left before is not kept, ticks. */
const SHORT_TICKS = 5 * TICKS_PER_S;

/** The dive in hand on its way into the browser's database. */
export class KeptInHand {
  readonly #of: Hand;
  readonly #store: Store;
  readonly #failed: (words: string) => void;
  readonly #keepings = new WeakMap<Flight, Keeping>();
  /** What was kept of a flight beside its run, for when it is no longer in hand. */
  readonly #whats = new WeakMap<Flight, KeptWhat>();
  #flight: Flight;
  #failing = '';
  #notBeforeMs = 0;

  /** @param failed hears why nothing is kept, once and not every time that it is tried again */
  constructor(of: Hand, store: Store, failed: (words: string) => void) {
    this.#of = of;
    this.#store = store;
    this.#failed = failed;
    this.#flight = of.dives.flight;
  }

  /** Number of the dive in hand among those that are kept; null while it is not. */
  get id(): number | null {
    return this.#keepings.get(this.#of.dives.flight)?.id ?? null;
  }

  /** A kept dive that is about to be taken in hand. */
  takes(flight: Flight, keeping: Keeping): void {
    this.#keepings.set(flight, keeping);
  }

  /** Keeps what is new, and leaves the dive that is no longer in hand. @returns that one, where it stays in the list */
  follow(): { readonly flight: Flight; readonly keeping: Keeping } | null {
    const { flight } = this.#of.dives;
    const left = this.#flight;
    this.#flight = flight;
    void this.#keep(flight);
    const keeping = flight === left ? undefined : this.#keepings.get(left);
    if (!keeping) return null;
    const short = left.dive.tick - left.dive.recording.startTick < SHORT_TICKS;
    void this.#leave(left, keeping, short);
    return short ? null : { flight: left, keeping };
  }

  async #keep(flight: Flight): Promise<void> {
    // A demonstration keeps its own place: a list of a class's dives would push out everybody's own.
    if (this.#of.shell.view.presenting?.shown || this.#of.dives.lesson?.by) return;
    const what = this.#what();
    const { dive } = flight;
    const beside = this.#of.otherLines?.toKeep(flight) ?? null;
    const anything = dive.tick > dive.recording.startTick || what.given.length > 0;
    if (!this.#of.dives.begun || !anything || performance.now() < this.#notBeforeMs) return;
    const keeping = this.#keepings.get(flight) ?? this.#store.begin();
    this.#keepings.set(flight, keeping);
    this.#whats.set(flight, what);
    if (!keeping.isBehind(dive, what, beside)) return;
    try {
      await keeping.keep(dive, what, beside);
      this.#failing = '';
    } catch (problem) {
      this.#notBeforeMs = performance.now() + AGAIN_MS;
      const words = storeWords(problem);
      if (words !== this.#failing) this.#failed(words);
      this.#failing = words;
    }
  }

  async #leave(flight: Flight, keeping: Keeping, short: boolean): Promise<void> {
    const what = this.#whats.get(flight);
    const beside = this.#of.otherLines?.toKeep(flight) ?? null;
    try {
      if (what && !short) await keeping.keepLast(flight.dive, what, beside);
      await keeping.leave(short);
    } catch {
      // What it lacks is less than half a second; why nothing is written is said of the dive in hand.
    }
  }

  #what(): KeptWhat {
    const { lesson, free, flight, shownBeside } = this.#of.dives;
    const { projector } = this.#of.shell.view;
    const given = lesson?.given ?? [];
    if (lesson) {
      const { id, title } = lesson.lesson;
      const { attempt } = lesson;
      return { name: title, setupId: '', setup: null, letGoM: null, lessonId: id, given, attempt, projector };
    }
    // A ready setup is had again by its id.
    const setup = free.id ? null : free.setup;
    const letGoM = free.letGoM ?? null;
    // Whom a demonstration brought goes with it; who takes its dive over flies it alone the next time.
    const pair = shownBeside?.first === flight ? null : this.#of.dives.pair;
    return { name: flight.rig.name, setupId: free.id, setup, letGoM, lessonId: null, given, projector, pair };
  }
}
