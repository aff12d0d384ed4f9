import { netForceN, type Rig } from '../diver/index.ts';
import type { Controls, DiveState } from '../dive/index.ts';
import { Forecast } from './forecast.ts';
import { heldBy } from './means.ts';
import { neutralDepths, type NeutralDepth } from './neutral.ts';
import { breathReach, breathReachAt } from './reach.ts';
import { steepnessAt, type Steepness } from './steepness.ts';
import { USUAL_ASK, type StoppingAsk } from './attempt.ts';
import { stopping, type StoppingForecast } from './stopping.ts';

/** What a state means. Forces in newtons, up positive; depths in metres, down positive. */
export interface Insight {
  readonly netN: number;
  /** Neutral depths for the lungs of the moment, and for the middle of the breath, full and empty lungs of the range asked for. */
  readonly neutral: readonly NeutralDepth[];
  readonly neutralMid: readonly NeutralDepth[];
  readonly neutralFull: readonly NeutralDepth[];
  readonly neutralEmpty: readonly NeutralDepth[];
  readonly steepness: Steepness;
  /** Depths that lungs alone can balance: the stretch about the diver, or the nearest; and all of them. */
  readonly reachM: readonly [number, number] | null;
  readonly reaches: readonly (readonly [number, number])[];
  readonly stopping: StoppingForecast;
  /** Depths now and after each of the next ten seconds if nothing is done. */
  readonly forecastM: readonly number[];
}

/** All that a state means at once. */
export function insightOf(
  rig: Rig,
  state: Readonly<DiveState>,
  controls: Controls,
  ask: StoppingAsk = USUAL_ASK,
): Insight {
  return {
    netN: netForceN(rig, state),
    neutral: neutralDepths(rig, state),
    neutralMid: neutralDepths(rig, state, heldBy(rig, controls.lungCl * 1e-5)),
    neutralFull: neutralDepths(rig, state, heldBy(rig, ask.lungs.mostM3)),
    neutralEmpty: neutralDepths(rig, state, heldBy(rig, ask.lungs.leastM3)),
    steepness: steepnessAt(rig, state, controls.breath === 2),
    reachM: breathReachAt(rig, state, ask.lungs),
    reaches: breathReach(rig, state, ask.lungs),
    stopping: stopping(rig, state, controls, ask),
    forecastM: new Forecast(rig).depthsM(state, controls),
  };
}
