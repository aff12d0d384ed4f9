import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import { rowsOf, windowEndRow, windowRow } from './goal.ts';
import type { HoldGoal } from './lesson.ts';
import type { MarkLimits } from './limits.ts';
import { distances, grownBy, keeps, lin, meanOf, recordedS, stretchesWhere, worstRow, type Span } from './measures.ts';
import type { Cap, Demand, Evidence, Term } from './mark-sum.ts';
import type { Trace } from './trace.ts';
import { plain } from './words.ts';

/**
 * Mean thrust that costs nothing, kilograms: less than one kick in a hold. At ten times that, whoever sculled as gently as the limit
 * lets him stood up to four points higher, and at less than twice still more than one. Practice.
 */
const FINS_FREE_KGF = 0.003;

/** How a depth was held: what all three marks have in common. */
export interface Held {
  readonly window: Span;
  /** From the moment the depth is reached to the window's end: fins count before the window opens too, or they would set the place. */
  readonly finSpan: Span;
  /** Typical distance from the depth, metres: what `rms` has as its raw value. */
  readonly rmsM: number;
  /** Where it does not count as in the band, as far as it was recorded, and the seconds that `inBand` counts so. */
  readonly out: readonly Span[];
  readonly outS: number;
  readonly gate: Evidence;
  readonly rms: (weight: number) => Term;
  readonly close: (weight: number) => Term;
  readonly inBand: Demand;
  readonly finsNs: number;
  readonly finsRow: number | null;
  readonly finCap: Cap | null;
}

/** Reads the window of a hold that was reached. */
export function heldOf(trace: Trace, goal: HoldGoal, reachedRow: number, limits: MarkLimits): Held {
  const window: Span = { from: windowRow(goal, reachedRow), to: windowEndRow(goal, reachedRow) };
  const { atM, bandM } = goal;
  const off = distances(trace, window, atM, bandM, reachedRow);
  const far = worstRow(window, Math.max(trace.rows, window.to), (row) => off[row - window.from]!);
  const row = far.row === null ? null : Math.min(far.row, trace.rows - 1);
  const percent = (of: (distanceM: number) => number) => 100 * meanOf(off, of);
  const share = percent((distance) => (distance <= bandM ? 1 : 0));
  const near = percent((distance) => lin(distance, bandM, 3 * bandM));
  const close = percent((distance) => (distance <= 0.5 ? 1 : 0));
  const rms = Math.sqrt(meanOf(off, (distance) => distance * distance));
  const finSpan: Span = { from: reachedRow, to: window.to };
  const finsNs = grownBy(trace.finsUpNs, finSpan) + grownBy(trace.finsDownNs, finSpan);
  const fins = worstRow({ from: finSpan.from + 1, to: finSpan.to }, trace.rows, (at) => thrustNs(trace, at));
  const finsRow = finsNs > 0 ? fins.row : null;
  const place = `${plain(atM - bandM)} to ${plain(atM + bandM)} m`;
  return {
    window,
    finSpan,
    rmsM: rms,
    out: [
      ...stretchesWhere(reachedRow, Math.min(window.from, trace.rows), (at) => trace.contact[at] === 1),
      ...stretchesWhere(window.from, Math.min(window.to, trace.rows), (at) => off[at - window.from]! > bandM),
    ],
    outS: off.filter((distance) => distance > bandM).length / rowsOf(1),
    gate: {
      id: 'in-place',
      label: 'held in or near the band',
      raw: near,
      unit: '%',
      good: 100,
      bad: 0,
      credit: near / 100,
      row,
      reason: `Full credit within ${place}, none beyond three times as far; time on the bottom or at the line counts as far.`,
    },
    rms: (weight) => ({
      id: 'distance',
      label: `typical distance from ${plain(atM)} m`,
      raw: rms,
      unit: 'm',
      good: 0.1,
      bad: 1.5,
      row,
      weight,
      reason: `You were typically ${rms.toFixed(1)} m away from ${plain(atM)} m.`,
    }),
    close: (weight) => ({
      id: 'close',
      label: 'within half a metre',
      raw: close,
      unit: '%',
      good: 100,
      bad: 0,
      credit: close / 100,
      row,
      weight,
      reason: `For ${close.toFixed(0)} % of the time you were within half a metre.`,
    }),
    inBand: {
      id: 'in-band',
      demand: `from ${place} for at least ${plain(limits.inBandPercent)} % of ${plain(goal.forS)} s`,
      value: share,
      unit: '%',
      met: keeps(limits.inBandPercent, share),
      row,
    },
    finsNs,
    finsRow,
    finCap: !keeps(finsNs, limits.finsNs)
      ? {
          id: 'fins-in-hold',
          most: 45,
          label: 'held with fins',
          raw: finsNs,
          unit: 'N s',
          row: finsRow,
          reason: 'Fins did what gas and breath should do: stop kicking and you find out what you weigh.',
        }
      : null,
  };
}

/** The demand that fins were left out of a hold. */
export function finlessDemand(held: Held, limits: MarkLimits): Demand {
  const demand = `fins still, at most ${plain(limits.finsNs)} N s of kicks`;
  return {
    id: 'fins',
    demand,
    value: held.finsNs,
    unit: 'N s',
    met: keeps(held.finsNs, limits.finsNs),
    row: held.finsRow,
  };
}

/** The gate of fins: mean thrust in the hold or, the larger, mean thrust against the way on the way. */
export function finGate(
  trace: Trace,
  held: Held,
  against?: { readonly sum: Float64Array; readonly spans: readonly Span[] },
): Evidence & { readonly guardsFloor: true } {
  const inHold = held.finsNs / Math.max(recordedS(trace, held.finSpan), 1 / rowsOf(1)) / STANDARD_GRAVITY_MPS2;
  let impulse = 0;
  let seconds = 0;
  let row = held.finsRow;
  for (const span of against?.spans ?? []) {
    impulse += grownBy(against!.sum, span);
    seconds += recordedS(trace, span);
  }
  const braking = seconds > 0 ? impulse / seconds / STANDARD_GRAVITY_MPS2 : 0;
  if (against && braking > inHold)
    for (const span of against.spans) {
      const most = worstRow(
        { from: span.from + 1, to: span.to },
        trace.rows,
        (at) => against.sum[at]! - against.sum[at - 1]!,
      );
      if (most.value > 0) row = most.row;
    }
  const raw = Math.max(inHold, braking);
  return {
    id: 'fins',
    label: 'carried or braked by fins, on average',
    raw,
    unit: 'kg',
    good: FINS_FREE_KGF,
    bad: 0.1,
    row: raw > FINS_FREE_KGF ? row : null,
    guardsFloor: true,
    reason:
      raw > FINS_FREE_KGF
        ? braking > inHold
          ? 'Fins worked against the way: the gas was wrong.'
          : 'Fins carried what gas should carry.'
        : 'Fins stayed out of it.',
  };
}

/** The gate of balance: how light or heavy the diver is at mid-breath, on average over the window. */
export function balanceGate(trace: Trace, { window }: Held): Evidence {
  const mean = meanNetKgf(trace, window);
  const heaviest = worstRow(window, trace.rows, (row) => trace.midNetN[row]! * Math.sign(mean));
  const amount = Math.abs(mean);
  return {
    id: 'balance',
    label: 'light or heavy at mid-breath, on average',
    raw: amount,
    unit: 'kg',
    good: 0.3,
    bad: 1.5,
    row: amount > 0.3 ? heaviest.row : null,
    reason:
      amount > 0.3
        ? `On average you were ${amount.toFixed(1)} kg ${mean > 0 ? 'light' : 'heavy'}: lungs or fins carried it.`
        : 'The gas was right, the breath only trimmed.',
  };
}

/** Mean net force at mid-lung over the recorded part of a window, kilograms of pull, up positive. */
function meanNetKgf(trace: Trace, window: Span): number {
  let sum = 0;
  const to = Math.min(window.to, trace.rows);
  for (let row = window.from; row < to; row++) sum += trace.midNetN[row]!;
  return to > window.from ? sum / (to - window.from) / STANDARD_GRAVITY_MPS2 : 0;
}

/** Caps a mark at 45 for lead let go by hand before its end: what is balanced then is another diver. */
export function leadCaps({ leadRow }: Trace, span: Span): Cap[] {
  if (leadRow === null || leadRow >= span.to) return [];
  const reason = 'With lead let go the task is another one: the gas should have carried what you wore.';
  return [{ id: 'lead-let-go', most: 45, label: 'lead let go', raw: 1, unit: '', row: leadRow, reason }];
}

function thrustNs(trace: Trace, row: number): number {
  return trace.finsUpNs[row]! - trace.finsUpNs[row - 1]! + trace.finsDownNs[row]! - trace.finsDownNs[row - 1]!;
}
