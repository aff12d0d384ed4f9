import type { Act } from '../panels/index.ts';
import type { Dives } from './dives.ts';
import type { KeyCommand } from './keys.ts';
import type { Shell } from './shell.ts';

/** What presenting may do with the program. */
export interface Presented {
  readonly shell: Shell;
  readonly dives: Dives;
  act(act: Act, down: boolean): void;
  toggle(act: Act): void;
  command(command: KeyCommand): void;
  letGo(): void;
  /** The page changed under the picture. */
  refresh(): void;
}
