import * as v from 'valibot';
import { suggestChoice, suggestNumber } from './suggest.ts';

/**
 * What a field says when it refuses: what is allowed there and what to write, on two lines, so that both travel in the one
 * message that the validator carries.
 */
export function words(
  allowed: string,
  suggest: (found: unknown) => string,
): (issue: { readonly input: unknown }) => string {
  return (issue) => `${allowed}\n${suggest(issue.input)}`;
}

/** A number within bounds, both allowed. */
export function bounded(least: number, most: number) {
  const say = words(`a number from ${least} to ${most}`, (found) => suggestNumber(found, least, most));
  return v.pipe(v.number(say), v.minValue(least, say), v.maxValue(most, say));
}

/** A number within bounds that may be left out. */
export function number(least: number, most: number) {
  return v.optional(bounded(least, most));
}

/** One word of a list that may be left out. */
export function choice<const T extends readonly string[]>(choices: T) {
  return v.optional(
    v.picklist(
      choices,
      words(`one of ${choices.join(', ')}`, (found) => suggestChoice(found, choices)),
    ),
  );
}

/** true or false, or left out. */
export function yesNo() {
  const suggest = (found: unknown) => (/^(y|yes|on|1)$/i.test(String(found)) ? 'Write true' : 'Write true or false');
  return v.optional(v.boolean(words('true or false', suggest)));
}

/** Text of 1 to `longest` characters, blanks around it dropped. */
export function text(longest: number) {
  const say = words(`text of 1 to ${longest} characters`, (found) =>
    typeof found === 'string'
      ? found.trim() === ''
        ? 'Write a few words, or leave the key out'
        : 'Write it shorter'
      : typeof found === 'number' || typeof found === 'boolean'
        ? `Write it in quotes: "${found}"`
        : 'Write a few words in quotes',
  );
  return v.pipe(v.string(say), v.trim(), v.minLength(1, say), v.maxLength(longest, say));
}

/** A list of `least` to `most` entries that may be left out. */
export function list<const T extends v.GenericSchema>(entry: T, least: number, most: number) {
  const allowed = `a list of ${least} to ${most} entries`;
  const say = words(allowed, (found) => {
    if (!Array.isArray(found))
      return least === 0 && found === null ? 'Write [] for none' : 'Begin each entry with a dash';
    return found.length < least ? `Write at least ${least}, or leave the key out` : `Keep at most ${most}`;
  });
  return v.optional(v.pipe(v.array(entry, say), v.minLength(least, say), v.maxLength(most, say)));
}

/** A group of keys and no others. */
export function group<const T extends v.ObjectEntries>(entries: T) {
  return v.strictObject(entries, (issue) => {
    const key = /^"(.+)"$/.exec(issue.expected ?? '')?.[1];
    return key === undefined
      ? `a group of keys\nWrite keys below it, or leave it out`
      : `the key ${key}, which has no default\nAdd ${key}`;
  });
}
