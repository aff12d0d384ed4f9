import type { Beside, TraceData } from './trace-data.ts';
import type { TraceId } from './trace-kinds.ts';

/** Values by point; null where there is nothing to draw. */
export type Column = readonly (number | null)[];

/** So many parts at most lie between the edges of a window: with two points each, about as many as a paper has pixels. */
const MOST_PARTS = 512;
/** Parts behind the window that are kept before they are let go. */
const SPARE_PARTS = 4 * MOST_PARTS;

/**
 * The points that a window draws of a dive, however long it is. A short window has every row. In a longer one rows are put together by
 * twos, fours, eights …, and of each part stands the least and the greatest value, the earlier one first: no peak is lost.
 */
export class TraceThinned {
  readonly #kept = new Map<TraceId | Beside, (number | null)[]>();
  #fromPart = 0;
  #rowsInPart = 1;
  #epoch = -1;

  /** Points of a window: their moments, and how the values of a line at these are had. */
  of(
    data: TraceData,
    edges: readonly [number, number],
  ): { timeS: readonly number[]; column: (name: TraceId | Beside) => Column } {
    if (data.rows === 0) return { timeS: [], column: () => [] };
    const first = Math.max(0, data.rowAt(edges[0]) - 1);
    const last = Math.min(data.rows - 1, data.rowAt(edges[1]) + 1);
    const rowsInPart = 2 ** Math.max(0, Math.ceil(Math.log2((last - first + 1) / MOST_PARTS)));
    if (rowsInPart === 1) {
      const rows = Array.from({ length: last - first + 1 }, (_, i) => first + i);
      return { timeS: rows.map((row) => data.secondsAt(row)), column: (name) => rows.map((row) => data.at(name, row)) };
    }
    const [from, to] = [Math.floor(first / rowsInPart), Math.floor(last / rowsInPart)];
    this.#keepFrom(data.epoch, rowsInPart, from);
    const timeS: number[] = [];
    for (let part = from; part <= to; part++)
      for (const row of [part * rowsInPart, part * rowsInPart + rowsInPart / 2]) timeS.push(data.secondsAt(row));
    // The last point stands where the dive does.
    timeS[timeS.length - 1] = Math.min(timeS.at(-1)!, data.secondsAt(last));
    return { timeS, column: (name) => this.#column(data, name, from, to) };
  }

  #keepFrom(epoch: number, rowsInPart: number, from: number): void {
    const same = epoch === this.#epoch && rowsInPart === this.#rowsInPart;
    if (same && from >= this.#fromPart && from - this.#fromPart <= SPARE_PARTS) return;
    this.#kept.clear();
    this.#epoch = epoch;
    this.#rowsInPart = rowsInPart;
    this.#fromPart = from;
  }

  #column(data: TraceData, name: TraceId | Beside, from: number, to: number): Column {
    let kept = this.#kept.get(name);
    if (!kept) this.#kept.set(name, (kept = []));
    const whole = Math.floor(data.rows / this.#rowsInPart);
    for (let part = this.#fromPart + kept.length / 2; part <= Math.min(to, whole - 1); part++)
      kept.push(...this.#pairOf(data, name, part));
    const at = (part: number) => 2 * (part - this.#fromPart);
    const points = kept.slice(at(from), at(to + 1));
    // A part that still grows is not kept.
    if (points.length < 2 * (to - from + 1)) points.push(...this.#pairOf(data, name, to));
    return points;
  }

  #pairOf(data: TraceData, name: TraceId | Beside, part: number): readonly [number | null, number | null] {
    let least: number | null = null;
    let most: number | null = null;
    let rising = true;
    const end = Math.min((part + 1) * this.#rowsInPart, data.rows);
    for (let row = part * this.#rowsInPart; row < end; row++) {
      const value = data.at(name, row);
      if (value === null) continue;
      if (most === null || value > most) [most, rising] = [value, true];
      if (least === null || value < least) [least, rising] = [value, false];
    }
    return rising ? [least, most] : [most, least];
  }
}
