import { writeFileSync } from 'node:fs';
import { writeRun, type RunExtra } from '../dive/file.ts';
import type { Dive } from '../dive/index.ts';
import { UsageError, type Option } from './usage.ts';

/** The option of commands that dive. */
export const SAVE: Option = { kind: 'text', shows: 'a file', says: 'writes the run there, to be replayed' };

/** Writes a dive as a run file, where a path was asked for. @throws {UsageError} when it cannot be written there */
export function saveRun(path: string | undefined, dive: Dive, extra: Omit<RunExtra, 'endHash'>): void {
  if (path === undefined) return;
  const bytes = writeRun(dive.run(), { ...extra, endHash: dive.hash() });
  try {
    writeFileSync(path, bytes);
  } catch {
    throw new UsageError(`--save: ${JSON.stringify(path)} cannot be written`);
  }
}
