import type { GenericSchema } from 'valibot';
import { pathText, shortened, shown, type Path } from './problems.ts';
import { nearest } from './suggest.ts';

/** Something that the shape of a file does not know: a strange key, or a list where keys belong. */
export interface Stranger {
  readonly path: Path;
  /** The known key that was most likely meant. */
  readonly meant?: Path;
  readonly found: string;
  readonly allowed: string;
  readonly suggestion: string;
}

/** The parts of a valibot schema that the walk below looks at. */
interface Shape {
  readonly wrapped?: Shape;
  readonly item?: Shape;
  readonly entries?: Readonly<Record<string, Shape>>;
  readonly options?: readonly Shape[];
  readonly literal?: unknown;
}

/**
 * Every key of `value` that its schema does not have. The validator itself stops at the first strange key of a group and takes a
 * list for a group without keys; people want to hear of all.
 */
export function strangers(schema: GenericSchema, value: unknown): Stranger[] {
  const found: Stranger[] = [];
  walk(schema as unknown as Shape, value, [], found);
  return found;
}

function walk(schema: Shape, value: unknown, path: Path, out: Stranger[]): void {
  const shape = bare(schema);
  if (typeof value !== 'object' || value === null) return;
  // A list of words has options too: a group in the place of a word is the validator's to refuse.
  if (shape.options && !shape.options[0]?.entries) return;
  if (shape.item) {
    if (Array.isArray(value)) for (const [i, entry] of value.entries()) walk(shape.item, entry, [...path, i], out);
    return;
  }
  const entries = shape.options ? entriesOfKind(shape.options, value) : shape.entries;
  if (!shape.options && !shape.entries) return;
  if (Array.isArray(value)) {
    const suggestion = 'Write its keys below it, one a line, without dashes';
    out.push({ path, found: shown(value), allowed: 'a group of keys', suggestion });
    return;
  }
  if (!entries) return;
  const known = Object.keys(entries);
  for (const key of Object.keys(value)) {
    const inner = [...path, key];
    if (Object.hasOwn(entries, key)) walk(entries[key], (value as Record<string, unknown>)[key], inner, out);
    else out.push(strangeKey(inner, key, known, shape.options ?? []));
  }
}

function strangeKey(path: Path, key: string, known: readonly string[], kinds: readonly Shape[]): Stranger {
  const near = nearest(key, known);
  const other = kinds.find((kind) => kind.entries && Object.hasOwn(kind.entries, key))?.entries?.['kind'];
  const group = pathText(path.slice(0, -1));
  return {
    path,
    ...(near === undefined ? {} : { meant: [...path.slice(0, -1), near] }),
    found: `the key ${shortened(key) === '' ? '""' : shortened(key)}`,
    allowed: `${group === '' ? 'the keys' : `under ${group} the keys`} ${known.join(', ')}`,
    suggestion: other
      ? `Delete it, or write kind: ${String(bare(other).literal)}`
      : near === undefined
        ? 'Delete it'
        : `Write ${near}`,
  };
}

/** The entries of the option whose kind the value names; the first option is the default; none when the kind is unknown. */
function entriesOfKind(options: readonly Shape[], value: object): Shape['entries'] {
  const kind = Object.hasOwn(value, 'kind')
    ? (value as { kind: unknown }).kind
    : bare(options[0].entries!['kind']).literal;
  return options.find((option) => bare(option.entries!['kind']).literal === kind)?.entries;
}

/** The schema inside "may be left out". */
function bare(schema: Shape): Shape {
  return schema.wrapped ? bare(schema.wrapped) : schema;
}
