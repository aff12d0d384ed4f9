import { freeDiver, type Dives } from './dives.ts';
import type { Kit } from './kit.ts';
import type { Shell } from './shell.ts';

/** *Kit and water* for the dives of a program, fetched now and not before. */
export async function kitOf(shell: Shell, dives: Dives): Promise<Kit> {
  const { Kit } = await import('./kit.ts');
  const flown = () => {
    const { lesson, free } = dives;
    return { lesson: lesson?.lesson ?? null, setup: free.setup, id: free.id };
  };
  return new Kit(shell, { flown, fly: (setup, id) => dives.practise(freeDiver(setup, id)) });
}
