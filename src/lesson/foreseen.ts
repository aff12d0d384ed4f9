import type { Rig } from '../diver/index.ts';
import { floatingDepthM } from '../dive/index.ts';
import { lessonStart } from './begin.ts';
import { FAN_DOTS, fanOf, mirroredEnds, rankedEnds, type FanEnd, type FanLine, type Leads } from './fan.ts';
import type { Lesson } from './lesson.ts';
import type { PredictStep } from './predict.ts';
import { truthOf } from './truth.ts';
import { AFLOAT_S, LET_GO_S, handsOffM, letGoM } from './truth-float.ts';
import { BREATH_S, breathLineM, driftLineM } from './truth-motion.ts';

/** What a question about a motion looks like in the water: from where, for how long, and where each answer leads. */
export interface Foreseen {
  readonly fromM: number;
  readonly overS: number;
  /** One for each answer; none where a depth is to be said. */
  readonly lines: readonly FanLine[];
  /** Depths that the model comes to: at the beginning, and at the moment of each dot of a fan, metres. */
  readonly comesM: readonly number[];
}

/** How far a diver is pushed by whoever asks whether he comes back, upward, metres, and how long it is looked at, seconds. */
const PUSHED_M = 0.3;
const PUSHED_S = 20;
/** A head that goes under, and a diver who sinks, are drawn so much deeper than one who floats, metres. */
const LOWER_M = 0.5;
const SUNK_M = 2;

/** A question as it is drawn in the water; null where it is not about where the diver is at a moment, and so cannot be drawn. */
export function foreseen(lesson: Lesson, rig: Rig, step: PredictStep): Foreseen | null {
  const { topic, atM = 0, byM = 0, offL = 0, afterS = 0 } = step;
  if (topic === 'drift-leads') return place(driftLineM(rig, atM, byM, offL * 1e-3, afterS, FAN_DOTS), afterS);
  if (step.shape !== 'choice') return null;
  const truth = String(truthOf(lesson, rig, step));
  if (topic === 'deep-breath') {
    const comesM = breathLineM(rig, atM, undefined, FAN_DOTS);
    const way = [goes('up', -1), goes('down', 1), goes('nothing', { toM: atM })];
    return fan(step, comesM, BREATH_S, mirroredEnds(atM, way, truth, last(comesM)));
  }
  if (topic === 'comes-back') {
    const comesM = driftLineM(rig, atM, -PUSHED_M, 0, PUSHED_S, FAN_DOTS);
    const way = [goes('comes-back', { toM: atM }), goes('runs-away', -1)];
    return fan(step, comesM, PUSHED_S, mirroredEnds(comesM[0]!, way, truth, last(comesM)));
  }
  if (topic === 'floats-hands-off') {
    const comesM = tenths(lessonStart(lesson, rig).depthM, handsOffM(lesson, rig));
    return fan(step, comesM, AFLOAT_S, afloatEnds(['stays-clear', 'goes-under', 'sinks'], comesM, truth));
  }
  if (topic === 'lead-let-go') {
    const comesM = tenths(floatingDepthM(rig, 0), letGoM(lesson, rig));
    return fan(step, comesM, LET_GO_S, afloatEnds(['floats-clear', 'floats-low', 'sinks'], comesM, truth));
  }
  return null;
}

const last = (line: readonly number[]): number => line[line.length - 1]!;
const goes = (id: string, goes: Leads['goes']): Leads => ({ id, goes });

function place(comesM: readonly number[], overS: number): Foreseen {
  return { fromM: comesM[0]!, overS, lines: [], comesM };
}

/** The lines in the order of the answers, whatever order their ends were found in. */
function fan(
  { options }: Extract<PredictStep, { shape: 'choice' }>,
  comesM: readonly number[],
  overS: number,
  ends: readonly FanEnd[],
): Foreseen {
  const fromM = comesM[0]!;
  const ordered = options.map(({ id }) => ends.find((end) => end.id === id) ?? { id, endM: fromM });
  return { fromM, overS, lines: fanOf(fromM, ordered), comesM };
}

/** Depths at the ends of equal parts of a time whose depths are known at each tenth of a second. */
function tenths(fromM: number, depthsM: readonly number[]): number[] {
  const at = (part: number) => depthsM[Math.round((depthsM.length * part) / FAN_DOTS) - 1]!;
  return [fromM, ...Array.from({ length: FAN_DOTS }, (_, i) => at(i + 1))];
}

/** Where a diver at the surface is in the end: floating, lower, or on his way down. */
function afloatEnds(ids: readonly string[], comesM: readonly number[], truth: string) {
  const believed = [0, LOWER_M, SUNK_M].map((lowerM, i) => ({ id: ids[i]!, endM: comesM[0]! + lowerM }));
  return rankedEnds(believed, truth, last(comesM));
}
