import { readFileSync, statSync } from 'node:fs';
import { nearest, readSetup, type Problem } from '../diver/file.ts';
import { READY_SETUPS, rigOf, type Rig, type Setup } from '../diver/index.ts';
import { UsageError } from './usage.ts';

/** No file of ours comes near this; larger ones are not even read. */
const LARGEST_BYTES = 16 * 1024 * 1024;

/** A file was read and is bad: exit 1, each problem on its line. */
export class BadFile extends Error {
  readonly file: string;
  readonly problems: readonly Problem[];

  constructor(file: string, problems: readonly Problem[]) {
    super(`${file} has problems`);
    this.file = file;
    this.problems = problems;
  }
}

/** What is in a file. @throws {UsageError} when there is no such file, or it is none of ours by its size */
export function bytesOf(path: string): Uint8Array {
  const size = statSync(path, { throwIfNoEntry: false });
  if (!size) throw new UsageError(`found no file ${JSON.stringify(path)}`);
  if (!size.isFile()) throw new UsageError(`${JSON.stringify(path)} is a folder or a device; allowed: a file`);
  if (size.size > LARGEST_BYTES)
    throw new UsageError(`${JSON.stringify(path)} is larger than any file of this program`);
  try {
    return readFileSync(path);
  } catch {
    throw new UsageError(`${JSON.stringify(path)} cannot be read`);
  }
}

/** What is in a text file, as text. @throws {UsageError} as {@link bytesOf} */
export function textOf(path: string): string {
  return new TextDecoder().decode(bytesOf(path));
}

/**
 * The path of one of our own files by its name, or the path that was given.
 * @param ready names of our own files
 * @throws {UsageError} when it is neither, with the nearest name
 */
export function pathOf(given: string, kind: string, ready: readonly string[], folder: URL): URL | string {
  if (ready.includes(given)) return new URL(`${given}.yaml`, folder);
  if (statSync(given, { throwIfNoEntry: false })) return given;
  const near = nearest(given, ready);
  const hint =
    near === undefined ? `allowed: a file, or one of ${ready.join(', ')}` : `write ${near}, or the path of a file`;
  throw new UsageError(`found no ${kind} ${JSON.stringify(given)}: ${hint}`);
}

/**
 * A setup that is given by the path of its file or by the name of one of our own.
 * @throws {UsageError} when there is no such setup
 * @throws {BadFile} when its file has problems
 */
export function setupAt(given: string): Setup {
  const names = READY_SETUPS.map(({ id }) => id);
  const path = pathOf(given, 'setup', names, new URL('../diver/setups/', import.meta.url));
  const read = readSetup(typeof path === 'string' ? textOf(path) : readFileSync(path, 'utf8'));
  if ('problems' in read) throw new BadFile(given, read.problems);
  return read.setup;
}

/** The rig of a setup, as {@link setupAt}. */
export function rigAt(given: string): Rig {
  return rigOf(setupAt(given));
}
