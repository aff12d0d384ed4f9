import type { Path, Problem, YamlText } from '../diver/file.ts';

/** How deep groups and lists may stand inside one another; a run file has four levels. */
const DEEPEST = 16;
/** Of a longer list the lines of later entries are not kept: they are found by the list. Nor of more places than this in all. */
const MOST_NOTED_ENTRIES = 100;
const MOST_NOTED = 20_000;
/** How many keys given twice are told at a time. */
const MOST_TWICE = 20;

/**
 * Reads JSON that remembers its lines, as the reader of setup files does for YAML: the two can be held against the same kind of
 * schema. Keys given twice are problems of their own. Never throws; a text that is no JSON gives one problem on its line.
 */
export function readJson(text: string): YamlText | { readonly problems: readonly Problem[] } {
  const scan = new JsonScan(text);
  const stop = scan.whole();
  const broken = (offset: number) => ({ problems: [scan.broken(offset)] });
  if (stop !== undefined) return broken(stop);
  try {
    const value: unknown = JSON.parse(text);
    return { value, at: (path) => scan.at(path), has: (path) => scan.has(path), problems: scan.problems };
  } catch {
    return broken(0);
  }
}

/** Goes over a JSON text once: is it whole, and on which line does each thing stand? */
class JsonScan {
  readonly problems: Problem[] = [];
  readonly #text: string;
  readonly #lines = new Map<string, number>();
  #at = 0;
  #line = 1;

  constructor(text: string) {
    this.#text = text;
  }

  /** Scans the whole text. @returns where it stops being JSON, or undefined when it never does */
  whole(): number | undefined {
    this.#blanks();
    const ends = this.#value([]);
    this.#blanks();
    return ends && this.#at === this.#text.length ? undefined : this.#at;
  }

  at(path: Path): Pick<Problem, 'line' | 'path'> {
    let line: number | undefined;
    for (let length = path.length; line === undefined && length >= 0; length--)
      line = this.#lines.get(JSON.stringify(path.slice(0, length)));
    return { line: line ?? 1, path: shownPath(path) };
  }

  has(path: Path): boolean {
    return this.#lines.has(JSON.stringify(path));
  }

  broken(offset: number): Problem {
    const rest = this.#text.slice(offset, offset + 20).replace(/\s+/g, ' ');
    return {
      line: this.#line,
      path: '',
      found: rest.trim() === '' ? 'the end of the text' : JSON.stringify(rest),
      allowed: 'JSON: keys in double quotes, commas between them, every bracket closed',
      suggestion: 'Save the run again: run files are not made to be written by hand',
    };
  }

  #value(path: Path): boolean {
    if (path.length > DEEPEST) return false;
    if (path.length === 0) this.#note(path);
    const sign = this.#text[this.#at];
    if (sign === '{') return this.#group(path);
    if (sign === '[') return this.#list(path);
    return sign === '"' ? this.#string() : this.#plain();
  }

  #group(path: Path): boolean {
    const seen = new Map<string, number>();
    return this.#entries('}', () => {
      const from = this.#at;
      if (!this.#string()) return false;
      const key = JSON.parse(this.#text.slice(from, this.#at)) as string;
      const inner = [...path, key];
      const before = seen.get(key);
      if (before !== undefined && this.problems.length < MOST_TWICE) this.problems.push(this.#twice(inner, before));
      seen.set(key, this.#line);
      this.#note(inner);
      this.#blanks();
      if (this.#text[this.#at] !== ':') return false;
      this.#at++;
      this.#blanks();
      return this.#value(inner);
    });
  }

  #list(path: Path): boolean {
    let entry = 0;
    return this.#entries(']', () => {
      const inner = [...path, entry++];
      if (entry <= MOST_NOTED_ENTRIES) this.#note(inner);
      return this.#value(inner);
    });
  }

  /** What stands between an opening and its closing sign: entries with commas between them, or nothing. */
  #entries(close: string, entry: () => boolean): boolean {
    this.#at++;
    this.#blanks();
    if (this.#text[this.#at] === close) {
      this.#at++;
      return true;
    }
    for (;;) {
      if (!entry()) return false;
      this.#blanks();
      const sign = this.#text[this.#at];
      if (sign !== close && sign !== ',') return false;
      this.#at++;
      if (sign === close) return true;
      this.#blanks();
    }
  }

  /** A text in quotes, looked at sign by sign: a pattern would need room for each of millions. */
  #string(): boolean {
    if (this.#text[this.#at] !== '"') return false;
    for (let at = this.#at + 1; at < this.#text.length; at++) {
      const code = this.#text.charCodeAt(at);
      if (code === QUOTE) {
        this.#at = at + 1;
        return true;
      }
      if (code < BLANK) return false;
      if (code !== BACKSLASH) continue;
      ESCAPE.lastIndex = at;
      if (!ESCAPE.test(this.#text)) return false;
      at = ESCAPE.lastIndex - 1;
    }
    return false;
  }

  /** A number or one of the three words. */
  #plain(): boolean {
    PLAIN.lastIndex = this.#at;
    if (!PLAIN.test(this.#text)) return false;
    this.#at = PLAIN.lastIndex;
    return true;
  }

  #blanks(): void {
    for (; ; this.#at++) {
      const sign = this.#text[this.#at];
      if (sign === '\n') this.#line++;
      else if (sign !== ' ' && sign !== '\t' && sign !== '\r') return;
    }
  }

  #note(path: Path): void {
    if (this.#lines.size < MOST_NOTED) this.#lines.set(JSON.stringify(path), this.#line);
  }

  #twice(path: Path, before: number): Problem {
    return {
      line: this.#line,
      path: shownPath(path),
      found: 'the key a second time',
      allowed: 'each key once in its group',
      suggestion: `Keep this one or the one on line ${before}`,
    };
  }
}

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const BLANK = 0x20;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const PLAIN = /-?(?:0|[1-9]\d{0,400})(?:\.\d{1,400})?(?:[eE][-+]?\d{1,9})?|true|false|null/y;

/** A path as people read it, each key short. */
function shownPath(path: Path): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    const key = step.length > 40 ? `${step.slice(0, 39)}…` : step;
    return text === '' ? key : `${text}.${key}`;
  }, '');
}
