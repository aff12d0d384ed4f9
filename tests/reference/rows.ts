import checks from './checks.json' with { type: 'json' };

/** How far a value may be trusted: read in its source, recalled from it, common practice, or derived from laws. */
export type Mark = 'read' | 'recalled' | 'practice' | 'derived';

/** One published or derived fact that the model can be held against. */
export interface CheckRow {
  readonly id: string;
  readonly topic: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
  readonly units: string;
  readonly tolerance: string;
  readonly mark: Mark;
  readonly source: string;
  readonly note?: string;
}

/** All rows, in the order of the file. */
export const ROWS: readonly CheckRow[] = checks as CheckRow[];

const byId = new Map(ROWS.map((row) => [row.id, row]));

/** A row. @throws {RangeError} when there is none of that name */
export function rowOf(id: string): CheckRow {
  const row = byId.get(id);
  if (!row) throw new RangeError(`rowOf: no row ${id}`);
  return row;
}

/** A number among a row's inputs. @throws {TypeError} when it is none */
export function input(id: string, name: string): number {
  const value = rowOf(id).inputs[name];
  if (typeof value !== 'number') throw new TypeError(`input: ${id} has no number ${name}`);
  return value;
}

/**
 * How far an answer may lie from the expected value, in its unit, as the row itself says: "±0.05", "±1 %"; "exact" leaves
 * room for rounding alone (1e-9 of the value). A row without a tolerance ("-") must agree in every printed digit.
 */
export function allowedOff(row: CheckRow): number {
  const expected = Math.abs(row.expected as number);
  if (row.tolerance.startsWith('exact')) return expected * 1e-9;
  if (row.tolerance === '-') return 0.5 * 10 ** -decimalsOf(row.expected as number);
  const found = /^±([\d.]+)( %)?/.exec(row.tolerance);
  if (!found) throw new TypeError(`allowedOff: ${row.id} has a tolerance that is not understood: ${row.tolerance}`);
  return found[2] ? (expected * Number(found[1])) / 100 : Number(found[1]);
}

function decimalsOf(value: number): number {
  return String(value).split('.')[1]?.length ?? 0;
}
