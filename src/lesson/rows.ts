import { TICKS_PER_ROW, TICKS_PER_S } from '../dive/index.ts';

/** Rows of a recording in a second. */
export const ROWS_PER_S = TICKS_PER_S / TICKS_PER_ROW;

/** Whole rows of a time. */
export function rowsOf(seconds: number): number {
  return Math.round(seconds * ROWS_PER_S);
}
