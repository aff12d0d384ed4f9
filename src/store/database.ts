import { deleteDB, openDB, type IDBPDatabase, type IDBPTransaction, type StoreNames } from 'idb';
import type { KeptSchema } from './kept.ts';
import { StoreProblem, storeProblem } from './trouble.ts';

/** Name and version of the database. A higher version adds its step to `upgrade`. */
export const DATABASE = 'midwater';
export const VERSION = 3;
/** Longer than this nobody waits for another tab, or for a slow disk, milliseconds. */
const PATIENCE_MS = 3000;

const STORES = ['dives', 'starts', 'pieces', 'beside', 'results'] as const satisfies readonly StoreNames<KeptSchema>[];

type Db = IDBPDatabase<KeptSchema>;
/** All stores, to be read and written as one: either all of it is kept or nothing. */
export type Together = IDBPTransaction<KeptSchema, typeof STORES, 'readwrite'>;

/** The one connection to the database: opened when it is wanted, opened anew when it was lost. */
export class Database {
  #opening: Promise<Db> | null = null;
  readonly #erased: () => void;

  /** @param erased hears that another tab erases everything */
  constructor(erased: () => void) {
    this.#erased = erased;
  }

  /**
   * Does work in one transaction.
   * @throws {StoreProblem} when it was not done: then nothing of it was
   */
  async together<T>(work: (all: Together) => Promise<T>): Promise<T> {
    try {
      const all = await this.#begin();
      all.done.catch(() => undefined);
      try {
        const made = await work(all);
        await all.done;
        return made;
      } catch (problem) {
        try {
          all.abort();
        } catch {
          // It was over already.
        }
        throw problem;
      }
    } catch (problem) {
      throw storeProblem(problem);
    }
  }

  /** Empties the database and does away with it, also one of a version that is not ours. @throws {StoreProblem} */
  async erase(): Promise<void> {
    // Emptied first: another tab may hold up the rest, never this.
    const emptied = await this.together((all) => Promise.all(STORES.map((name) => all.objectStore(name).clear()))).then(
      () => true,
      () => false,
    );
    this.close();
    try {
      await inTime(deleteDB(DATABASE));
    } catch (problem) {
      if (!emptied) throw storeProblem(problem);
    }
  }

  /** Lets go of the database; it is opened again when it is wanted. */
  close(): void {
    void this.#opening?.then((db) => db.close()).catch(() => undefined);
    this.#opening = null;
  }

  /** A connection that was closed under our hands, as by whoever waited too long for it to open, is opened anew, once. */
  async #begin(): Promise<Together> {
    try {
      return this.#transaction(await this.#open());
    } catch (problem) {
      if (!(problem instanceof Error || problem instanceof DOMException) || problem.name !== 'InvalidStateError')
        throw problem;
      return this.#transaction(await this.#open());
    }
  }

  #transaction(db: Db): Together {
    try {
      return db.transaction(STORES, 'readwrite', { durability: 'relaxed' });
    } catch (problem) {
      // Closed under our hands, or not laid out as ours.
      this.close();
      throw problem;
    }
  }

  async #open(): Promise<Db> {
    const opening = (this.#opening ??= this.#connect());
    try {
      return await inTime(opening);
    } catch (problem) {
      if (this.#opening === opening) this.close();
      throw problem;
    }
  }

  #connect(): Promise<Db> {
    return openDB<KeptSchema>(DATABASE, VERSION, {
      upgrade(db, from) {
        if (from < 1) {
          db.createObjectStore('dives', { keyPath: 'id', autoIncrement: true });
          db.createObjectStore('starts', { keyPath: 'id' });
          db.createObjectStore('pieces', { keyPath: ['id', 'piece'] });
        }
        if (from < 2) db.createObjectStore('beside', { keyPath: 'id' });
        if (from < 3) db.createObjectStore('results', { keyPath: 'id', autoIncrement: true });
      },
      blocking: (_ours, theirs) => {
        this.close();
        if (theirs === null) this.#erased();
      },
      terminated: () => (this.#opening = null),
    });
  }
}

/** What comes in time; after that another tab may be in the way, or the machine is slow: which, no browser says. */
function inTime<T>(wanted: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new StoreProblem('busy')), PATIENCE_MS);
    wanted.then(resolve, reject).finally(() => clearTimeout(late));
  });
}
