import type { Setup } from '../diver/index.ts';

/** Ready setups, each in a file of its own that is fetched when it is chosen. */
const FILES = import.meta.glob<Setup>('../diver/setups/*.yaml', { import: 'default' });

/** The diver of the first screen. */
export const FIRST_SETUP = 'first-dive';

/** A ready setup by its id. @throws {RangeError} when there is none of that id */
export async function readySetup(id: string): Promise<Setup> {
  const load = FILES[`../diver/setups/${id}.yaml`];
  if (!load) throw new RangeError(`readySetup: no setup is called ${id}`);
  return load();
}
