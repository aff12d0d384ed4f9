import { Database } from './database.ts';
import { Keeping, removeFrom } from './keeping.ts';
import type { KeptDive, KeptSummary } from './kept.ts';
import { listDives, readDive } from './read.ts';
import type { KeptResult, Result } from './result.ts';
import { addResult, listResults, writeWord } from './results.ts';

/** Dives and results kept in this browser. Whatever fails here throws a `StoreProblem`, and leaves dives in memory as they are. */
export class Store {
  readonly #database: Database;
  #keepings: WeakRef<Keeping>[] = [];

  /** @param erased hears that everything was erased in another tab */
  constructor(erased: () => void = () => undefined) {
    this.#database = new Database(() => {
      this.#endAll();
      erased();
    });
  }

  /** What is kept, the newest first. @throws {StoreProblem} */
  list(): Promise<KeptSummary[]> {
    return listDives(this.#database);
  }

  /** A kept dive, checked. @throws {StoreProblem} when it is gone or damaged */
  read(id: number): Promise<KeptDive> {
    return readDive(this.#database, id);
  }

  /** Removes a dive. @throws {StoreProblem} */
  async remove(id: number): Promise<void> {
    await this.#database.together((all) => removeFrom(all, id));
  }

  /** A dive that is not kept yet. */
  begin(): Keeping {
    const keeping = new Keeping(this.#database);
    this.#keepings = [...this.#keepings.filter((one) => one.deref()), new WeakRef(keeping)];
    return keeping;
  }

  /**
   * A kept dive that is flown on.
   * @param inHand whether the list knows already that it is flown
   * @returns what keeps it, and whether another tab flies it: then this one is kept as a dive of its own
   */
  async goOn(kept: KeptDive, inHand: boolean): Promise<{ readonly keeping: Keeping; readonly elsewhere: boolean }> {
    // This page may hold it already.
    const ours = this.#keepings.map((one) => one.deref()).find((one) => one?.id === kept.id);
    const keeping = ours ?? this.begin();
    return { keeping, elsewhere: await keeping.goOn(kept, inHand) };
  }

  /** What came of every lesson that was flown here, the oldest first; a damaged record is left out. @throws {StoreProblem} */
  results(): Promise<KeptResult[]> {
    return listResults(this.#database);
  }

  /** Keeps what came of a flight. @returns it as it is kept, the word with it where this very flight is kept already. @throws {StoreProblem} */
  addResult(result: Result): Promise<KeptResult> {
    return addResult(this.#database, result);
  }

  /** Writes the instructor's word beside a result. @throws {StoreProblem} when the result is gone */
  writeWord(id: number, word: string): Promise<void> {
    return writeWord(this.#database, id, word);
  }

  /** Erases all that is kept; dives that are flown now are kept no more. @throws {StoreProblem} when something was left */
  async eraseAll(): Promise<void> {
    this.#endAll();
    await this.#database.erase();
  }

  /** Lets go of the database; it is opened again when it is wanted. */
  close(): void {
    this.#database.close();
  }

  #endAll(): void {
    for (const one of this.#keepings) one.deref()?.end();
    this.#keepings = [];
  }
}
