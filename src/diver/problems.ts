/** One thing that is wrong in a file that a person wrote: where, what stands there, what may, and what to write instead. */
export interface Problem {
  /** From 1: that of the key, or of the nearest group around it that the file has. */
  readonly line: number;
  /** As in cylinders[0].fillBar; empty when the file as a whole is meant. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
  readonly suggestion: string;
}

/** Where something stands in a file: keys, and positions in lists from 0. */
export type Path = readonly (string | number)[];

/** A path as people read it: cylinders[0].fillBar. */
export function pathText(path: Path): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? step : `${text}.${step}`;
  }, '');
}

/** One problem as a line of plain text. */
export function problemText(problem: Problem): string {
  const where = problem.path === '' ? '' : ` ${problem.path}:`;
  return `line ${problem.line}:${where} found ${problem.found}; allowed: ${problem.allowed}. ${problem.suggestion}`;
}

const LONGEST_SHOWN = 60;

/** A value of a file as a person would recognise it, on one line and not too long. */
export function shown(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object') return 'a group of keys';
  return typeof value === 'string' ? JSON.stringify(shortened(value)) : String(value);
}

/** Text cut to one short line. */
export function shortened(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > LONGEST_SHOWN ? `${line.slice(0, LONGEST_SHOWN - 1)}…` : line;
}
