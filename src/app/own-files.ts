import type { Setup } from '../diver/index.ts';
import type { RunSecond } from '../dive/file.ts';
import { WishEvent } from '../panels/index.ts';
import type { KeptPair } from '../store/index.ts';
import { freeDiver, type Dives } from './dives.ts';
import { readySetup } from './setups.ts';
import type { Shell } from './shell.ts';

// Readers and writers of files are fetched when a person has a file, and not before.

/** Opens what a person chose or dropped on the page: a setup to fly, or a saved dive; else says what is wrong with it. */
export async function openOwn(file: File, dives: Dives, shell: Shell): Promise<void> {
  const { openFile } = await import('./files.ts');
  const opened = await openFile(file);
  if (opened.kind === 'problems')
    shell.show({
      moreOpen: false,
      trouble: `${file.name} was not opened. The dive you have is untouched.`,
      problems: opened.problems,
    });
  else if (opened.kind === 'setup') dives.practise(freeDiver(opened.setup, ''));
  else {
    dives.takeRun(opened.run, opened.endHash, opened.second);
    // Whoever draws two divers may not be there yet.
    if (opened.second) shell.root.dispatchEvent(new WishEvent({ kind: 'pair', ask: { do: 'shown' } }));
  }
}

/** Hands the dive in hand to the person as a run file. */
export async function saveOwn(dives: Dives, doc: Document): Promise<void> {
  const { flight, free, lesson, shownBeside, pair } = dives;
  const { dive } = flight;
  const run = dive.run();
  const endHash = dive.hash();
  // Whom a demonstration brought goes with it.
  const alone = lesson !== null || shownBeside?.first === flight;
  const second = alone ? undefined : await secondOf(pair, free.rig === flight.rig ? free.setup : null);
  const [{ writeRun }, { saveFile }] = await Promise.all([import('../dive/file.ts'), import('./files.ts')]);
  saveFile(doc, writeRun(run, { name: dive.rig.name, second, endHash }), 'dive.midwater');
}

/**
 * The second diver as a run file holds him; nothing where the dive is flown alone, or where a setup is none that a file may hold:
 * he is left out then, and the dive can be opened.
 * @param first setup of the first diver, or the id of a ready one
 */
export async function secondOf(
  pair: KeptPair | null | undefined,
  first: Setup | string | null,
): Promise<RunSecond | undefined> {
  if (!pair) return undefined;
  const { difference, by, own, words } = pair;
  const { readSetup } = await import('../diver/file.ts');
  const sound = (setup: Setup | null) => setup === null || 'setup' in readSetup(JSON.stringify(setup));
  const setup = typeof first === 'string' ? await readySetup(first) : first;
  if (!sound(own)) return undefined;
  return { difference, by, ...(words ? { words } : {}), first: sound(setup) ? setup : null, own };
}
