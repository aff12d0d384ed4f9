import { HEAD_CLEAR_M } from '../diver/index.ts';
import type { Recording } from '../dive/index.ts';
import type { FlyStep, HoldGoal } from './lesson.ts';
import { brokenOf } from './keep.ts';
import { eventSpan } from './happening.ts';
import { metAfter, noneMet } from './meet.ts';
import { rowsOf } from './rows.ts';
import type { FlownPhase } from './run.ts';

export { ROWS_PER_S, rowsOf } from './rows.ts';

/** A hold whose depth is never reached is given up after this time, seconds. */
const HOLD_WITHIN_S = 60;
/** Sine of pitch above which a diver hangs upright enough for a clear head. Practice. */
const UPRIGHT_SIN = 0.7;

/** Row on which a hold's window opens. */
export function windowRow(goal: HoldGoal, reachedRow: number): number {
  return reachedRow + rowsOf(goal.settleS);
}

/** Row after the last of a hold's window. */
export function windowEndRow(goal: HoldGoal, reachedRow: number): number {
  return windowRow(goal, reachedRow) + rowsOf(goal.forS);
}

/** A phase that begins on a row. */
export function phaseFrom({ id, goal }: FlyStep, fromRow: number): FlownPhase {
  const each = goal.kind === 'meet' ? noneMet(goal) : [];
  return { id, fromRow, reachedRow: null, toRow: null, met: false, each, broken: [] };
}

/** A phase after one more row, and whether it ended on it. Row by row, in order. */
export function phaseAfter(
  step: FlyStep,
  before: FlownPhase,
  recording: Recording,
  row: number,
): { readonly phase: FlownPhase; readonly end: 'met' | 'late' | null } {
  const { phase, end } = goalAfter(step, before, recording, row);
  if (end === null) return { phase, end };
  const { fromRow } = phase;
  const eventRow = eventSpan({ events: step.events, fromRow }, recording)?.first ?? null;
  const broken = brokenOf(step.keep, recording, { fromRow, toRow: row, eventRow });
  return { phase: { ...phase, toRow: row, met: end === 'met', broken }, end };
}

function goalAfter(step: FlyStep, phase: FlownPhase, recording: Recording, row: number) {
  const { goal } = step;
  const ended = (met: boolean, late: boolean) => (met ? ('met' as const) : late ? ('late' as const) : null);
  const lateAfter = (seconds: number) => row - phase.fromRow >= rowsOf(seconds);
  if (goal.kind === 'float') {
    const reachedRow = floatsFree(recording, row) ? (phase.reachedRow ?? row) : null;
    const met = reachedRow !== null && row - reachedRow >= rowsOf(goal.forS);
    return { phase: { ...phase, reachedRow }, end: ended(met, reachedRow === null && lateAfter(goal.withinS)) };
  }
  if (goal.kind === 'meet') {
    // What is asked for is looked at once everything that goes wrong has gone wrong.
    const fromRow = eventSpan({ events: step.events, fromRow: phase.fromRow }, recording)?.last ?? phase.fromRow;
    const each = metAfter(goal, phase.each, recording, row, fromRow);
    const met = each.every(({ metRow }) => metRow !== null);
    return { phase: { ...phase, each, reachedRow: met ? row : null }, end: ended(met, lateAfter(goal.withinS)) };
  }
  const [depthM, withinS] = goal.kind === 'travel' ? [goal.toM, goal.withinS] : [goal.atM, HOLD_WITHIN_S];
  const there = Math.abs(recording.at(row, 'depthM') - depthM) <= goal.bandM;
  const reachedRow = phase.reachedRow ?? (there ? row : null);
  const met = reachedRow !== null && (goal.kind === 'travel' || row >= windowEndRow(goal, reachedRow));
  return { phase: { ...phase, reachedRow }, end: ended(met, reachedRow === null && lateAfter(withinS)) };
}

/** Upright, head clear, and not held up by fins. */
function floatsFree(recording: Recording, row: number): boolean {
  if (recording.at(row, 'depthM') >= HEAD_CLEAR_M || recording.at(row, 'pitchSin') < UPRIGHT_SIN) return false;
  return row === 0 || recording.at(row, 'finsUpNs') - recording.at(row - 1, 'finsUpNs') <= 0;
}
