import type { Dive } from '../dive/index.ts';
import { freeDiver, type Dives } from './dives.ts';
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
  else dives.takeRun(opened.run, opened.endHash);
}

/** Hands the dive to the person as a run file. */
export async function saveOwn(dive: Dive, doc: Document): Promise<void> {
  const run = dive.run();
  const endHash = dive.hash();
  const [{ writeRun }, { saveFile }] = await Promise.all([import('../dive/file.ts'), import('./files.ts')]);
  saveFile(doc, writeRun(run, { name: dive.rig.name, endHash }), 'dive.midwater');
}
