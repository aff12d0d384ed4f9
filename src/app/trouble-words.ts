import type { Shell } from './shell.ts';

/** What browsers say of a part of the program that did not come: an address, and nothing that anybody could do. */
const NOT_LOADED = /dynamically imported module|importing a module script|unable to preload/i;

/** What went wrong with a wish, as a sentence; whoever threw says its own name first. */
export function troubleWords(problem: unknown): string {
  const words = problem instanceof Error ? problem.message : String(problem);
  const why = NOT_LOADED.test(words)
    ? 'a part of the program was not loaded. Check the connection and try again, or load the page again.'
    : words.replace(/^\w+: /, '');
  return `That did not work, and nothing was lost: ${why}`;
}

/**
 * Waits for what is being done; what does not work is said, and the page stays where it is.
 * @returns what was said; nothing where it worked
 */
export async function sayingTrouble(shell: Pick<Shell, 'view' | 'show'>, doing: Promise<void>): Promise<string> {
  try {
    await doing;
    return '';
  } catch (problem) {
    const trouble = troubleWords(problem);
    // The place that is shown, said again, sets the address back.
    shell.show({ place: shell.view.place, trouble });
    return trouble;
  }
}
