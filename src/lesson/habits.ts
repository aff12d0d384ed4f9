import { HEAD_OUT_M, midBreathM3, type Rig } from '../diver/index.ts';
import { rowsOf } from './goal.ts';
import type { Found } from './habit-evidence.ts';
import type { Cap } from './mark-sum.ts';
import { keeps, type Span } from './measures.ts';
import type { Trace } from './trace.ts';

/** A stretch in which the breath was held and the diver rose. */
export interface BreathHeld extends Span {
  readonly risenM: number;
}

/** The airway counts as closed when volume or gas of the lungs keeps within this, m³, for so long. */
const STILL_M3 = 0.15e-3;
const STILL_S = 5;
/** Lungs fuller than mid-breath by this, m³, and risen by so much since the deepest point of the stretch, metres. */
const FULL_M3 = 0.3e-3;
const RISEN_M = 0.5;
/** A stretch is not looked at further back than this. */
const LONGEST_S = 60;

/**
 * Breath held while rising: for 5 s lung volume *or* lung gas stays within 0.15 L (held breath swells: volume alone misses it),
 * the lungs are 0.3 L above mid-breath, and 0.5 m was risen in that stretch, under water.
 * @source practice
 */
export function heldBreaths(rig: Rig, trace: Trace): BreathHeld[] {
  const found: BreathHeld[] = [];
  if (!rig.lungs.open) return found;
  const full = midBreathM3(rig) + FULL_M3;
  for (let row = rowsOf(STILL_S); row < trace.rows; row++) {
    if (trace.depthM[row]! < HEAD_OUT_M || trace.lungM3[row]! <= full) continue;
    const asVolume = trace.lungM3[row]! / trace.lungMol[row]!;
    const from = Math.min(stillSince(trace.lungM3, row, 1), stillSince(trace.lungMol, row, asVolume));
    if (row - from < rowsOf(STILL_S)) continue;
    let deepest = 0;
    for (let i = from; i <= row; i++) deepest = Math.max(deepest, trace.depthM[i]!);
    const risenM = deepest - trace.depthM[row]!;
    if (risenM < RISEN_M) continue;
    const last = found[found.length - 1];
    if (last && from <= last.to)
      found[found.length - 1] = { from: last.from, to: row + 1, risenM: Math.max(risenM, last.risenM) };
    else found.push({ from, to: row + 1, risenM });
  }
  return found;
}

/** First row since which a column, made litres by a factor, has kept within the limit up to a row. */
function stillSince(column: Float64Array, row: number, factor: number): number {
  let least = column[row]!;
  let most = least;
  let from = row;
  while (from > 0 && row - from < rowsOf(LONGEST_S)) {
    least = Math.min(least, column[from - 1]!);
    most = Math.max(most, column[from - 1]!);
    if ((most - least) * factor > STILL_M3) break;
    from--;
  }
  return from;
}

/** Caps a mark at 0 for the first breath held within its span. */
export function breathCaps(breaths: readonly BreathHeld[], span: Span): Cap[] {
  const held = breaths.find(({ from, to }) => from < span.to && to > span.from);
  if (!held) return [];
  return [
    {
      id: 'breath-held',
      most: 0,
      label: 'breath held while rising',
      raw: held.risenM,
      unit: 'm',
      row: held.to - 1,
      reason: `You held a full breath and rose ${held.risenM.toFixed(1)} m: gas expanding in the lungs can injure within about a metre of ascent.`,
    },
  ];
}

/** So many seconds of it in the time of a mark, in all, are let pass. Practice. */
const STILL_MOST_S = 15;
/** A mark with more is not secure. */
const STILL_MOST = 79;

/** Keeps a mark from secure where the breath stood still for long: it saves the trim, and nobody may do it on scuba. */
export function stillCaps({ still }: { readonly still: Uint8Array }, { from, to }: Span): Cap[] {
  let rows = 0;
  let last = from;
  for (let row = from; row < Math.min(to, still.length); row++)
    if (still[row] === 1) {
      rows++;
      last = row;
    }
  const seconds = rows / rowsOf(1);
  if (keeps(seconds, STILL_MOST_S)) return [];
  const reason = `For ${seconds.toFixed(0)} s in all you hardly breathed: on scuba, go on breathing all the while.`;
  return [
    { id: 'breath-still', most: STILL_MOST, label: 'breath stood still', raw: seconds, unit: 's', row: last, reason },
  ];
}

/** A held breath as a habit. */
export function breathHabit({ from, to, risenM }: BreathHeld): Found {
  return { id: 'breath-held-while-rising', from, to, words: `Breath held while rising ${risenM.toFixed(1)} m` };
}
