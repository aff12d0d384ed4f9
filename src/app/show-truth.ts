import type { Recording } from '../dive/index.ts';
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
  readonly tookS: number;
  /** Seconds of the run kept as the first. */
  readonly firstS: number | null;
  /** The run came to the depth that was to end it. */
  readonly arrived: boolean;
}

/** The outcome of a run, as an option's id. */
export function truthOfRun(truth: Truth, over: RunOver): string {
  if (truth === 'way') return wayOf(over);
  if (truth === 'beside-first') {
    if (!over.arrived) return 'never';
    return compared(over.tookS, over.firstS ?? over.tookS, ['sooner', 'same', 'later']);
  }
  const last = over.recording.rows - 1;
  const speed = Math.abs(meanSpeedMps(over.recording, last));
  if (speed < STILL_MPS) return 'stops';
  return compared(speed, Math.abs(meanSpeedMps(over.recording, over.askedRow)), ['slower', 'steady', 'faster']);
}

/** Mean vertical speed over the last breath before a row, m/s, down positive. */
export function meanSpeedMps(recording: Recording, row: number): number {
  const from = Math.max(0, row - BREATH_ROWS);
  if (from === row) return 0;
  return ((recording.at(row, 'depthM') - recording.at(from, 'depthM')) / (row - from)) * 10;
}

function wayOf({ recording, askedRow, neutralAtM }: RunOver): string {
  const came = recording.at(recording.rows - 1, 'depthM');
  const moved = came - recording.at(askedRow, 'depthM');
  if (neutralAtM !== null && Math.abs(came - neutralAtM) < SAME_M) return 'back';
  return Math.abs(moved) < SAME_M ? 'stays' : moved < 0 ? 'up' : 'down';
}

function compared(value: number, beside: number, words: readonly [less: string, same: string, more: string]): string {
  const share = value / beside - 1;
  return Math.abs(share) <= SAME_SHARE ? words[1] : share < 0 ? words[0] : words[2];
}
