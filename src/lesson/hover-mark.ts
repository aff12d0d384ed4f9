import type { HoldGoal } from './lesson.ts';
import { USUAL_LIMITS } from './limits.ts';
import type { Mark } from './mark.ts';
import { grownBy, worstRow } from './measures.ts';
import { sumMark } from './mark-sum.ts';
import type { BreathHeld } from './habits.ts';
import { breathCaps, stillCaps } from './habits.ts';
import type { Trace } from './trace.ts';
import { balanceGate, finGate, finlessDemand, heldOf, leadCaps } from './window-evidence.ts';

/**
 * Mark of a hover, 0–100: 100·G·Fin·Balance·[0.60 lin(RMS; 0.1, 1.5 m) + 0.20 share within ±0.5 m + 0.20 lin(T; 3, 10 L a
 * minute)], T the lesser of gas let in and out in the window. @source practice
 */
export function hoverMark(
  trace: Trace,
  goal: HoldGoal,
  reachedRow: number,
  breaths: readonly BreathHeld[],
  limits = USUAL_LIMITS,
): Mark {
  const held = heldOf(trace, goal, reachedRow, limits);
  const { window } = held;
  const inL = grownBy(trace.letInM3, window) * 1e3;
  const outL = grownBy(trace.letOutM3, window) * 1e3;
  const perMinL = (Math.min(inL, outL) / goal.forS) * 60;
  const vents = worstRow(
    { from: window.from + 1, to: window.to },
    trace.rows,
    (row) => trace.letOutM3[row]! - trace.letOutM3[row - 1]!,
  );
  return sumMark({
    id: 'hover',
    terms: [
      held.rms(0.6),
      held.close(0.2),
      {
        id: 'gas-to-and-fro',
        label: 'gas let in and out again',
        raw: perMinL,
        unit: 'L/min',
        good: 3,
        bad: 10,
        weight: 0.2,
        row: perMinL > 0 ? vents.row : null,
        reason: 'Gas went in and out again; the breath can do that work.',
      },
    ],
    gates: [held.gate, finGate(trace, held), balanceGate(trace, held)],
    demands: [held.inBand, finlessDemand(held, limits)],
    caps: [
      ...(held.finCap ? [held.finCap] : []),
      ...leadCaps(trace, window),
      ...stillCaps(trace, { from: reachedRow, to: window.to }),
      ...breathCaps(breaths, { from: reachedRow, to: window.to }),
    ],
  });
}
