import type { StageView } from './view.ts';

/** The view as it is of the diver whom the looks over the water are about. */
export function lookedAt(view: StageView): StageView {
  const { second } = view;
  if (!second?.looked) return view;
  const { rig, state, depthM, controls, recording } = second;
  return { ...view, rig, state, depthM, controls, recording };
}
