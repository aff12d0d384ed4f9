import { HEAD_CLEAR_M, type Rig } from '../diver/index.ts';
import { TICKS_PER_S, advance, midBreathCl, restingControls, startState, type Controls } from '../dive/index.ts';
import { lessonStart } from './begin.ts';
import { releasableMask } from './happening.ts';
import type { Lesson } from './lesson.ts';

/* What comes of a diver at the surface, by flying the full model. */

/** Under this depth, metres, the head is covered even at the top of a breath. */
const COVERED_M = 0.7;
const SINKS_M = 1.5;
/** How long somebody waits to see whether he sinks, and whether he stays afloat, seconds. */
const WAITS_S = 30;
export const AFLOAT_S = 10;
export const LET_GO_S = 20;

/** Ten seconds from the start without a press. */
export function handsOffOutcome(lesson: Lesson, rig: Rig): string {
  const depths = handsOffM(lesson, rig);
  if (depths.some((depth) => depth > SINKS_M)) return 'sinks';
  return depths.some((depth) => depth >= HEAD_CLEAR_M) ? 'goes-under' : 'stays-clear';
}

/** The depths of these ten seconds, one for each tenth of a second, metres. */
export function handsOffM(lesson: Lesson, rig: Rig): readonly number[] {
  return depthsM(lesson, rig, {}, AFLOAT_S);
}

/** The least that takes the head under from the start. */
export function leastThatSinks(lesson: Lesson, rig: Rig): string {
  const out: Partial<Controls> = { breath: 1, lungCl: Math.floor(rig.lungs.residualM3 * 1e5) + 20 };
  const vent: Partial<Controls> = { jacketVent: 1 };
  const sinks = (...what: Partial<Controls>[]) =>
    depthsM(lesson, rig, Object.assign({}, ...what) as Partial<Controls>, WAITS_S).some((depth) => depth > COVERED_M);
  if (sinks(out)) return 'breath';
  if (sinks(vent)) return 'gas';
  return sinks(out, vent) ? 'both' : 'nothing';
}

/** Depths at each tenth of a second from the lesson's start, held upright under unchanging controls, metres. */
function depthsM(lesson: Lesson, rig: Rig, controls: Partial<Controls>, seconds: number): number[] {
  const state = startState(rig, lessonStart(lesson, rig));
  const steady: Controls = { ...restingControls(midBreathCl(rig)), pitchDeg: 90, ...controls };
  return Array.from({ length: seconds * 10 }, () => {
    advance(rig, state, steady, TICKS_PER_S / 10);
    return state.depthM;
  });
}

/** His depths meanwhile, one for each tenth of a second, metres. */
export function letGoM(lesson: Lesson, rig: Rig): readonly number[] {
  const afloat = { ...lesson, start: { place: 'afloat', jacketL: 0 } } as const;
  return depthsM(afloat, rig, { releaseMask: releasableMask(rig) }, LET_GO_S);
}

/** Where all lead that can be let go leaves a diver who floats with an empty jacket, after 20 s. */
export function leadLetGo(lesson: Lesson, rig: Rig): string {
  const depths = letGoM(lesson, rig).slice(-60);
  if (depths.some((depth) => depth > COVERED_M)) return 'sinks';
  return depths.some((depth) => depth >= HEAD_CLEAR_M) ? 'floats-low' : 'floats-clear';
}
