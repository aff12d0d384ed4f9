import { jacketM3, loopM3, midBreathM3, netForceN, suitGasM3, type Rig } from '../diver/index.ts';
import { vesselPressurePa } from '../gas/index.ts';
import { STANDARD_PRESSURE_PA, waterAt, type WaterAt } from '../water/index.ts';
import { TICKS_PER_S } from './controls.ts';
import type { DiveState } from './state.ts';

/** A row is written on every twelfth tick: 10 Hz. */
export const TICKS_PER_ROW = TICKS_PER_S / 10;

/** Columns of a recording. SI; depth and speed positive down, forces up; attitude as a unit vector. */
export const RECORDED = [
  'depthM',
  'speedMps',
  'pitchCos',
  'pitchSin',
  'lungM3',
  'lungMol',
  'jacketM3',
  'suitGasM3',
  'loopM3',
  'cylinderPa',
  'netN',
  /** What the net force would be with the lungs at mid-breath: where "light" and "heavy" are judged. */
  'midNetN',
  /** Running sums since the start of the dive. */
  'finsUpNs',
  'finsDownNs',
  'letInM3',
  'letOutM3',
  'flags',
  'resting',
  /** Lead that is worn. */
  'leadKg',
] as const;

export type Recorded = (typeof RECORDED)[number];
/** One row, by name. */
export type Row = Readonly<Record<Recorded, number>> & { readonly tick: number };

/** The 10 Hz record of a dive. Row i belongs to tick `startTick` + 12·i; the first row is the start. */
export class Recording {
  rows = 0;
  #values = new Float64Array(RECORDED.length * 256);
  readonly startTick: number;
  readonly #rig: Rig;
  readonly #water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };

  constructor(rig: Rig, startTick = 0) {
    this.#rig = rig;
    this.startTick = startTick;
  }

  /** Tick on which the next row is due. */
  get dueTick(): number {
    return this.startTick + this.rows * TICKS_PER_ROW;
  }

  /** Writes the row of a state when its tick is due and follows the last one; otherwise does nothing. */
  note(state: DiveState): void {
    if (state.tick !== this.dueTick) return;
    const at = this.rows * RECORDED.length;
    if (at + RECORDED.length > this.#values.length) {
      const more = new Float64Array(this.#values.length * 2);
      more.set(this.#values);
      this.#values = more;
    }
    this.rows++;
    writeRow(this.#rig, state, this.#water, this.#values, at);
  }

  /** A value of a row. @throws {RangeError} when there is no such row */
  at(row: number, name: Recorded): number {
    if (!(row >= 0 && row < this.rows)) throw new RangeError(`Recording.at: no row ${row} of ${this.rows}`);
    return this.#values[row * RECORDED.length + RECORDED.indexOf(name)]!;
  }

  /** A whole row by name. @throws {RangeError} when there is no such row */
  row(row: number): Row {
    if (!(row >= 0 && row < this.rows)) throw new RangeError(`Recording.row: no row ${row} of ${this.rows}`);
    const out: Record<string, number> = { tick: this.startTick + row * TICKS_PER_ROW };
    RECORDED.forEach((name, i) => (out[name] = this.#values[row * RECORDED.length + i]!));
    return out as Row;
  }

  /** A column as numbers, one a row. */
  column(name: Recorded): Float64Array {
    const index = RECORDED.indexOf(name);
    return Float64Array.from({ length: this.rows }, (_, row) => this.#values[row * RECORDED.length + index]!);
  }

  /** Forgets all rows after a tick, for a dive that goes back in time. */
  cutAfter(tick: number): void {
    this.rows = Math.min(this.rows, Math.floor((tick - this.startTick) / TICKS_PER_ROW) + 1);
  }

  /** Takes over the rows of another recording of the same start, up to a tick. */
  takeUpTo(other: Recording, tick: number): void {
    this.rows = other.rows;
    this.cutAfter(tick);
    this.#values = other.#values.slice(0, (this.rows + 256) * RECORDED.length);
  }
}

/** The row of one state, by name: what a recording would hold of it. */
export function rowOf(rig: Rig, state: DiveState): Row {
  const values = new Float64Array(RECORDED.length);
  writeRow(rig, state, { densityKgPerM3: NaN, pressurePa: NaN }, values, 0);
  const out: Record<string, number> = { tick: state.tick };
  RECORDED.forEach((name, i) => (out[name] = values[i]!));
  return out as Row;
}

function writeRow(rig: Rig, s: DiveState, water: WaterAt, out: Float64Array, at: number): void {
  const { densityKgPerM3, pressurePa } = waterAt(rig.column, s.depthM, water);
  const net = netForceN(rig, s);
  const breathN = rig.lungs.open ? (midBreathM3(rig) - s.lungM3) * densityKgPerM3 * rig.column.gravityMps2 : 0;
  let i = at;
  out[i++] = s.depthM;
  out[i++] = s.speedMps;
  out[i++] = s.pitchCos;
  out[i++] = s.pitchSin;
  out[i++] = s.lungM3;
  out[i++] = s.lungMol;
  out[i++] = jacketM3(rig, s.jacketMol, pressurePa);
  out[i++] = suitGasM3(rig, s.suitMol, pressurePa);
  out[i++] = loopM3(rig, s.loopMol, pressurePa);
  out[i++] = rig.vessels.length > 0 ? cylinderPa(rig, s) : STANDARD_PRESSURE_PA;
  out[i++] = net;
  out[i++] = net + breathN;
  out[i++] = s.finsUpNs;
  out[i++] = s.finsDownNs;
  out[i++] = s.letInM3;
  out[i++] = s.letOutM3;
  out[i++] = s.flags;
  out[i++] = s.resting;
  out[i] = wornLeadKg(rig, s.releasedMask);
}

function wornLeadKg(rig: Rig, goneMask: number): number {
  return rig.lead.reduce((kg, { massKg }, i) => ((goneMask & (1 << i)) === 0 ? kg + massKg : kg), 0);
}

/** Mean absolute pressure of the cylinders, pascals, weighted by their size. */
function cylinderPa(rig: Rig, s: DiveState): number {
  let sum = 0;
  let size = 0;
  rig.vessels.forEach((vessel, i) => {
    sum += vessel.waterM3 * vesselPressurePa(s.cylinderMol[i]!, vessel.waterM3, rig.waterTemperatureK);
    size += vessel.waterM3;
  });
  return sum / size;
}
