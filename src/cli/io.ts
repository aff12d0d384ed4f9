/** Where a command writes and what it may show there. Handed in, so that a test can listen. */
export interface Io {
  /** Results: JSON, or help. */
  out(text: string): void;
  /** One line a problem. */
  err(text: string): void;
  /** Whether a person watches what `err` shows: only then is progress drawn. */
  readonly isWatched: boolean;
}

/** How a command ended: done; what it judged failed, or a file is bad; it was asked wrongly. */
export const DONE = 0;
export const FAILED = 1;
export const WRONG_USAGE = 2;
export type ExitCode = typeof DONE | typeof FAILED | typeof WRONG_USAGE;

/** Said with every answer about a diver, and in the help. */
export const CAUTION =
  'A teaching model. Not for planning dives, choosing lead or handling emergencies. Your body and kit differ.';

/** Writes a result as JSON that people can read too. */
export function printJson(io: Io, result: unknown): void {
  io.out(`${JSON.stringify(result, null, 2)}\n`);
}

/** Draws how far long work has come, where a person watches; `share` 1 wipes it away. */
export function progressOf(io: Io, what: string): (share: number) => void {
  if (!io.isWatched) return () => undefined;
  let shown = -1;
  return (share) => {
    const percent = Math.floor(share * 100);
    if (percent === shown) return;
    shown = percent;
    io.err(share >= 1 ? `\r${' '.repeat(what.length + 7)}\r` : `\r${what}: ${percent} %`);
  };
}
