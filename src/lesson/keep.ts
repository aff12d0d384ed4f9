import type { Recording } from '../dive/index.ts';
import type { Keep } from './condition.ts';
import { isIn, leadChangesOf, pressesOf } from './quantity.ts';
import { rowsOf } from './rows.ts';
import type { Broken } from './run.ts';

/** A span of rows, both ends in it, and the row on which the first thing went wrong; null where nothing did. */
export interface KeptSpan {
  readonly fromRow: number;
  readonly toRow: number;
  readonly eventRow: number | null;
}

/** What was not kept over a step, each with the row that shows it. */
export function brokenOf(keeps: readonly Keep[], recording: Recording, span: KeptSpan): Broken[] {
  return keeps.flatMap((keep, index) => {
    const row = brokenRow(keep, recording, span);
    return row === null ? [] : [{ index, row }];
  });
}

function brokenRow(keep: Keep, recording: Recording, { fromRow, toRow, eventRow }: KeptSpan): number | null {
  const first = (from: number, to: number, wanted: (row: number) => boolean) => {
    for (let row = from; row <= to; row++) if (wanted(row)) return row;
    return null;
  };
  if (keep.do === 'presses') {
    const presses = pressesOf(recording, fromRow, toRow).sort((a, b) => a.row - b.row);
    const long = presses.find(({ lastedS }) => lastedS > keep.longestS + 1e-9)?.row ?? null;
    return presses[keep.most]?.row ?? long;
  }
  if (keep.do === 'lead-changes') return leadChangesOf(recording, fromRow, toRow)[keep.most] ?? null;
  const within = (sinceRow: number) => (row: number) => isIn(recording, keep, row, sinceRow);
  switch (keep.do) {
    case 'stay':
      // A mean is judged once there is that much of it.
      return first(fromRow + Math.max(0, rowsOf(keep.overS) - 1), toRow, (row) => !within(fromRow)(row));
    case 'never':
      return first(fromRow, toRow, within(fromRow));
    case 'end':
      return within(fromRow)(toRow) ? null : toRow;
    case 'before':
    case 'after': {
      const since = keep.of === 'event' ? eventRow : fromRow;
      if (since === null || since > toRow) return null;
      const until = since + rowsOf(keep.atS);
      const reached = first(since, Math.min(until, toRow), within(since));
      if (keep.do === 'before') return reached === null ? Math.min(until, toRow) : null;
      return reached !== null && reached < until ? reached : null;
    }
  }
}
