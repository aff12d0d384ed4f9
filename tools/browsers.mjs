import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** @param {string} file */
function runs(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * The first of the programs that this machine has, as a full path.
 * @param {string | undefined} chosen a path that a person set, which wins
 * @param {string[]} names looked up in /usr/bin, then along PATH
 * @returns {string | undefined}
 */
function find(chosen, names) {
  if (chosen) return runs(chosen) ? chosen : undefined;
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter).filter(Boolean)];
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(runs);
}

/** Where chromium is, or undefined; the environment variable CHROMIUM_PATH wins. */
export const findChromium = () => find(process.env.CHROMIUM_PATH, ['chromium', 'chromium-browser']);

/** Where firefox is, or undefined; the environment variable FIREFOX_PATH wins. */
export const findFirefox = () => find(process.env.FIREFOX_PATH, ['firefox-esr', 'firefox']);
