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

interface Named extends Bracketed {
  readonly lines: readonly string[];
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

/** Where names begin that stand a line above, on a stem from the middle of their bracket: off each other, null where there is no room. */
export function raisedLefts(
  tasks: readonly Pick<Bracketed, 'from' | 'to' | 'wide'>[],
  widthPx: number,
  gapPx: number,
): (number | null)[] {
  let free = 0;
  return tasks.map(({ from, to, wide }) => {
    const stem = (from + to) / 2;
    const left = Math.max(free, Math.min(stem, widthPx - wide));
    // The stem must end under its own name.
    if (left > stem || left + wide > widthPx) return null;
    free = left + wide + gapPx;
    return left;
  });
}

/** What was flown, as brackets above the water, with words over the longest piece of each. */
export function drawTasks(pen: RowPen, tasks: readonly FlownTask[], row: number): void {
  const { c, tokens, sheet } = pen;
  const { unit, waterPx, headPx, headLines, hasRaised, textPx } = sheet;
  const y = headPx - 5 * unit;
  const hook = 5 * unit;
  const here: Named[] = [];
  const raised: Named[] = [];
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
    // What no mark looks at takes no room but its own, and the line above.
    if (marked || wide <= to - from) here.push({ from, to, wide, marked, lines });
    else if (hasRaised) raised.push({ from, to, wide, marked, lines });
  }
  c.textAlign = 'left';
  c.textBaseline = 'alphabetic';
  c.fillStyle = cssOf(tokens.ink);
  for (const [i, left] of taskLefts(here, waterPx, 6 * unit).entries())
    if (left !== null)
      for (const [line, words] of here[i]!.lines.entries()) c.fillText(words, left, y - textPx * (0.3 + 1.1 * line));
  const above = y - textPx * (0.3 + 1.1 * headLines);
  for (const [i, left] of raisedLefts(raised, waterPx, 6 * unit).entries()) {
    if (left === null) continue;
    const { from, to, lines } = raised[i]!;
    stroke(c, tokens.ink, unit, [(from + to) / 2, y, (from + to) / 2, above + textPx * 0.2]);
    c.fillText(lines.join(' '), left, above);
  }
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
