import { rowsOf } from './goal.ts';
import type { Evidence, Found, Stretch } from './habit-evidence.ts';
import { USUAL_LIMITS } from './limits.ts';

/*
 * Habits on the way up and down. Limits are practice, settled on pilots of one half of the kits and tried on the other.
 */

const LIMIT_MPS = USUAL_LIMITS.ascentMpmin / 60;
const FAST_MPS = USUAL_LIMITS.descentMpmin / 60;

const LIFT_L = 2.5;
const LIFT_OVER_KGF = -0.2;

/** Jacket as a lift: in a climb gas goes in while the diver is not heavy. */
export function jacketAsLift({ inL, lightKgf }: Evidence, { from, to }: Stretch): Found[] {
  let sum = 0;
  let first: number | null = null;
  for (let row = from; row < to; row++) {
    if (inL[row]! <= 0 || lightKgf[row]! <= LIFT_OVER_KGF) continue;
    first ??= row;
    sum += inL[row]!;
  }
  if (first === null || sum < LIFT_L) return [];
  return [{ id: 'jacket-as-a-lift', from: first, to, words: `${sum.toFixed(1)} L went into the jacket on the way up` }];
}

const LATE_CLIMB_M = 1.2;
const LATE_GAS_M3 = 0.3e-3;
const LATE_OVER_KGF = 0.3;
const VENT_COUNTS_S = 3;

/** Late or no venting: so far climbed faster than the limit, light and with gas to let out, before any went out. */
export function ventsLate({ trace, outL, lightKgf }: Evidence, { from, to }: Stretch): Found[] {
  let climbedM = 0;
  let begun = from;
  let lastVent = -Infinity;
  let vented = false;
  let most = { climbedM: 0, from, to: from };
  for (let row = from; row < to; row++) {
    if (outL[row]! > 0) lastVent = row;
    if (-trace.slowMps[row]! <= LIMIT_MPS) {
      climbedM = 0;
      begun = row;
      vented = false;
      continue;
    }
    vented ||= row - lastVent <= rowsOf(VENT_COUNTS_S);
    if (vented || trace.jacketM3[row]! <= LATE_GAS_M3 || lightKgf[row]! <= LATE_OVER_KGF) continue;
    climbedM += Math.max(0, trace.depthM[Math.max(row - 1, from)]! - trace.depthM[row]!);
    if (climbedM > most.climbedM) most = { climbedM, from: begun, to: row + 1 };
  }
  if (most.climbedM < LATE_CLIMB_M) return [];
  const words = `${most.climbedM.toFixed(1)} m climbed above the limit before any gas went out`;
  return [{ id: 'vents-late', from: most.from, to: most.to, words }];
}

const STOP_GO_UP_MPS = 12 / 60;
const STOP_GO_DOWN_MPS = 2 / 60;

/** Stop-and-go: four turns from fast up to sinking, or back, in 90 s of a climb. */
export function stopAndGo({ trace }: Evidence, { from, to }: Stretch): Found[] {
  const side = (row: number) =>
    -trace.slowMps[row]! > STOP_GO_UP_MPS ? 1 : trace.slowMps[row]! > STOP_GO_DOWN_MPS ? -1 : 0;
  const turned = alternating(from, to, side);
  return turned ? [{ id: 'stop-and-go', ...turned, words: 'Fast up and down again by turns on the way up' }] : [];
}

const ALTERNATIONS = 4;
const ALTERNATES_IN_S = 90;

/** The first span of 90 s in which a side, 1, −1 or 0 for neither, changes so often that four excursions alternate. */
export function alternating(
  from: number,
  to: number,
  side: (row: number) => number,
): { readonly from: number; readonly to: number } | null {
  const begun: number[] = [];
  let last = 0;
  for (let row = from; row < to; row++) {
    const now = side(row);
    if (now === 0 || now === last) continue;
    last = now;
    begun.push(row);
    const first = begun[begun.length - ALTERNATIONS];
    if (first !== undefined && row - first <= rowsOf(ALTERNATES_IN_S)) return { from: first, to: row + 1 };
  }
  return null;
}

const EMPTY_M3 = 0.2e-3;
const ABOVE_M = 4;
const HEAVY_KGF = -1;
const FALLS_WITHIN_S = 30;

/** Everything vented at once: still venting an empty jacket near the top, heavy, and then too fast before any gas goes in. */
export function allVented({ trace, lightKgf, inL, presses }: Evidence, { from, to }: Stretch): Found[] {
  for (const press of presses) {
    if (press.way > 0) continue;
    for (let row = Math.max(press.from, from); row <= Math.min(press.to, to - 1); row++) {
      if (trace.depthM[row]! >= ABOVE_M || trace.jacketM3[row]! >= EMPTY_M3 || lightKgf[row]! >= HEAVY_KGF) continue;
      for (let then = row; then < Math.min(row + rowsOf(FALLS_WITHIN_S), trace.rows); then++) {
        if (inL[then]! > 0) break;
        if (trace.slowMps[then]! <= FAST_MPS) continue;
        const words = 'The jacket was emptied at the top and no gas came back before the way down was fast';
        return [{ id: 'all-vented-at-once', from: row, to: then + 1, words }];
      }
    }
  }
  return [];
}
