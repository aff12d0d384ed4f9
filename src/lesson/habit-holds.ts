import { rowsOf } from './goal.ts';
import { meanOver, type Evidence, type Found, type Stretch } from './habit-evidence.ts';
import { alternating } from './habit-ways.ts';

/*
 * Habits of holding a depth. Limits are practice, settled on pilots of one half of the kits and tried on the other.
 */

type Hold = Extract<Stretch, { kind: 'hold' }>;

/** A habit that takes two of the same: the first and the second. */
function twice(all: readonly Found[]): Found[] {
  return all.length < 2 ? [] : [{ ...all[0]!, to: all[1]!.to }];
}

const OVER_KGF = 0.8;
const PAST_M = 0.7;
const PASSES_WITHIN_S = 15;

/** A press leaves the diver light, and he passes the depth within 15 s; twice. */
export function pressOvershoots({ trace, lightKgf, presses }: Evidence, { from, to, atM }: Hold): Found[] {
  const all: Found[] = [];
  for (const press of presses) {
    if (press.way < 0 || press.from < from || press.to >= to || lightKgf[press.to]! <= OVER_KGF) continue;
    for (let row = press.to; row < Math.min(press.to + rowsOf(PASSES_WITHIN_S), to); row++) {
      if (trace.depthM[row]! >= atM - PAST_M) continue;
      all.push({
        id: 'press-overshoots',
        from: press.from,
        to: row + 1,
        words: 'Presses that took you past the depth, twice',
      });
      break;
    }
  }
  return twice(all);
}

const CYCLE_M = 0.8;

/** Up and down: four errors of 0.8 m by turns in 90 s. */
export function upAndDown({ trace }: Evidence, { from, to, atM }: Hold): Found[] {
  const side = (row: number) => {
    const offM = trace.depthM[row]! - atM;
    return Math.abs(offM) < CYCLE_M ? 0 : Math.sign(offM);
  };
  const turned = alternating(from, to, side);
  return turned ? [{ id: 'up-and-down', ...turned, words: 'Up and down about the depth, four times' }] : [];
}

const OUTWARD_M = 0.7;
const OUTWARD_MPS = 2 / 60;
const BEFORE_S = 6;
const AFTER_S = 3;
const BREATH_M3 = 0.2e-3;

/** So far off, metres, with nothing done since the depth was left, once is enough. */
const FAR_M = 1.2;

/**
 * Late first action: the depth is left outward and neither button nor breath answers from 6 s before to 3 s after; twice, or once
 * where nothing answers until twice as far.
 */
export function lateFirstAction(evidence: Evidence, { from, to, atM }: Hold): Found[] {
  const { trace } = evidence;
  const all: Found[] = [];
  for (let row = from + 1; row < to - rowsOf(AFTER_S); row++) {
    const offM = trace.depthM[row]! - atM;
    const wasM = trace.depthM[row - 1]! - atM;
    if (Math.abs(offM) <= OUTWARD_M || Math.abs(wasM) > OUTWARD_M) continue;
    const deep = Math.sign(offM);
    if (trace.slowMps[row]! * deep <= OUTWARD_MPS) continue;
    const first = Math.max(from, row - rowsOf(BEFORE_S));
    const last = row + rowsOf(AFTER_S);
    if (answered(evidence, first, last, deep)) continue;
    const off = (at: number) => (trace.depthM[at]! - atM) * deep;
    let far = row;
    while (far < to - 1 && off(far) > OUTWARD_M && off(far) < FAR_M) far++;
    const id = 'late-first-action';
    if (off(far) >= FAR_M && !answered(evidence, first, far, deep))
      return [{ id, from: first, to: far, words: `The depth was left by ${FAR_M} m and nothing was done about it` }];
    all.push({ id, from: first, to: last, words: 'The depth was left and nothing was done about it, twice' });
  }
  return twice(all);
}

/** Whether a press or the breath goes against a drift, down 1 or up −1, between two rows. */
function answered({ presses, lungMeanM3, midLungM3 }: Evidence, first: number, last: number, deep: number): boolean {
  if (presses.some((press) => press.way === deep && press.from <= last && press.to >= first)) return true;
  for (let row = first; row <= last; row++) if ((lungMeanM3[row]! - midLungM3) * deep > BREATH_M3) return true;
  return false;
}

const OFF_M = 0.5;
const OFF_S = 20;
const STILL_SD_M3 = 0.12e-3;
const BREATHS_S = 8;
/** A breath that stays this far off its middle, m³, is in use, however little it changes. */
const AT_MIDDLE_M3 = 0.3e-3;

/** No use of breath: off the depth for 20 s in all, and the mean of the lungs over 8 s stays at its middle meanwhile. */
export function noBreath({ trace, midLungM3 }: Evidence, { from, to, atM }: Hold): Found[] {
  const mean = meanOver(trace.lungM3, rowsOf(BREATHS_S));
  let [count, sum, squares, first] = [0, 0, 0, -1];
  for (let row = from + rowsOf(BREATHS_S); row < to; row++) {
    if (Math.abs(trace.depthM[row]! - atM) <= OFF_M) continue;
    if (first < 0) first = row;
    count++;
    sum += mean[row]!;
    squares += mean[row]! * mean[row]!;
  }
  if (count < rowsOf(OFF_S)) return [];
  const variance = squares / count - (sum / count) ** 2;
  if (variance >= STILL_SD_M3 * STILL_SD_M3 || Math.abs(sum / count - midLungM3) > AT_MIDDLE_M3) return [];
  return [
    {
      id: 'no-breath',
      from: first,
      to,
      words: `${(count / rowsOf(1)).toFixed(0)} s off the depth, and the breath did nothing about it`,
    },
  ];
}

const LEFT_BANDS = 1.5;
const LEFT_S = 3;

/** Stop left early: one and a half bands above it for 3 s before its end. */
export function stopLeft({ trace }: Evidence, { from, to, atM, bandM, afterClimb }: Hold): Found[] {
  if (!afterClimb) return [];
  let since = -1;
  for (let row = from; row < to; row++) {
    if (trace.depthM[row]! >= atM - LEFT_BANDS * bandM) since = -1;
    else if (since < 0) since = row;
    else if (row - since >= rowsOf(LEFT_S))
      return [{ id: 'stop-left-early', from: since, to: row + 1, words: 'The stop was left before its end' }];
  }
  return [];
}
