import type { Stage, StageView } from '../stage/index.ts';
import type { Dives } from './dives.ts';
import type { OtherLines } from './other-lines.ts';
import type { Shell } from './shell.ts';

/** What time may do with the program. */
export interface Timed {
  readonly shell: Shell;
  readonly dives: Dives;
  readonly stage: Pick<Stage, 'pxPerM'>;
  otherLines: OtherLines | null;
  /** What is added to the picture. */
  adorn: (view: StageView) => StageView;
  /** A frozen dive goes on by a tenth of a second. */
  step(): void;
  /** Looks at an earlier moment; null goes back to the end. */
  lookAt(atS: number | null): void;
  refresh(): void;
}
