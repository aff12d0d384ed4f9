import type { HoldGoal } from './lesson.ts';
import { USUAL_LIMITS } from './limits.ts';
import type { Mark } from './mark.ts';
import { keeps, toAndFroL, worstRow, type Span } from './measures.ts';
import { sumMark } from './mark-sum.ts';
import { breathCaps, stillCaps, type BreathHeld } from './habits.ts';
import type { Trace } from './trace.ts';
import { plain } from './words.ts';
import { balanceGate, finGate, heldOf, leadCaps } from './window-evidence.ts';

/** The rate at which nothing is left, as a multiple of the one that is asked for at most. @source practice */
const BAD_RATE = 30 / 18;

/**
 * Mark of a descent and the hold below it, 0–100: 100·G·Fin·Balance·[0.25 lin(peak v3; 18, 30 m/min) + 0.35 lin(RMS; 0.1, 1.5) + 0.15
 * share within ±0.5 m + 0.25 lin(T; 2, 12 L)]. @param fromRow first row of the way down
 */
export function descentMark(
  trace: Trace,
  fromRow: number,
  goal: HoldGoal,
  reachedRow: number,
  breaths: readonly BreathHeld[],
  limits = USUAL_LIMITS,
): Mark {
  const held = heldOf(trace, goal, reachedRow, limits);
  const { descentMpmin } = limits;
  const whole: Span = { from: fromRow, to: held.window.to };
  const way: Span = { from: fromRow, to: reachedRow };
  const peak = worstRow(whole, trace.rows, (row) => trace.slowMps[row]! * 60);
  const gas = toAndFroL(trace, whole);
  const touch = worstRow(whole, trace.rows, (row) => trace.touched[row]!);
  const touched = touch.value === 1;
  return sumMark({
    id: 'descent',
    terms: [
      {
        id: 'peak-rate',
        label: 'fastest on the way down, over 3 s',
        raw: peak.value,
        unit: 'm/min',
        good: descentMpmin,
        bad: descentMpmin * BAD_RATE,
        weight: 0.25,
        row: peak.row,
        reason: !keeps(peak.value, descentMpmin)
          ? `You sank at ${peak.value.toFixed(1)} m/min: gas came too late.`
          : `You never sank faster than ${peak.value.toFixed(1)} m/min.`,
      },
      held.rms(0.35),
      held.close(0.15),
      {
        id: 'gas-to-and-fro',
        label: 'gas let in and out again',
        raw: gas.value,
        unit: 'L',
        good: 2,
        bad: 12,
        weight: 0.25,
        row: gas.row,
        reason: `${gas.value.toFixed(1)} L that you let in went out again.`,
      },
    ],
    gates: [held.gate, finGate(trace, held, { sum: trace.finsUpNs, spans: [way] }), balanceGate(trace, held)],
    demands: [
      {
        id: 'rate',
        demand: `at most ${plain(descentMpmin)} m/min on the way down`,
        value: peak.value,
        unit: 'm/min',
        met: keeps(peak.value, descentMpmin),
        row: peak.row,
      },
      held.inBand,
      {
        id: 'bottom',
        demand: 'clear of the bottom',
        value: touched ? 1 : 0,
        unit: '',
        met: !touched,
        row: touched ? touch.row : null,
      },
    ],
    caps: [
      ...(held.finCap ? [held.finCap] : []),
      ...(touched
        ? [
            {
              id: 'bottom',
              most: 50,
              label: 'bottom touched',
              raw: 1,
              unit: '',
              row: touch.row,
              reason: 'The bottom stopped you: gas or breath should have.',
            },
          ]
        : []),
      ...leadCaps(trace, whole),
      ...stillCaps(trace, whole),
      ...breathCaps(breaths, whole),
    ],
  });
}
