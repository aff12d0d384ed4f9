import { HEAD_CLEAR_M } from '../diver/index.ts';
import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import type { FlyStep, HoldGoal } from './lesson.ts';
import type { FlownPhase } from './run.ts';

/** Rows of a recording in a second. */
export const ROWS_PER_S = TICKS_PER_S / TICKS_PER_ROW;
/** A hold whose depth is never reached is given up after this time, seconds. */
const HOLD_WITHIN_S = 60;
/** Sine of pitch above which a diver hangs upright enough for a clear head. Practice. */
const UPRIGHT_SIN = 0.7;

/** Whole rows of a time. */
export function rowsOf(seconds: number): number {
  return Math.round(seconds * ROWS_PER_S);
}

/** Row on which a hold's window opens. */
export function windowRow(goal: HoldGoal, reachedRow: number): number {
  return reachedRow + rowsOf(goal.settleS);
}

/** Row after the last of a hold's window. */
export function windowEndRow(goal: HoldGoal, reachedRow: number): number {
  return windowRow(goal, reachedRow) + rowsOf(goal.forS);
}

/** A phase after one more row, and whether it ended on it. Row by row, in order. */
export function phaseAfter(
  step: FlyStep,
  phase: FlownPhase,
  recording: Recording,
  row: number,
): { readonly phase: FlownPhase; readonly end: 'met' | 'late' | null } {
  const { goal } = step;
  if (goal.kind === 'float') {
    const reachedRow = floatsFree(recording, row) ? (phase.reachedRow ?? row) : null;
    const met = reachedRow !== null && row - reachedRow >= rowsOf(goal.forS);
    const late = reachedRow === null && row - phase.fromRow >= rowsOf(goal.withinS);
    return ended({ ...phase, reachedRow }, row, met, late);
  }
  const [depthM, withinS] = goal.kind === 'travel' ? [goal.toM, goal.withinS] : [goal.atM, HOLD_WITHIN_S];
  const there = Math.abs(recording.at(row, 'depthM') - depthM) <= goal.bandM;
  const reachedRow = phase.reachedRow ?? (there ? row : null);
  const late = reachedRow === null && row - phase.fromRow >= rowsOf(withinS);
  const met = reachedRow !== null && (goal.kind === 'travel' || row >= windowEndRow(goal, reachedRow));
  return ended({ ...phase, reachedRow }, row, met, late);
}

function ended(phase: FlownPhase, row: number, met: boolean, late: boolean) {
  if (!met && !late) return { phase, end: null };
  return { phase: { ...phase, toRow: row, met }, end: met ? ('met' as const) : ('late' as const) };
}

/** Upright, head clear, and not held up by fins. */
function floatsFree(recording: Recording, row: number): boolean {
  if (recording.at(row, 'depthM') >= HEAD_CLEAR_M || recording.at(row, 'pitchSin') < UPRIGHT_SIN) return false;
  return row === 0 || recording.at(row, 'finsUpNs') - recording.at(row - 1, 'finsUpNs') <= 0;
}
