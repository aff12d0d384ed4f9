import { DECISIONS_PER_S } from './eye.ts';

/** How a pilot leads himself to a depth. */
export interface TargetTraits {
  readonly upMps: number;
  readonly downMps: number;
  /** Slows over this many last metres to 35 %. */
  readonly slowM: number;
  /** How far ahead of the diver the target may be, metres. */
  readonly leadM: number;
  /** Share of the target's own speed that he lets himself have: 0 brakes every motion, 1 moves with the target. */
  readonly paceShare: number;
}

const SLOWEST = 0.35;

/** A moving target's next place, metres, on the way to a depth, seen from where the diver seems to be. */
export function nextTargetM(traits: TargetTraits, targetM: number, goalM: number, seenM: number): number {
  const left = goalM - targetM;
  const share = traits.slowM > 0 ? SLOWEST + (1 - SLOWEST) * Math.min(1, Math.abs(left) / traits.slowM) : 1;
  const stepM = ((left > 0 ? traits.downMps : traits.upMps) * share) / DECISIONS_PER_S;
  if (Math.abs(left) <= stepM) return goalM;
  const next = left > 0 ? targetM + stepM : targetM - stepM;
  // A target that ran ahead waits; it never comes back toward the diver.
  const ahead = left > 0 ? next - seenM : seenM - next;
  return ahead > traits.leadM ? targetM : next;
}
