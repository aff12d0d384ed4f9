import accepted from './acceptance.json';
import habits from './habits-table.json';
import type { Demanded } from './acceptance.ts';
import type { HabitRates } from './habits-table.ts';

/** What was flown, and what came of the demands on it. */
export interface TriedMarks {
  readonly cells: readonly { readonly cell: string; readonly seeds: number }[];
  readonly demands: readonly Demanded[];
}

/** How marks and detectors were tried on simulated divers: the tables as they were printed. */
export const TRIED = {
  date: accepted.date,
  cells: accepted.cells as TriedMarks['cells'],
  demands: accepted.demands as unknown as TriedMarks['demands'],
  /** The same in kits that were flown once, when nothing was changed any more. */
  unseen: accepted.unseen as unknown as TriedMarks,
  habits: habits.rows as unknown as readonly HabitRates[],
} as const;
