import { taskWords, type FlownTask } from '../lesson/index.ts';
import { cssOf, stroke, xOf, type RowPen } from './run-sheet-ink.ts';

/** A task's bracket in a row, pixels, and how wide its words are. */
export interface Bracketed {
  readonly from: number;
  readonly to: number;
  readonly wide: number;
  /** A mark's word goes before a mere title where both want the same room. */
  readonly marked: boolean;
}

/** So much of a task's words stands over its own bracket, as a share of their width. */
const OVER_OWN = 0.35;

/**
 * Where the words of tasks begin, from left to right: at their bracket, or further left where they would be wider than it, and off
 * each other; null where there is no room.
 */
export function taskLefts(tasks: readonly Bracketed[], widthPx: number, gapPx: number): (number | null)[] {
  const placed = tasks.map<number | null>(() => null);
  for (const marked of [true, false])
    tasks.forEach((task, i) => {
      if (task.marked !== marked) return;
      const { from, to, wide } = task;
      const before = tasks.flatMap((one, j) => (j < i && placed[j] !== null ? [placed[j]! + one.wide + gapPx] : []));
      const after = tasks.flatMap((_, j) => (j > i && placed[j] !== null ? [placed[j]! - gapPx] : []));
      const [least, most] = [Math.max(0, ...before), Math.min(widthPx, ...after) - wide];
      const left = Math.min(Math.max(Math.min(from, to - wide), least), most);
      const over = Math.min(left + wide, to) - Math.max(left, from);
      if (left >= least && over >= Math.min(OVER_OWN * wide, (to - from) * 0.9)) placed[i] = left;
    });
  return placed;
}

/** What was flown, as brackets above the water, with words over the longest piece of each. */
export function drawTasks(pen: RowPen, tasks: readonly FlownTask[], row: number): void {
  const { c, tokens, sheet } = pen;
  const { unit, waterPx, headPx, headLines, textPx } = sheet;
  const y = headPx - 5 * unit;
  const hook = 5 * unit;
  const here: (Bracketed & { readonly lines: readonly string[] })[] = [];
  for (const task of tasks) {
    const [left, right] = [xOf(pen, task.fromS), xOf(pen, task.toS)];
    if (right <= 0.5 || left >= waterPx - 0.5) continue;
    const [from, to] = [Math.max(0, left + 1.5 * unit), Math.min(waterPx, right - 1.5 * unit)];
    const points = [from, y, to, y];
    if (left >= 0) points.unshift(from, y + hook);
    if (right <= waterPx) points.push(to, y + hook);
    stroke(c, tokens.ink, 2 * unit, points);
    if (mostIn(task, sheet) !== row) continue;
    const says = taskWords(task);
    const lines = headLines === 1 ? [says] : says.split(': ').reverse();
    const wide = Math.max(...lines.map((words) => c.measureText(words).width));
    const marked = task.word !== null;
    // What no mark looks at takes no room but its own.
    if (marked || wide <= to - from) here.push({ from, to, wide, marked, lines });
  }
  c.textAlign = 'left';
  c.textBaseline = 'alphabetic';
  c.fillStyle = cssOf(tokens.ink);
  for (const [i, left] of taskLefts(here, waterPx, 6 * unit).entries())
    if (left !== null)
      for (const [line, words] of here[i]!.lines.entries()) c.fillText(words, left, y - textPx * (0.3 + 1.1 * line));
}

/** The row in which most of a task stands: there it has its words. */
function mostIn({ fromS, toS }: FlownTask, { startS, rowS, rows }: RowPen['sheet']): number {
  let most = 0;
  let found = 0;
  for (let row = 0; row < rows; row++) {
    const begins = startS + row * rowS;
    const lasts = Math.min(toS, begins + rowS) - Math.max(fromS, begins);
    if (lasts > most) [most, found] = [lasts, row];
  }
  return found;
}
