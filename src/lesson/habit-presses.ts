import { HEAD_OUT_M } from '../diver/index.ts';
import { rowsOf } from './goal.ts';
import type { Evidence, Found, Press, Stretch } from './habit-evidence.ts';

/*
 * Habits of the hand and the fins, wherever in the dive. Limits are practice, settled on pilots of one half of the kits and tried
 * on the other.
 */

const MOVES_BELOW_M = 0.9;
const MOVES_S = 1.2;
const MOVES_KGF = 0.7;

/** Pressing until it moves: a press of 1.2 s that ends light, twice. */
export function untilItMoves({ trace, presses, lightKgf }: Evidence): Found[] {
  const all = presses.filter(
    ({ way, seconds, from, to }) =>
      way > 0 && seconds >= MOVES_S && trace.depthM[from]! > MOVES_BELOW_M && lightKgf[to]! > MOVES_KGF,
  );
  if (all.length < 2) return [];
  const words = `Gas for ${all[0]!.seconds.toFixed(1)} s at a time, until it was too much, twice`;
  return [{ id: 'presses-until-it-moves', from: all[0]!.from, to: all[1]!.to, words }];
}

const KICK_NS = 60;
const KICK_IN_S = 60;
const KICK_KGF = -0.1;

/** Kicking while heavy: 60 N s upward within a minute at a net force that fins alone carry; a head in the air is no weight of his. */
export function kicksWhileHeavy({ trace, lightKgf }: Evidence): Found[] {
  const kick = (row: number) =>
    row > 0 && trace.depthM[row]! >= HEAD_OUT_M && lightKgf[row]! < KICK_KGF
      ? trace.finsUpNs[row]! - trace.finsUpNs[row - 1]!
      : 0;
  let sum = 0;
  for (let row = 0; row < trace.rows; row++) {
    sum += kick(row);
    if (row >= rowsOf(KICK_IN_S)) sum -= kick(row - rowsOf(KICK_IN_S));
    if (sum < KICK_NS) continue;
    let from = Math.max(0, row - rowsOf(KICK_IN_S) + 1);
    while (kick(from) === 0) from++;
    return [{ id: 'kicks-while-heavy', from, to: row + 1, words: 'Fins held you up while you were heavy' }];
  }
  return [];
}

const WRONG_S = 0.2;
const WRONG_OFF_M = 0.3;

/** The wrong button: a press that makes it worse, plainly, twice. */
export function wrongWay(evidence: Evidence): Found[] {
  const all = evidence.presses.filter((press) => {
    const stretch = evidence.stretches.find(({ from, to }) => press.from >= from && press.from < to);
    return stretch !== undefined && press.seconds >= WRONG_S - 1e-9 && isWrong(evidence, press, stretch);
  });
  if (all.length < 2) return [];
  const words = 'A press that drove you further the way you were already going, twice';
  return [{ id: 'wrong-way', from: all[0]!.from, to: all[1]!.to, words }];
}

function isWrong({ trace, lightKgf }: Evidence, { way, from }: Press, stretch: Stretch): boolean {
  const upMpmin = -trace.speedMps[from]! * 60;
  const kgf = lightKgf[from]!;
  switch (stretch.kind) {
    case 'hold':
      return way * (stretch.atM - trace.depthM[from]!) > WRONG_OFF_M && way * upMpmin > 3 && way * kgf > 0.2;
    case 'climb':
      return way > 0 ? upMpmin > 11 && kgf > 0.3 : upMpmin < -2 && kgf < -0.3;
    case 'descent':
      return way < 0 && upMpmin < -18 && kgf < -0.5;
  }
}
