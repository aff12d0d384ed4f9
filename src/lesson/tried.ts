import accepted from './acceptance.json';
import habits from './habits-table.json';
import type { Demanded } from './acceptance.ts';
import type { HabitRates } from './habits-table.ts';

/** How marks and detectors were tried on simulated divers: the tables as they were printed. */
export const TRIED = {
  date: accepted.date,
  cells: accepted.cells as readonly { readonly cell: string; readonly seeds: number }[],
  demands: accepted.demands as readonly Demanded[],
  habits: habits.rows as unknown as readonly HabitRates[],
} as const;
