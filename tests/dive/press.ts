import {
  advance,
  restingControls,
  startState,
  type Controls,
  type DiveEvent,
  type Start,
} from '../../src/dive/index.ts';
import type { Rig } from '../../src/diver/index.ts';

/** Nothing pressed, the lungs held open at 3.2 L. */
export const STILL: Controls = { ...restingControls(320), breath: 1 };

/** Before and after a time of one press, locked in an attitude. */
export function during(rig: Rig, start: Start, press: Partial<Controls>, ticks: number) {
  const state = startState(rig, start);
  const before = { ...state, cylinderMol: [...state.cylinderMol] };
  const events: DiveEvent[] = [];
  advance(rig, state, { ...STILL, ...press }, ticks, events, true);
  return { before, after: state, events };
}
