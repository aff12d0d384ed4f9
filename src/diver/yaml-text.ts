import { LineCounter, parseDocument, type YAMLError } from 'yaml';
import { shortened, type Path, type Problem } from './problems.ts';
import { MOST_REPEATS, YamlLines } from './yaml-lines.ts';
import { yamlAllowed, yamlSuggestion } from './yaml-words.ts';

/** What a file may weigh, bytes of UTF-8. A setup is a few thousand. */
export const LARGEST_FILE_BYTES = 256 * 1024;
/** How many breaks of YAML's own rules are shown at a time. */
const MOST_SYNTAX_PROBLEMS = 20;

/** A YAML text as plain data that remembers its lines. */
export interface YamlText {
  readonly value: unknown;
  /** Where a problem at a path is shown: the line, from 1, of what stands there, or of the nearest thing around it. */
  at(path: Path): Pick<Problem, 'line' | 'path'>;
  /** Whether the text itself has something at a path. */
  has(path: Path): boolean;
  /** Keys given twice. The value has the last of them. */
  readonly problems: readonly Problem[];
}

/** Reads one YAML document; problems, at least one and nothing else, when the text is not one. Never throws. */
export function readYaml(text: string): YamlText | { readonly problems: readonly Problem[] } {
  if (bytesOf(text) > LARGEST_FILE_BYTES)
    return only({ line: 1, path: '' }, 'a very large file', 'at most 256 kB', 'Keep one thing in one file');
  try {
    return parsed(text);
  } catch {
    // Endless nesting leaves the stack without room.
    return only(
      { line: 1, path: '' },
      'groups inside groups without end',
      'groups a few levels deep',
      'Write it flatter',
    );
  }
}

function parsed(text: string): YamlText | { readonly problems: readonly Problem[] } {
  const counter = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: counter,
    prettyErrors: false,
    // Doubles are looked for in one pass over the lines; the library compares every key with every other.
    uniqueKeys: false,
    stringKeys: true,
    schema: 'core',
    resolveKnownTags: false,
    logLevel: 'error',
  });
  const broken = syntaxProblems([...document.errors, ...document.warnings], text, counter);
  if (broken.length > 0) return { problems: broken };
  const lines = new YamlLines(document, counter);
  const endless = lines.repeatProblems(document);
  if (endless.length > 0) return { problems: [...lines.problems, ...endless] };
  let value: unknown;
  try {
    value = document.toJS({ maxAliasCount: MOST_REPEATS });
  } catch {
    const found = 'values that repeat one another again and again';
    return only(lines.firstRepeat(), found, 'plain values', 'Write each value out');
  }
  return { value, at: (path) => lines.at(path), has: (path) => lines.has(path), problems: lines.problems };
}

/** The first break of YAML's rules on each line, and no more than a person can use: later ones mostly follow from it. */
function syntaxProblems(errors: readonly YAMLError[], text: string, counter: LineCounter): Problem[] {
  const last = Math.max(0, text.trimEnd().length - 1);
  const byLine = new Map<number, YAMLError>();
  for (const error of errors) {
    // A break at the very end of the text belongs to its last line with something on it.
    const line = Math.max(1, counter.linePos(Math.min(error.pos[0], last)).line);
    if (!byLine.has(line)) byLine.set(line, error);
    if (byLine.size === MOST_SYNTAX_PROBLEMS) break;
  }
  const lines = byLine.size > 0 ? text.split('\n') : [];
  return [...byLine].map(([line, { code }]) => {
    const found = shortened((lines[line - 1] ?? '').slice(0, 1000));
    const where = { line, path: '', found: found === '' ? 'nothing' : found };
    return { ...where, allowed: yamlAllowed(code), suggestion: yamlSuggestion(code) };
  });
}

function only(where: Pick<Problem, 'line' | 'path'>, found: string, allowed: string, suggestion: string) {
  return { problems: [{ ...where, found, allowed, suggestion }] };
}

/** Bytes that a text takes in UTF-8; stops counting above the limit. */
function bytesOf(text: string): number {
  let bytes = 0;
  for (let i = 0; i < text.length && bytes <= LARGEST_FILE_BYTES; i++) {
    const code = text.charCodeAt(i);
    bytes += code < 0x80 ? 1 : code < 0x800 || (code >= 0xd800 && code < 0xe000) ? 2 : 3;
  }
  return bytes;
}
