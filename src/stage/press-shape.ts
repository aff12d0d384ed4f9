import { TICKS_PER_ROW, TICKS_PER_S, type ControlChange, type Controls, type Recording } from '../dive/index.ts';
import { isPressCut, pressHeightPx } from './geometry.ts';

/** One press of a gas control: up for gas added, down for gas vented; `toTick` of null is still held. */
export interface Press {
  readonly way: 1 | -1;
  readonly fromTick: number;
  readonly toTick: number | null;
}

const adds = (c: Controls) => c.jacketAdd === 1 || c.suitAdd === 1 || c.oral === 1 || c.diluent === 1;
const vents = (c: Controls) => c.jacketVent !== 0 || c.suitVent === 1 || c.noseVent === 1;

/** The presses of a dive, in the order in which they began. */
export function pressesOf(changes: readonly ControlChange[]): Press[] {
  const out: Press[] = [];
  for (const [way, on] of [[1, adds] as const, [-1, vents] as const]) {
    let fromTick: number | null = null;
    for (const { tick, controls } of changes) {
      if (on(controls)) fromTick ??= tick;
      else if (fromTick !== null) {
        out.push({ way, fromTick, toTick: tick });
        fromTick = null;
      }
    }
    if (fromTick !== null) out.push({ way, fromTick, toTick: null });
  }
  return out.sort((a, b) => a.fromTick - b.fromTick);
}

/** Volume that passed during a press, m³: the recording's running sum at its end less that at its start. */
export function pressVolumeM3(recording: Recording, press: Press, toTick: number): number {
  const name = press.way === 1 ? 'letInM3' : 'letOutM3';
  const at = (row: number) => recording.at(Math.min(Math.max(row, 0), recording.rows - 1), name);
  const rowOfTick = (tick: number) => (tick - recording.startTick) / TICKS_PER_ROW;
  return at(Math.ceil(rowOfTick(toTick))) - at(Math.floor(rowOfTick(press.fromTick)));
}

/** What a press is drawn at: size unit, width of the line it stands on, and the scale. */
interface PressScale {
  readonly unit: number;
  readonly linePx: number;
  readonly pxPerM: number;
  readonly pxPerS: number;
}

/** A press as it is drawn, points in turn, pixels: across from its first moment, down from depth 0. */
export interface PressShape {
  readonly outline: readonly number[];
  /** A cut along it, out over its sides, says that the litres are more than it is high; null where they are not. */
  readonly cut: readonly number[] | null;
}

/**
 * A press that stands on the line where it happened, as long as the press and as high as the litres. A short one is a block that
 * stands on the line; a long one follows it.
 */
export function pressShape(
  press: Press,
  toTick: number,
  recording: Recording,
  { unit, linePx, pxPerM, pxPerS }: PressScale,
): PressShape {
  const volumeM3 = pressVolumeM3(recording, press, toTick);
  const height = pressHeightPx(volumeM3, unit, pxPerM) * press.way;
  const width = ((toTick - press.fromTick) / TICKS_PER_S) * pxPerS;
  const least = Math.max(0, 6 * unit - width) / 2;
  const depthAt = (tick: number) => {
    const row = Math.round((tick - recording.startTick) / TICKS_PER_ROW);
    return recording.at(Math.min(Math.max(row, 0), recording.rows - 1), 'depthM') * pxPerM;
  };
  const steps = width < 18 * unit ? 0 : Math.min(16, Math.round(width / (5 * unit)));
  const slope = Math.abs(depthAt(toTick + 24) - depthAt(press.fromTick - 24)) / (width + 0.4 * pxPerS);
  const lean = steps === 0 ? (slope * (width + 2 * least)) / 2 : 0;
  const gap = (lean + (linePx / 2) * Math.hypot(1, Math.min(slope, 3)) + 1.5 * unit) * press.way;
  const foot: number[] = [];
  const head: number[] = [];
  for (let i = 0; i <= Math.max(1, steps); i++) {
    const x = -least + ((width + 2 * least) * i) / Math.max(1, steps);
    const share = steps === 0 ? 0.5 : i / steps;
    const y = depthAt(press.fromTick + (toTick - press.fromTick) * share) - gap;
    foot.push(x, y);
    head.unshift(x, y - height);
  }
  const outline = [...foot, ...head];
  if (!isPressCut(volumeM3, unit, pxPerM)) return { outline, cut: null };
  const last = foot.length - 2;
  const cut = foot.map((at, i) => (i % 2 === 0 ? at : at - height * (0.5 + 0.16 * (i / last - 0.5))));
  const aside = 2 * unit;
  return { outline, cut: [cut[0]! - aside, cut[1]!, ...cut, cut[last]! + aside, cut[last + 1]!] };
}
