import type { ExitCode, Io } from './io.ts';
import type { Asked, Usage } from './usage.ts';

/** One command: how it is asked, what its help says, and what it does. */
export interface Command extends Usage {
  readonly name: string;
  /** One line. */
  readonly does: string;
  /** Further lines for its help: what comes out, in which units, and what is assumed. */
  readonly more: string;
  /** @throws {UsageError | BadFile} what `runCommand` turns into lines and an exit code */
  run(asked: Asked, io: Io): ExitCode;
}
