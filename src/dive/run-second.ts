import type { Setup } from '../diver/index.ts';
import { readSetup } from '../diver/file.ts';
import type { Path } from '../diver/file.ts';

/**
 * The second diver of a dive, as far as he does not follow from it: who dives beside is computed from the first dive. Whoever opens the
 * run knows what the words mean, or leaves him out.
 */
export interface RunSecond {
  /** What is different about him, and who flies him. */
  readonly difference: string;
  readonly by: string;
  /** What he has that the first has not, where the difference does not say it. */
  readonly words?: string | undefined;
  /** Setup of the first, which some differences begin from; null where he has none. */
  readonly first: Setup | null;
  /** His own, where the difference does not give it. */
  readonly own: Setup | null;
}

/** Breaks of the setups in a second diver: what a setup file may not hold, he may not. */
export function secondBreaks(
  second: RunSecond | undefined,
): readonly { readonly at: Path; readonly found: string; readonly allowed: string }[] {
  return (['first', 'own'] as const).flatMap((which) => {
    const setup = second?.[which];
    if (!setup) return [];
    // JSON is YAML: one reader knows what a setup is.
    const read = readSetup(JSON.stringify(setup));
    if ('setup' in read) return [];
    return read.problems.map(({ path, found, allowed }) => ({
      at: ['second', which, ...path.split('.').filter(Boolean)],
      found,
      allowed,
    }));
  });
}
