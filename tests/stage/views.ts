import { Dive, midBreathCl, restingControls, startState } from '../../src/dive/index.ts';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import type { StageView } from '../../src/stage/index.ts';

export const rig = rigOf(firstDive as Setup);

/** A dive of the ready setup, ready to go on. */
export function diveAt(depthM: number, jacketM3 = 2e-3): Dive {
  return new Dive(rig, startState(rig, { depthM, jacketM3 }), restingControls(midBreathCl(rig)));
}

/** The view of a dive's first moment, with what a test wants otherwise. */
export function viewOf(wish: Partial<StageView> = {}): StageView {
  const dive = diveAt(wish.depthM ?? 8);
  return {
    rig,
    state: dive.state,
    depthM: dive.state.depthM,
    nowS: 0,
    controls: dive.controls,
    recording: dive.recording,
    changes: dive.changes,
    events: dive.events,
    forecastM: null,
    bands: [],
    rings: [],
    limits: { upMps: 0.15, downMps: 0.3 },
    limitTaught: false,
    frozen: false,
    metresShown: 5,
    forceArrow: true,
    projector: false,
    reducedMotion: false,
    theme: 'light',
    ...wish,
  };
}
