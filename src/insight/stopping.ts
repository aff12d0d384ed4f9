import type { Rig } from '../diver/index.ts';
import { copyState, type Controls, type DiveState } from '../dive/index.ts';
import { USUAL_ASK, USUAL_STEPS, attemptOf, steadyNetN, tryOut, type Stopping, type StoppingAsk } from './attempt.ts';
import { MEANS, type Means, type Way } from './means.ts';

/** What all means come to. */
export interface StoppingForecast {
  readonly way: Way;
  /** The gentlest first; letting lead go is left out for who rises. */
  readonly rows: readonly Stopping[];
  /** What a second of delay costs with the gentlest means that stops him, metres further; null where none is needed, or a second later it does not. */
  readonly pricePerSecondM: number | null;
}

/** Slower than this a diver counts as still, and the force decides which way he is going, m/s: 1.2 m/min. Chosen. */
const STILL_MPS = 0.02;

/** Which way a diver is going: by speed, or, when still, by the force in the middle of the breath. */
export function wayOf(rig: Rig, state: Readonly<DiveState>, controls: Controls): Way {
  if (Math.abs(state.speedMps) > STILL_MPS) return state.speedMps > 0 ? 1 : -1;
  return steadyNetN(rig, state, controls, false) < 0 ? 1 : -1;
}

/**
 * What all means come to from a moment.
 * @param way left out: the way the diver is going
 */
export function stopping(
  rig: Rig,
  state: Readonly<DiveState>,
  controls: Controls,
  ask: StoppingAsk = USUAL_ASK,
  way = wayOf(rig, state, controls),
): StoppingForecast {
  const scratch = copyState(state);
  const come = (means: Means, given = ask) =>
    tryOut(rig, state, attemptOf(means, way, rig, controls, given), scratch, USUAL_STEPS);
  const rows = MEANS.filter((means) => means !== 'lead' || way > 0).map((means) => come(means));
  const first = rows.find(({ stops }) => stops);
  let pricePerSecondM: number | null = null;
  if (first && first.means !== 'none' && first.depthM !== null) {
    const later = come(first.means, { ...ask, reactionS: ask.reactionS + 1 });
    if (later.depthM !== null) pricePerSecondM = way * (later.depthM - first.depthM);
  }
  return { way, rows, pricePerSecondM };
}
