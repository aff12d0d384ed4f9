import { parseArgs } from 'node:util';
import { nearest } from '../diver/file.ts';

/** The command was asked for something that it cannot do: exit 2, the message on one line. */
export class UsageError extends Error {}

/** An option of a command: a number within bounds, a text, or there or not. */
export type Option =
  | {
      readonly kind: 'number';
      readonly least: number;
      readonly most: number;
      readonly says: string;
      readonly needed?: true;
    }
  | { readonly kind: 'text'; readonly shows: string; readonly says: string; readonly needed?: true }
  | { readonly kind: 'flag'; readonly says: string };

/** What a command takes: its options by name, and how many things it is given beside them. */
export interface Usage {
  readonly options: Readonly<Record<string, Option>>;
  /** As help shows them, such as `SETUP`. */
  readonly things: string;
  readonly least: number;
  readonly most: number;
}

/** What a person asked for, checked. Options left out are absent. */
export interface Asked {
  readonly things: readonly string[];
  readonly numbers: Readonly<Record<string, number | undefined>>;
  readonly texts: Readonly<Record<string, string | undefined>>;
  readonly flags: ReadonlySet<string>;
}

/**
 * Reads the words after a command's name.
 * @throws {UsageError} when an option is unknown, without value, no number, out of range or missing, or things are too few or many
 */
export function asked(words: readonly string[], usage: Usage): Asked {
  const names = Object.keys(usage.options);
  const { tokens } = parseArgs({
    args: [...words],
    strict: false,
    tokens: true,
    options: Object.fromEntries(
      names.map((name) => [name, { type: usage.options[name].kind === 'flag' ? 'boolean' : 'string' } as const]),
    ),
  });
  const things: string[] = [];
  const numbers: Record<string, number> = {};
  const texts: Record<string, string> = {};
  const flags = new Set<string>();
  for (const token of tokens) {
    if (token.kind === 'positional') things.push(token.value);
    if (token.kind !== 'option') continue;
    const option = Object.hasOwn(usage.options, token.name) ? usage.options[token.name] : undefined;
    if (!option) throw new UsageError(unknownWords(token.rawName, token.name, names));
    if (option.kind === 'flag') {
      if (token.value !== undefined) throw refused(token.rawName, token.value, 'no value: it is there or it is not');
      flags.add(token.name);
    } else if (option.kind === 'text') {
      if (!token.value) throw refused(token.rawName, token.value, option.shows);
      texts[token.name] = token.value;
    } else numbers[token.name] = numberIn(token.rawName, token.value, option.least, option.most);
  }
  for (const [name, option] of Object.entries(usage.options))
    if (option.kind !== 'flag' && option.needed && !(name in (option.kind === 'text' ? texts : numbers)))
      throw new UsageError(`--${name} is missing: ${option.says}`);
  if (things.length < usage.least) throw new UsageError(`${usage.things} is missing`);
  if (things.length > usage.most)
    throw new UsageError(`found ${JSON.stringify(things[usage.most])}; allowed: ${usage.things || 'options only'}`);
  return { things, numbers, texts, flags };
}

/**
 * A number that a person wrote, within bounds.
 * @throws {UsageError} with what was found and what is allowed
 */
export function numberIn(name: string, written: string | undefined, least: number, most: number): number {
  const value = written !== undefined && NUMBER.test(written) ? Number(written) : NaN;
  if (!(value >= least && value <= most))
    throw refused(name, written, `a number from ${shown(least)} to ${shown(most)}`);
  return value;
}

/** Refuses a number that is in itself possible but not here, such as more gas than a jacket holds. */
export function within(name: string, value: number, least: number, most: number, why: string): number {
  if (value >= least && value <= most) return value;
  throw refused(name, String(value), `from ${shown(least)} to ${shown(most)}, ${why}`);
}

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;

function refused(name: string, written: string | undefined, allowed: string): UsageError {
  return new UsageError(
    `${name}: found ${written === undefined ? 'nothing' : JSON.stringify(written)}; allowed: ${allowed}`,
  );
}

/** A bound without the digits that come of changing units. */
function shown(bound: number): number {
  return Number(bound.toPrecision(6));
}

function unknownWords(raw: string, name: string, names: readonly string[]): string {
  const near = nearest(name, names);
  const known = [...names, 'help'].map((one) => `--${one}`).join(', ');
  return `unknown option ${raw}${near === undefined ? '' : `: write --${near}`}; allowed: ${known}`;
}
