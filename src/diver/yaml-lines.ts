import { isAlias, isMap, isPair, isScalar, isSeq, type Alias, type Document, type LineCounter } from 'yaml';
import { pathText, shortened, type Path, type Problem } from './problems.ts';

/** How often repeated values (*name) may be used in all: enough for people, not for a file that unfolds without end. */
export const MOST_REPEATS = 100;

/** Where everything in a document stands, and what its lines alone show to be wrong. */
export class YamlLines {
  /** By path as JSON: of keys and list entries; of the document itself at the empty path. */
  readonly #lines = new Map<string, number>();
  readonly #counter: LineCounter;
  readonly #repeats: { readonly node: Alias; readonly path: Path }[] = [];
  /** Keys that a group has twice. */
  readonly problems: Problem[] = [];

  constructor(document: Document, counter: LineCounter) {
    this.#counter = counter;
    this.#note([], document.contents);
    this.#walk(document.contents, []);
  }

  /** Where a problem at a path is shown: the line, from 1, of what stands there, or of the nearest thing around it. */
  at(path: Path): Pick<Problem, 'line' | 'path'> {
    let line: number | undefined;
    for (let length = path.length; line === undefined && length >= 0; length--)
      line = this.#lines.get(JSON.stringify(path.slice(0, length)));
    return { line: line ?? 1, path: pathText(path) };
  }

  /** Whether the text itself has something at a path. */
  has(path: Path): boolean {
    return this.#lines.has(JSON.stringify(path));
  }

  /** The repeated values that make it impossible to unfold the document. */
  repeatProblems(document: Document): Problem[] {
    const plain = { allowed: 'plain values', suggestion: 'Write the value out' };
    const [tooMany] = this.#repeats.slice(MOST_REPEATS);
    if (tooMany)
      return [{ ...this.at(tooMany.path), found: `more than ${MOST_REPEATS} repeated values (*)`, ...plain }];
    return this.#repeats
      .filter(({ node }) => !node.resolve(document))
      .map(({ node, path }) => ({
        ...this.at(path),
        found: `*${shortened(node.source)}, a name that nothing above has`,
        ...plain,
      }));
  }

  /** The first place where a value is repeated. */
  firstRepeat(): Pick<Problem, 'line' | 'path'> {
    return this.at(this.#repeats[0]?.path ?? []);
  }

  #note(path: Path, node: unknown): number {
    const range = (node as { range?: readonly [number, number, number] | null } | null)?.range;
    const line = range ? Math.max(1, this.#counter.linePos(range[0]).line) : this.at(path.slice(0, -1)).line;
    this.#lines.set(JSON.stringify(path), line);
    return line;
  }

  #walk(node: unknown, path: Path): void {
    if (isAlias(node)) this.#repeats.push({ node, path });
    if (isSeq(node))
      node.items.forEach((item, i) => {
        this.#note([...path, i], isPair(item) ? item.key : item);
        this.#walk(item, [...path, i]);
      });
    if (!isMap(node)) return;
    const seen = new Map<string, number>();
    for (const { key: keyNode, value } of node.items) {
      const key = isScalar(keyNode) ? String(keyNode.value) : String(keyNode);
      const inner = [...path, key];
      const before = seen.get(key);
      const line = this.#note(inner, keyNode);
      seen.set(key, line);
      if (before !== undefined)
        this.problems.push({
          line,
          path: pathText(inner),
          found: `the key ${shortened(key)} a second time`,
          allowed: 'each key once in its group',
          suggestion: `Keep this one or the one on line ${before}`,
        });
      this.#walk(value, inner);
    }
  }
}
