import { TOP_UPRIGHT_M } from '../diver/index.ts';
import type { Recording } from '../dive/index.ts';
import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import type { Quantity, Range } from './condition.ts';
import { ROWS_PER_S, rowsOf } from './rows.ts';

/** A quantity on a row, in its own unit. @param sinceRow where running sums begin */
function valueAt(recording: Recording, what: Quantity, row: number, sinceRow: number): number {
  const at = (name: Parameters<Recording['at']>[1], on = row) => recording.at(on, name);
  const grown = (name: Parameters<Recording['at']>[1]) => at(name) - at(name, Math.min(sinceRow, row));
  switch (what) {
    case 'depthM':
      return at('depthM');
    case 'speedMpmin':
      return at('speedMps') * 60;
    case 'netKg':
      return at('midNetN') / STANDARD_GRAVITY_MPS2;
    case 'breathKg':
      return (at('netN') - at('midNetN')) / STANDARD_GRAVITY_MPS2;
    case 'jacketL':
      return at('jacketM3') * 1e3;
    case 'suitL':
      return at('suitGasM3') * 1e3;
    case 'gasInL':
      return grown('letInM3') * 1e3;
    case 'gasOutL':
      return grown('letOutM3') * 1e3;
    case 'finsNs':
      return grown('finsUpNs') + grown('finsDownNs');
    case 'pitchDeg':
      return (Math.atan2(at('pitchSin'), at('pitchCos')) * 180) / Math.PI;
    case 'waterlineCm':
      return (TOP_UPRIGHT_M - at('depthM')) * 100;
    case 'leadOffKg':
      return -grown('leadKg');
  }
}

/** Whether a quantity, or its mean over the time before, is in its range on a row; not before there is that much time. */
export function isIn(recording: Recording, range: Range, row: number, sinceRow: number): boolean {
  const rows = Math.max(1, rowsOf(range.overS));
  if (row - sinceRow + 1 < rows) return false;
  let sum = 0;
  for (let i = row - rows + 1; i <= row; i++) sum += valueAt(recording, range.what, i, sinceRow);
  const value = sum / rows;
  return value >= range.least && value <= range.most;
}

/** Presses between two rows: stretches in which gas was let in, or out, each with its first row and its length. */
export function pressesOf(recording: Recording, fromRow: number, toRow: number): { row: number; lastedS: number }[] {
  return (['letInM3', 'letOutM3'] as const).flatMap((name) => {
    const presses: { row: number; lastedS: number }[] = [];
    let row = -1;
    for (let i = fromRow + 1; i <= toRow + 1; i++) {
      const passes = i <= toRow && recording.at(i, name) > recording.at(i - 1, name);
      if (passes && row < 0) row = i;
      else if (!passes && row >= 0) {
        presses.push({ row, lastedS: (i - row) / ROWS_PER_S });
        row = -1;
      }
    }
    return presses;
  });
}

/** Rows on which other lead is worn than on the row before. */
export function leadChangesOf(recording: Recording, fromRow: number, toRow: number): number[] {
  const rows: number[] = [];
  for (let row = fromRow + 1; row <= toRow; row++)
    if (recording.at(row, 'leadKg') !== recording.at(row - 1, 'leadKg')) rows.push(row);
  return rows;
}
