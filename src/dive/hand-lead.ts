import { HEAD_OUT_M, type Rig } from '../diver/index.ts';
import type { Controls } from './controls.ts';
import type { DiveEvent } from './events.ts';
import { solidSums, type DiveState } from './state.ts';

/**
 * Takes a piece of lead off by hand, or puts it back on: at the surface, where somebody holds it meanwhile. It does not sink, and what
 * was let go is not there to be put on.
 */
export function handOver(
  rig: Rig,
  s: DiveState,
  { handLead, releaseMask }: Controls,
  events: DiveEvent[] | undefined,
): void {
  const i = Math.abs(handLead) - 1;
  const piece = rig.lead[i];
  const bit = 1 << i;
  const worn = (s.releasedMask & bit) === 0;
  if (!piece?.releasable || s.depthM >= HEAD_OUT_M || (releaseMask & bit) !== 0 || worn !== handLead > 0) return;
  s.releasedMask ^= bit;
  s.calmUntil = 0;
  events?.push({ tick: s.tick, kind: worn ? 'lead-taken-off' : 'lead-put-on', piece: i + 1, massKg: piece.massKg });
  Object.assign(s, solidSums(rig, s.releasedMask));
}

/**
 * The piece that a hand takes off (way 1) or puts back on (way −1), as the control has it: the lightest that can be, 0 where there is
 * none. What was let go is not there to be put on.
 * @param releasedMask lead that is not worn @param releaseMask lead that was let go
 */
export function pieceAtHand(rig: Rig, releasedMask: number, releaseMask: number, way: 1 | -1): number {
  let best = -1;
  rig.lead.forEach(({ massKg, releasable }, i) => {
    const bit = 1 << i;
    const fits = way > 0 ? (releasedMask & bit) === 0 : (releasedMask & ~releaseMask & bit) !== 0;
    if (releasable && fits && (best < 0 || massKg < rig.lead[best]!.massKg)) best = i;
  });
  return best < 0 ? 0 : way * (best + 1);
}
