import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import type { Units } from './settings.ts';
import type { TraceId, TraceKind } from './trace-kinds.ts';
import type { TraceBand, TraceLimits, Traced } from './trace-view.ts';

/** Values by row; null where there is nothing to draw. */
export type Column = (number | null)[];

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
 * The columns of a recording in shown units. It follows a dive row by row, and begins anew where another dive, other units or
 * another plan is to be shown.
 */
export class TraceData {
  readonly timeS: number[] = [];
  readonly #values = new Map<TraceId | Beside, Column>();
  readonly #least = new Map<TraceId, number>();
  readonly #most = new Map<TraceId, number>();
  #recording: Recording | null = null;
  #second: Recording | null = null;
  #asked = '';

  get rows(): number {
    return this.timeS.length;
  }

  /** A column of all rows; the same array for as long as the dive goes on. */
  column(name: TraceId | Beside): Column {
    let found = this.#values.get(name);
    if (!found) this.#values.set(name, (found = []));
    return found;
  }

  /** Least and greatest value since the start; 0 and 0 where there is none. */
  extremes(id: TraceId): readonly [number, number] {
    return [this.#least.get(id) ?? 0, this.#most.get(id) ?? 0];
  }

  /** The row nearest to a moment; −1 where there is none. */
  rowAt(s: number): number {
    if (this.rows === 0) return -1;
    const row = Math.round(((s - this.timeS[0]!) * TICKS_PER_S) / TICKS_PER_ROW);
    return Math.min(Math.max(row, 0), this.rows - 1);
  }

  /** Takes the rows that are new. @returns whether anything changed */
  follow({ recording, kinds, bands, limits, second = null }: Traced, units: Units): boolean {
    const asked = JSON.stringify([units, bands, limits, kinds.map(({ id }) => id)]);
    const others = recording !== this.#recording || second !== this.#second;
    if (others || asked !== this.#asked || recording.rows < this.rows) this.#clear();
    this.#recording = recording;
    this.#second = second;
    this.#asked = asked;
    const before = this.rows;
    for (let row = before; row < recording.rows; row++) this.#take(recording, row, { kinds, bands, limits }, units);
    if (second) this.#takeSecond(second, kinds, units);
    return this.rows !== before;
  }

  /** The second diver's rows as far as both have them; scales hold him too. */
  #takeSecond(second: Recording, kinds: readonly TraceKind[], units: Units): void {
    for (const [id, name] of [
      ['depth', 'secondDepth'],
      ['speed', 'secondSpeed'],
    ] as const) {
      const kind = kinds.find((one) => one.id === id)!;
      const column = this.column(name);
      for (let row = column.length; row < Math.min(this.rows, second.rows); row++) {
        column.push(kind.shown[units].of(second.at(row, kind.column)));
        this.#stretch(id, column[row]!);
      }
    }
  }

  #stretch(id: TraceId, shown: number): void {
    this.#least.set(id, Math.min(this.#least.get(id) ?? shown, shown));
    this.#most.set(id, Math.max(this.#most.get(id) ?? shown, shown));
  }

  #clear(): void {
    this.timeS.length = 0;
    for (const column of this.#values.values()) column.length = 0;
    this.#least.clear();
    this.#most.clear();
  }

  #take(recording: Recording, row: number, by: Pick<Traced, 'kinds' | 'bands' | 'limits'>, units: Units): void {
    const s = secondsOf(recording, row);
    this.timeS.push(s);
    for (const kind of by.kinds) {
      const shown = kind.shown[units].of(recording.at(row, kind.column));
      this.column(kind.id).push(shown);
      this.#stretch(kind.id, shown);
    }
    const [depth, speed, force] = (['depth', 'speed', 'force'] as const).map((id) => measureOf(by.kinds, id, units));
    const band = bandAt(by.bands, s);
    const { upMps, downMps } = limitsAt(by.limits, s);
    const speedMps = recording.at(row, 'speedMps');
    const steep = (downMps !== null && speedMps > downMps + 1e-9) || (upMps !== null && -speedMps > upMps + 1e-9);
    this.column('bandTop').push(band ? depth(band.topM) : null);
    this.column('bandBottom').push(band ? depth(band.bottomM) : null);
    this.column('upLimit').push(upMps === null ? null : speed(-upMps));
    this.column('downLimit').push(downMps === null ? null : speed(downMps));
    this.column('momentForce').push(force(recording.at(row, 'netN')));
    this.column('tooFast').push(steep ? depth(recording.at(row, 'depthM')) : null);
  }
}

/** Seconds since the start of the dive at which a row was written. */
export function secondsOf(recording: Recording, row: number): number {
  return (recording.startTick + row * TICKS_PER_ROW) / TICKS_PER_S;
}

/** The place to be at a moment: of several the one that began last. */
export function bandAt(bands: readonly TraceBand[], s: number): TraceBand | null {
  return bands.filter(({ fromS, toS }) => fromS <= s && (toS === null || s <= toS)).at(-1) ?? null;
}

/** The limits under which the dive stood at a moment; before the first that came into force there were none. */
export function limitsAt(limits: readonly TraceLimits[], s: number): TraceLimits['limits'] {
  return limits.filter(({ fromS }) => fromS <= s).at(-1)?.limits ?? { upMps: null, downMps: null };
}

function measureOf(kinds: readonly TraceKind[], id: TraceId, units: Units): (si: number) => number {
  return kinds.find((kind) => kind.id === id)!.shown[units].of;
}
