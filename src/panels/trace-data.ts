import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import type { Units } from './settings.ts';
import type { TraceId, TraceKind } from './trace-kinds.ts';
import type { TraceBand, TraceLimits, Traced } from './trace-view.ts';

/** What accompanies the traces, in shown units: the band's edges, the limits as downward speeds, the force of each moment, a second diver. */
export const BESIDE = [
  'bandTop',
  'bandBottom',
  'upLimit',
  'downLimit',
  'momentForce',
  'tooFast',
  'secondDepth',
  'secondSpeed',
] as const;
export type Beside = (typeof BESIDE)[number];

/**
 * A recording in shown units, read where it lies: of the rows of a dive nothing is kept but the extremes of each trace. It follows
 * a dive row by row, and begins anew where another dive, other units or another plan is to be shown.
 */
export class TraceData {
  readonly #least = new Map<TraceId, number>();
  readonly #most = new Map<TraceId, number>();
  #readers = new Map<TraceId | Beside, (row: number) => number | null>();
  #recording: Recording | null = null;
  #second: Recording | null = null;
  #secondRows = 0;
  #rows = 0;
  #epoch = 0;
  #asked = '';

  get rows(): number {
    return this.#rows;
  }

  /** Rows that a second diver has beside the first one's; 0 where there is none. */
  get secondRows(): number {
    return this.#secondRows;
  }

  /** Another number for each time it began anew: what was made of its rows before is void. */
  get epoch(): number {
    return this.#epoch;
  }

  /** A value of a row; null where there is nothing to draw. */
  at(name: TraceId | Beside, row: number): number | null {
    return this.#readers.get(name)?.(row) ?? null;
  }

  /** A value that every row has. @throws {RangeError} where it has none */
  valueOf(id: TraceId, row: number): number {
    const value = this.at(id, row);
    if (value === null) throw new RangeError(`TraceData.valueOf: no ${id} in row ${row} of ${this.rows}`);
    return value;
  }

  /** What is in force now; 0 where nothing is. */
  last(name: Beside): number {
    return this.rows > 0 ? (this.at(name, this.rows - 1) ?? 0) : 0;
  }

  /** Seconds of a row since the start of the dive; 0 where there is none. */
  secondsAt(row: number): number {
    return this.#recording ? secondsOf(this.#recording, row) : 0;
  }

  /** Least and greatest value since the start; 0 and 0 where there is none. */
  extremes(id: TraceId): readonly [number, number] {
    return [this.#least.get(id) ?? 0, this.#most.get(id) ?? 0];
  }

  /** The row nearest to a moment; −1 where there is none. */
  rowAt(s: number): number {
    if (this.rows === 0) return -1;
    const row = Math.round(((s - this.secondsAt(0)) * TICKS_PER_S) / TICKS_PER_ROW);
    return Math.min(Math.max(row, 0), this.rows - 1);
  }

  /** Takes the rows that are new. @returns whether anything changed */
  follow({ recording, kinds, bands, limits, second = null }: Traced, units: Units): boolean {
    const asked = JSON.stringify([units, bands, limits, kinds.map(({ id }) => id)]);
    const others = recording !== this.#recording || second !== this.#second;
    if (others || asked !== this.#asked || recording.rows < this.rows) {
      this.#begin(recording, second, readersOf({ recording, kinds, bands, limits, second }, units));
      this.#asked = asked;
    }
    const before = this.rows;
    this.#rows = recording.rows;
    for (const { id } of kinds) for (let row = before; row < this.rows; row++) this.#stretch(id, this.valueOf(id, row));
    if (second) this.#followSecond(second);
    return this.rows !== before;
  }

  #begin(
    recording: Recording,
    second: Recording | null,
    readers: Map<TraceId | Beside, (row: number) => number | null>,
  ) {
    this.#epoch++;
    this.#recording = recording;
    this.#second = second;
    this.#readers = readers;
    this.#rows = this.#secondRows = 0;
    this.#least.clear();
    this.#most.clear();
  }

  /** The second diver's rows as far as both have them; scales hold him too. */
  #followSecond(second: Recording): void {
    const rows = Math.min(this.rows, second.rows);
    for (let row = this.#secondRows; row < rows; row++) {
      this.#stretch('depth', this.at('secondDepth', row)!);
      this.#stretch('speed', this.at('secondSpeed', row)!);
    }
    this.#secondRows = rows;
  }

  #stretch(id: TraceId, shown: number): void {
    this.#least.set(id, Math.min(this.#least.get(id) ?? shown, shown));
    this.#most.set(id, Math.max(this.#most.get(id) ?? shown, shown));
  }
}

/** How each value of a row is read, in shown units. */
function readersOf({ recording, kinds, bands, limits, second = null }: Omit<Traced, 'events'>, units: Units) {
  const readers = new Map<TraceId | Beside, (row: number) => number | null>();
  for (const { id, column, shown } of kinds) readers.set(id, (row) => shown[units].of(recording.at(row, column)));
  const [depth, speed, force] = (['depth', 'speed', 'force'] as const).map((id) => measureOf(kinds, id, units));
  const whole = (si: number | null | undefined, of: (si: number) => number) =>
    si === null || si === undefined ? null : of(si);
  const negative = (mps: number | null) => (mps === null ? null : -mps);
  const bandOf = (row: number) => bandAt(bands, secondsOf(recording, row));
  const limitsOf = (row: number) => limitsAt(limits, secondsOf(recording, row));
  readers.set('bandTop', (row) => whole(bandOf(row)?.topM, depth!));
  readers.set('bandBottom', (row) => whole(bandOf(row)?.bottomM, depth!));
  readers.set('upLimit', (row) => whole(negative(limitsOf(row).upMps), speed!));
  readers.set('downLimit', (row) => whole(limitsOf(row).downMps, speed!));
  readers.set('momentForce', (row) => force!(recording.at(row, 'netN')));
  readers.set('tooFast', (row) => {
    const { upMps, downMps } = limitsOf(row);
    const mps = recording.at(row, 'speedMps');
    const steep = (downMps !== null && mps > downMps + 1e-9) || (upMps !== null && -mps > upMps + 1e-9);
    return steep ? depth!(recording.at(row, 'depthM')) : null;
  });
  if (!second) return readers;
  const ofSecond = (name: 'depthM' | 'speedMps', of: (si: number) => number) => (row: number) =>
    row < second.rows ? of(second.at(row, name)) : null;
  readers.set('secondDepth', ofSecond('depthM', depth!));
  readers.set('secondSpeed', ofSecond('speedMps', speed!));
  return readers;
}

/** Seconds since the start of the dive at which a row was written. */
export function secondsOf(recording: Recording, row: number): number {
  return (recording.startTick + row * TICKS_PER_ROW) / TICKS_PER_S;
}

/** The place to be at a moment: of several the one that began last. */
export function bandAt(bands: readonly TraceBand[], s: number): TraceBand | null {
  for (let i = bands.length - 1; i >= 0; i--) {
    const { fromS, toS } = bands[i]!;
    if (fromS <= s && (toS === null || s <= toS)) return bands[i]!;
  }
  return null;
}

const NO_LIMITS: TraceLimits['limits'] = { upMps: null, downMps: null };

/** The limits under which the dive stood at a moment; before the first that came into force there were none. */
export function limitsAt(limits: readonly TraceLimits[], s: number): TraceLimits['limits'] {
  for (let i = limits.length - 1; i >= 0; i--) if (limits[i]!.fromS <= s) return limits[i]!.limits;
  return NO_LIMITS;
}

function measureOf(kinds: readonly TraceKind[], id: TraceId, units: Units): (si: number) => number {
  return kinds.find((kind) => kind.id === id)!.shown[units].of;
}
