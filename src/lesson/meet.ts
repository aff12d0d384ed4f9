import type { Recording } from '../dive/index.ts';
import type { MeetGoal } from './condition.ts';
import { isIn } from './quantity.ts';
import { rowsOf } from './rows.ts';
import type { Met } from './run.ts';

/** No condition of a goal is met yet. */
export function noneMet(goal: MeetGoal): readonly Met[] {
  return goal.each.map(() => ({ sinceRow: null, metRow: null }));
}

/** How far conditions are met after one more row. @param fromRow where the step, or what went wrong in it, began */
export function metAfter(
  goal: MeetGoal,
  before: readonly Met[],
  recording: Recording,
  row: number,
  fromRow: number,
): readonly Met[] {
  if (row < fromRow) return before;
  let open = true;
  return goal.each.map((condition, i) => {
    const met = before[i] ?? { sinceRow: null, metRow: null };
    // In a given order a condition is looked at from the row after the one before it was met.
    const looked = open && met.metRow === null;
    if (goal.order === 'given') open &&= met.metRow !== null;
    if (!looked) return met;
    if (!isIn(recording, condition, row, fromRow)) return { sinceRow: null, metRow: null };
    const sinceRow = met.sinceRow ?? row;
    const done = condition.do === 'reach' || row - sinceRow >= rowsOf(condition.forS);
    return { sinceRow, metRow: done ? row : null };
  });
}
