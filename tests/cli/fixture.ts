import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';

/** What a command came to. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command in this process, with nobody watching. */
export function ran(...words: (string | number)[]): Ran {
  return ranWatched(false, ...words);
}

/** Runs the command in this process; progress is drawn where a person watches. */
export function ranWatched(isWatched: boolean, ...words: (string | number)[]): Ran {
  let out = '';
  let err = '';
  const io = { out: (text: string) => (out += text), err: (text: string) => (err += text), isWatched };
  return { code: runCommand(words.map(String), io), out, err };
}

/** The result of a command that must be done without a word on stderr. */
export function resultOf<T>(...words: (string | number)[]): T {
  const { code, out, err } = ran(...words);
  if (code !== 0 || err !== '') throw new Error(`exit ${code}: ${err}`);
  return JSON.parse(out) as T;
}

/** Call at the top of a test file: writes files into a folder that is gone afterwards. @returns the path of a file written */
export function useFolder(): (name: string, content?: string | Uint8Array) => string {
  const folder = mkdtempSync(join(tmpdir(), 'midwater-command-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  return (name, content) => {
    const path = join(folder, name);
    if (content !== undefined) writeFileSync(path, content);
    return path;
  };
}

const EXAMPLE = readFileSync(new URL('../fixtures/setups/example.yaml', import.meta.url), 'utf8');

/** The documented example setup with other values: each key by its first line in the file, lead as one piece on the belt. */
export function exampleWith(values: Record<string, string | number>, leadKg?: number): string {
  let text = EXAMPLE;
  for (const [key, value] of Object.entries(values)) {
    const changed = text.replace(new RegExp(`(\\b${key}: )[^,}#\\n]*`), `$1${value} `);
    if (changed === text) throw new Error(`the example has no key ${key}`);
    text = changed;
  }
  if (leadKg === undefined) return text;
  return text.replace(/^lead:\n(?: {2}-.*\n)+/m, `lead:\n  - { massKg: ${leadKg}, place: belt }\n`);
}

/** Samples of a dive as the command prints them. */
export interface PrintedFlight {
  readonly samples: readonly Record<
    'tS' | 'depthM' | 'speedMps' | 'pitchDeg' | 'lungsL' | 'jacketL' | 'suitL' | 'cylinderBar' | 'netN' | 'loopL',
    number
  >[];
  readonly events: readonly {
    readonly tS: number;
    readonly kind: string;
    readonly massKg?: number;
    readonly piece?: number;
  }[];
  readonly hash: string;
  readonly hashMet?: boolean;
}
