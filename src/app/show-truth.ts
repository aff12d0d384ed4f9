import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import type { Truth } from './demonstration.ts';

/** Closer than this counts as the same place, metres, or the same, as a share. Practice. */
const SAME_M = 0.2;
const SAME_SHARE = 0.05;
/** A breath: speeds are means over so many rows of a tenth of a second. */
const BREATH_ROWS = 40;
/** Below this nobody is moving, m/s. */
const STILL_MPS = 0.01;

/** What is known of a run once it is over. */
export interface RunOver {
  readonly recording: Recording;
  /** Row at which the question stood. */
  readonly askedRow: number;
  /** Depth at which the diver would have been neutral, where there is one. */
  readonly neutralAtM: number | null;
  /** How long the first diver took to the depth that ended the run, and the second; null for who never came there. */
  readonly firstS: number | null;
  readonly secondS: number | null;
}

/** The outcome of a run, as an option's id. */
export function truthOfRun(truth: Truth, over: RunOver): string {
  if (truth === 'way') {
    const { recording, askedRow, neutralAtM } = over;
    return wayOf(recording.at(askedRow, 'depthM'), recording.at(recording.rows - 1, 'depthM'), neutralAtM);
  }
  if (truth === 'beside-first') {
    if (over.secondS === null) return 'never';
    return over.firstS === null ? 'sooner' : compared(over.secondS, over.firstS, ['sooner', 'same', 'later']);
  }
  const last = over.recording.rows - 1;
  const speed = Math.abs(meanSpeedMps(over.recording, last));
  if (speed < STILL_MPS) return 'stops';
  return speedChange(speed, Math.abs(meanSpeedMps(over.recording, over.askedRow)));
}

/** What a speed became beside what it was, by the option's id. */
export function speedChange(speed: number, before: number): string {
  return compared(speed, before, ['slower', 'steady', 'faster']);
}

/** Seconds from a row on until a recording first passes a depth, between rows by the straight line; null where it never does. */
export function secondsTo(recording: Recording, fromRow: number, depthM: number): number | null {
  const off = (row: number) => recording.at(row, 'depthM') - depthM;
  for (let row = fromRow; row + 1 < recording.rows; row++) {
    const [here, next] = [off(row), off(row + 1)];
    if (here * next <= 0)
      return ((row - fromRow + (here === next ? 0 : here / (here - next))) * TICKS_PER_ROW) / TICKS_PER_S;
  }
  return null;
}

/** Mean vertical speed over the last breath before a row, m/s, down positive. */
export function meanSpeedMps(recording: Recording, row: number): number {
  const from = Math.max(0, row - BREATH_ROWS);
  if (from === row) return 0;
  return ((recording.at(row, 'depthM') - recording.at(from, 'depthM')) / (row - from)) * 10;
}

/** Which way a diver went who was asked about at one depth and came to another, by the option's id. */
export function wayOf(fromM: number, cameM: number, neutralAtM: number | null): string {
  const movedM = cameM - fromM;
  if (neutralAtM !== null && Math.abs(cameM - neutralAtM) < SAME_M) return 'back';
  return Math.abs(movedM) < SAME_M ? 'stays' : movedM < 0 ? 'up' : 'down';
}

function compared(value: number, beside: number, words: readonly [less: string, same: string, more: string]): string {
  const share = value / beside - 1;
  return Math.abs(share) <= SAME_SHARE ? words[1] : share < 0 ? words[0] : words[2];
}
