import { HEAD_OUT_M } from '../diver/index.ts';
import { excessBadM, gasTerm, paceTerm, peakBadMpmin, rateTerms, type AscentTask } from './ascent-terms.ts';
import { rowsOf, windowEndRow } from './goal.ts';
import { breathCaps, stillCaps, type BreathHeld } from './habits.ts';
import { USUAL_LIMITS } from './limits.ts';
import type { Mark } from './mark.ts';
import { excessClimbM, keeps, toAndFroL, worstRow, type Span } from './measures.ts';
import { sumMark, type Cap, type Demand } from './mark-sum.ts';
import type { Trace } from './trace.ts';
import { balanceGate, finGate, heldOf, leadCaps } from './window-evidence.ts';
import { plain } from './words.ts';

/** Row on which the head came out after the stop, in time; null when it did not. */
function headOutRow(trace: Trace, stopEnd: number, withinS: number): number | null {
  for (let row = stopEnd; row < Math.min(trace.rows, stopEnd + rowsOf(withinS) + 1); row++)
    if (trace.depthM[row]! < HEAD_OUT_M) return row;
  return null;
}

/** Rows that an ascent is judged by: until the head is out after the stop, in time, or to the end of what was recorded. */
export function ascentSpan(
  trace: Trace,
  { fromRow, stop, reachedRow, surfaceWithinS }: AscentTask,
): Span & { readonly out: number | null } {
  const out = headOutRow(trace, windowEndRow(stop, reachedRow), surfaceWithinS);
  return { from: fromRow, to: (out ?? trace.rows - 1) + 1, out };
}

/**
 * Mark of an ascent with its stop, 0–100: 100·G·Fin·Balance·[0.40 lin(E; 0.3, 5 m) + 0.05 lin(peak v3; 9, 25) + 0.05 pace of
 * the way (all from half the limit on, none at a quarter) + 0.25 lin(RMS in the stop; 0.1, 1.5) + 0.10 share within ±0.5 m + 0.15 lin(T; 6, 36 L)], E = ∫max(0, v3 − 9 m/min)dt until the head is out.
 */
export function ascentMark(
  trace: Trace,
  task: AscentTask,
  breaths: readonly BreathHeld[],
  limits = USUAL_LIMITS,
): Mark {
  const { ascentMpmin, fastMpmin, excessM } = limits;
  const held = heldOf(trace, task.stop, task.reachedRow, limits);
  const stopEnd = held.window.to;
  const { out, ...whole } = ascentSpan(trace, task);
  const end = whole.to - 1;
  const early = worstRow({ from: task.fromRow, to: stopEnd }, trace.rows, (row) => -trace.depthM[row]!);
  const leftEarly = early.value > -HEAD_OUT_M;
  const climb = excessClimbM(trace, whole, ascentMpmin / 60);
  const fastest = worstRow(whole, trace.rows, (row) => -trace.slowMps[row]! * 60);
  // Staying down must not save anybody the hardest metres: then both count as bad.
  const excess = out === null ? Math.max(climb.value, excessBadM(limits)) : climb.value;
  const peak = out === null ? Math.max(fastest.value, peakBadMpmin(limits)) : fastest.value;
  const gas = toAndFroL(trace, { from: task.fromRow, to: end });
  const fast = !keeps(fastest.value, fastMpmin);
  const spans = [
    { from: task.fromRow, to: task.reachedRow },
    { from: stopEnd, to: end },
  ];
  return sumMark({
    id: 'ascent',
    terms: [
      ...rateTerms(limits, excess, climb.row, peak, fastest.row, out === null),
      paceTerm(trace, task, ascentMpmin, out === null),
      held.rms(0.25),
      held.close(0.1),
      gasTerm(gas.value, gas.row),
    ],
    gates: [held.gate, finGate(trace, held, { sum: trace.finsDownNs, spans }), balanceGate(trace, held)],
    demands: [
      {
        id: 'excess',
        demand: `at most ${plain(excessM)} m in all climbed above ${plain(ascentMpmin)} m/min`,
        value: excess,
        unit: 'm',
        met: keeps(excess, excessM),
        row: climb.row,
      },
      {
        id: 'fast',
        demand: `never above ${plain(fastMpmin)} m/min for 3 s`,
        value: fastest.value,
        unit: 'm/min',
        met: !fast,
        row: fastest.row,
      },
      held.inBand,
      surfacedDemand(out, task.surfaceWithinS),
      {
        id: 'stayed',
        demand: "under water until the stop's end",
        value: leftEarly ? 1 : 0,
        unit: '',
        met: !leftEarly,
        row: leftEarly ? early.row : null,
      },
    ],
    caps: [
      ...(held.finCap ? [held.finCap] : []),
      ...(task.fastAscentIsThePoint
        ? []
        : ascentCaps(fast, fastMpmin, fastest.value, fastest.row, leftEarly, early.row)),
      ...leadCaps(trace, whole),
      ...stillCaps(trace, whole),
      ...breathCaps(breaths, whole),
    ],
  });
}

function surfacedDemand(out: number | null, withinS: number): Demand {
  return {
    id: 'surfaced',
    demand: `at the surface within ${withinS} s of the stop`,
    value: out === null ? 0 : 1,
    unit: '',
    met: out !== null,
    row: out,
  };
}

function ascentCaps(
  fast: boolean,
  fastMpmin: number,
  mpmin: number,
  fastRow: number | null,
  early: boolean,
  earlyRow: number | null,
): Cap[] {
  const caps: Cap[] = [];
  if (fast)
    caps.push({
      id: 'fast',
      most: 49,
      label: `above ${plain(fastMpmin)} m/min for 3 s`,
      raw: mpmin,
      unit: 'm/min',
      row: fastRow,
      reason: 'Far above the limit: gas should have gone out before it was needed.',
    });
  if (early)
    caps.push({
      id: 'surfaced-early',
      most: 25,
      label: "surfaced before the stop's end",
      raw: 1,
      unit: '',
      row: earlyRow,
      reason: 'You were at the surface before the stop was over.',
    });
  return caps;
}
