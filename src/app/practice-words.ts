import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import type { Readings } from '../panels/index.ts';

/** So far from where he is now a diver may have been to have stayed, metres, and so long makes it a hover, seconds. */
const STAYED_M = 0.5;
const HOVER_S = 20;
/** Said anew so often: a title that changes each second is not read. */
const SAID_EVERY_S = 5;
/** A row is a tenth of a second; nobody is told of longer than five minutes. */
const ROWS_PER_S = TICKS_PER_S / TICKS_PER_ROW;
const MOST_ROWS = 300 * ROWS_PER_S;

/**
 * What free practice asks for, and how far that is. Afloat the first question stands until he is under.
 * @param tick the moment's
 */
export function practiceWords(place: Readings['place'], recording: Recording, tick: number): string {
  if (place === 'afloat') return 'Let gas out and breathe out. What happens?';
  if (place !== 'under') return `You lie ${place}: let gas in, in short presses.`;
  const row = Math.floor((tick - recording.startTick) / TICKS_PER_ROW);
  const stayedS = stayedRows(recording, Math.min(row, recording.rows - 1)) / ROWS_PER_S;
  return stayedS < HOVER_S
    ? 'Be neutral: stay, with nothing pressed.'
    : `You hover: ${Math.floor(stayedS / SAID_EVERY_S) * SAID_EVERY_S} s within half a metre. Left alone, for how long?`;
}

/** Rows up to one on which the depth was as it is then, or nearly. */
function stayedRows(recording: Recording, row: number): number {
  if (row < 0) return 0;
  const depthM = recording.at(row, 'depthM');
  let first = row;
  while (first > 0 && row - first < MOST_ROWS && Math.abs(recording.at(first - 1, 'depthM') - depthM) <= STAYED_M)
    first--;
  return row - first;
}
