import { flyLesson, viewLesson } from '../../src/lesson/index.ts';
import { traceKinds } from '../../src/panels/trace-kinds.ts';
import type { TracesView } from '../../src/panels/trace-view.ts';
import { firstDive, firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';

/** A lesson flown to its end by a simulated diver, as the panel of traces gets it. */
export function flownView(pilot: 'steady' | 'random' = 'steady', seed = 1): TracesView {
  const { run, dive, events } = flyLesson(firstDive, rig, pilot, seed);
  return {
    recording: dive.recording,
    kinds: traceKinds(rig),
    bands: viewLesson(firstDive, run, dive.recording).bands,
    limits: [{ fromS: 0, limits: { upMps: 9 / 60, downMps: 18 / 60 } }],
    events,
    chosen: ['depth', 'speed', 'force', 'jacket'],
    units: 'metric',
    theme: 'light',
    projector: false,
    shownAtS: null,
  };
}
