import { CONTROL_NAMES, CONTROL_RANGES, type Controls } from './controls.ts';
import type { ControlChange, Run } from './run.ts';

/**
 * Changes of controls in columns, one entry a changed control, in order: how many ticks after the entry before it (0: on the same
 * tick), which control by its place in CONTROL_NAMES, and by how much its value changed.
 */
export interface ChangeColumns {
  readonly ticks: readonly number[];
  readonly control: readonly number[];
  readonly by: readonly number[];
}

/** What is wrong in columns: in which of them, at which entry, and in words. */
export interface ColumnFault {
  readonly column: keyof ChangeColumns;
  readonly entry: number;
  readonly found: string;
  readonly allowed: string;
}

/** The changes of a run, or of a stretch of one, after its first controls, in columns. */
export function columnsOf(run: Pick<Run, 'changes'> & { readonly start: { readonly tick: number } }): ChangeColumns {
  const ticks: number[] = [];
  const control: number[] = [];
  const by: number[] = [];
  let tick = run.start.tick;
  run.changes.forEach((change, i) => {
    const before = run.changes[i - 1];
    if (!before) return;
    CONTROL_NAMES.forEach((name, place) => {
      const difference = change.controls[name] - before.controls[name];
      if (difference === 0) return;
      ticks.push(change.tick - tick);
      control.push(place);
      by.push(difference);
      tick = change.tick;
    });
  });
  return { ticks, control, by };
}

/**
 * The changes that columns stand for, or the first thing that is wrong in them: lengths that differ, ticks on which controls
 * cannot change, controls twice on a tick or out of order, values out of range, entries that change nothing.
 * @param first controls at the start, in range
 * @param known how many controls the columns may name: fewer in runs of older versions
 * @param every on which ticks controls change, from the start: in runs of older versions on some only
 */
export function changesOf(
  columns: ChangeColumns,
  first: Controls,
  startTick: number,
  runTicks: number,
  known: number = CONTROL_NAMES.length,
  every = 1,
): { readonly changes: ControlChange[] } | { readonly fault: ColumnFault } {
  const count = columns.ticks.length;
  for (const column of ['control', 'by'] as const)
    if (columns[column].length !== count)
      return fault(column, Math.min(count, columns[column].length), `${columns[column].length} entries`, `${count}`);
  const changes: ControlChange[] = [{ tick: startTick, controls: first }];
  let now: Record<keyof Controls, number> = { ...first };
  let tick = 0;
  let place = -1;
  for (let i = 0; i < count; i++) {
    const [later, next, by] = [columns.ticks[i], columns.control[i], columns.by[i]];
    if (!isWhole(later, 0, runTicks) || later % every !== 0 || tick + later > runTicks)
      return fault('ticks', i, String(later), `multiples of ${every} that add up to ${runTicks} at most`);
    if (i === 0 && later === 0)
      return fault('ticks', i, '0', `${every} or more before the first change: the start has its own controls`);
    if (!isWhole(next, 0, known - 1) || (later === 0 && next <= place))
      return fault('control', i, String(next), `0 to ${known - 1}, rising within one tick`);
    const name = CONTROL_NAMES[next];
    const [least, most] = CONTROL_RANGES[name];
    if (!isWhole(by, least - most, most - least) || by === 0 || !isWhole(now[name] + by, least, most))
      return fault('by', i, String(by), `a whole number, not 0, that leaves ${name} within ${least} to ${most}`);
    if (later > 0) {
      if (i > 0) changes.push({ tick: startTick + tick, controls: now });
      now = { ...now };
    }
    tick += later;
    place = next;
    now[name] += by;
  }
  if (count > 0) changes.push({ tick: startTick + tick, controls: now });
  return { changes };
}

/** Whether a value is a whole number within bounds; anything may be asked about. */
export function isWhole(value: unknown, least: number, most: number): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most;
}

function fault(column: keyof ChangeColumns, entry: number, found: string, allowed: string) {
  return { fault: { column, entry, found, allowed } };
}
