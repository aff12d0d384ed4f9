import type { Rig } from '../diver/index.ts';
import { TICKS_PER_ROW, type ControlChange, type Recording } from '../dive/index.ts';
import { rowsOf } from './goal.ts';
import { stillRows } from './still-breath.ts';

/** What a mark may look at: a dive, or a replay of one. */
export interface Flown {
  readonly rig: Rig;
  readonly recording: Recording;
  readonly changes: readonly ControlChange[];
}

/** The columns of a recording that marks are made of, one number a row. */
export interface Trace {
  readonly rows: number;
  readonly depthM: Float64Array;
  /** Depth change over the last 3 s, or over the rows so far at the start, m/s, positive down. */
  readonly slowMps: Float64Array;
  /** At the moment, m/s, positive down. */
  readonly speedMps: Float64Array;
  readonly jacketM3: Float64Array;
  readonly lungM3: Float64Array;
  readonly lungMol: Float64Array;
  readonly midNetN: Float64Array;
  readonly finsUpNs: Float64Array;
  readonly finsDownNs: Float64Array;
  readonly letInM3: Float64Array;
  readonly letOutM3: Float64Array;
  /** 1 where bottom, ledge or line carries the diver. */
  readonly contact: Uint8Array;
  /** 1 where bottom or ledge is touched. */
  readonly touched: Uint8Array;
  /** 1 where the lungs stand still under water for five seconds and more, and the breath is not the automatic one. */
  readonly still: Uint8Array;
  /** Row on which a hand first let lead go; null when none did. */
  readonly leadRow: number | null;
}

/** Length over which a speed is judged, seconds: shorter, a breath counts; longer, a dash goes unseen. Practice. */
const SLOW_S = 3;

/** The trace of a dive. */
export function traceOf({ rig, recording, changes }: Flown): Trace {
  const depthM = recording.column('depthM');
  const resting = recording.column('resting');
  const back = rowsOf(SLOW_S);
  const slowMps = depthM.map((depth, row) => {
    const from = Math.max(0, row - back);
    return row === 0 ? 0 : ((depth - depthM[from]!) * rowsOf(1)) / (row - from);
  });
  const held = rig.line ? controlRows(recording, changes, ({ holdLine }) => holdLine) : new Uint8Array(recording.rows);
  const own = controlRows(recording, changes, ({ breath }) => (breath === 0 ? 0 : 1));
  const [lungM3, lungMol] = [recording.column('lungM3'), recording.column('lungMol')];
  return {
    rows: recording.rows,
    depthM,
    slowMps,
    speedMps: recording.column('speedMps'),
    jacketM3: recording.column('jacketM3'),
    lungM3,
    lungMol,
    midNetN: recording.column('midNetN'),
    finsUpNs: recording.column('finsUpNs'),
    finsDownNs: recording.column('finsDownNs'),
    letInM3: recording.column('letInM3'),
    letOutM3: recording.column('letOutM3'),
    contact: Uint8Array.from(resting, (value, row) => (value !== 0 || held[row] === 1 ? 1 : 0)),
    touched: Uint8Array.from(resting, (value) => (value !== 0 ? 1 : 0)),
    still: rig.lungs.open ? stillRows({ depthM, lungM3, lungMol, own }) : new Uint8Array(recording.rows),
    leadRow: leadRow(recording, changes),
  };
}

function leadRow({ startTick }: Recording, changes: readonly ControlChange[]): number | null {
  const release = changes.find(({ controls }) => controls.releaseMask > 0);
  return release ? Math.max(0, Math.floor((release.tick - startTick) / TICKS_PER_ROW)) : null;
}

/** What a control was on each row, before the first change 0. */
function controlRows(
  recording: Recording,
  changes: readonly ControlChange[],
  of: (controls: ControlChange['controls']) => number,
): Uint8Array {
  const rows = new Uint8Array(recording.rows);
  let at = 0;
  for (let row = 0; row < recording.rows; row++) {
    const tick = recording.startTick + row * TICKS_PER_ROW;
    while (at + 1 < changes.length && changes[at + 1]!.tick <= tick) at++;
    const change = changes[at];
    rows[row] = change ? of(change.controls) : 0;
  }
  return rows;
}
