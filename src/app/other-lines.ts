import { replay, type Dive, type Run } from '../dive/index.ts';
import type { KeptBeside } from '../store/index.ts';
import type { Flight } from './flight.ts';
import { Lines } from './lines.ts';

/** The line of another dive, which is shown beside every one until it is sent away. */
export interface Ghost {
  readonly dive: Dive;
  readonly name: string;
  readonly shown: boolean;
}

/** What stands beside the dives of the page: the other lines and bookmarks of each, and one ghost. */
export class OtherLines {
  readonly #lines = new WeakMap<Flight, Lines>();
  #kept: KeptBeside<Dive> | null = null;
  ghost: Ghost | null = null;

  /** The lines of a dive. */
  of(flight: Flight): Lines {
    let lines = this.#lines.get(flight);
    if (!lines) this.#lines.set(flight, (lines = new Lines()));
    return lines;
  }

  /** What is to be kept of it with a dive: the same object as long as nothing of it changed, null where there is nothing. */
  toKeep(flight: Flight): KeptBeside<Dive> | null {
    const { name, marks, others } = this.of(flight);
    const { ghost } = this;
    if (!name && marks.length === 0 && others.length === 0 && !ghost) return null;
    const was = this.#kept;
    const same = was?.name === name && was.marks === marks && was.others === others && was.ghost === ghost;
    if (!same) this.#kept = { name, marks, others, ghost };
    return this.#kept;
  }

  /** Takes what was kept with a dive; a ghost that is there stays. */
  bringBack(flight: Flight, { name, marks, others, ghost }: KeptBeside<Run>): void {
    const lines = others.map((line) => ({ ...line, dive: replay(line.dive) }));
    this.#lines.set(flight, Lines.of(name, lines, marks));
    this.ghost ??= ghost && { ...ghost, dive: replay(ghost.dive) };
  }
}
