import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import { vi } from 'vitest';
import { Chance } from '../reference/chance.ts';
import type { KeptWhat } from '../../src/store/index.ts';

/** What is said of a dive where it does not matter. */
export const WHAT: KeptWhat = {
  name: 'First dive',
  setupId: 'first-dive',
  setup: null,
  letGoM: null,
  lessonId: null,
  given: [],
  projector: false,
};

const IDB_CLASSES = [
  'IDBDatabase',
  'IDBObjectStore',
  'IDBIndex',
  'IDBCursor',
  'IDBTransaction',
  'IDBRequest',
  'IDBOpenDBRequest',
  'IDBVersionChangeEvent',
  'IDBCursorWithValue',
] as const;

/** A browser with nothing stored: its database, and its locks as two pages of one browser share them. */
export async function newBrowser(): Promise<void> {
  const fake = await import('fake-indexeddb');
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('IDBKeyRange', IDBKeyRange);
  for (const name of IDB_CLASSES) vi.stubGlobal(name, fake[name]);
  vi.stubGlobal('navigator', { locks: new Locks() });
}

/** Locks by name, the first come holds; who waits gives up when told to. */
class Locks {
  readonly #held = new Map<string, Promise<unknown>>();

  async request(name: string, { signal }: { signal: AbortSignal }, work: () => Promise<unknown>): Promise<unknown> {
    while (this.#held.has(name))
      await Promise.race([
        this.#held.get(name),
        new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason as Error))),
      ]);
    const done = work().finally(() => this.#held.delete(name));
    this.#held.set(name, done);
    return done;
  }
}

/** Chance from a seed, 0…1. */
export function chanceOf(seed: number): () => number {
  const chance = new Chance(seed);
  return () => chance.between(0, 1);
}
