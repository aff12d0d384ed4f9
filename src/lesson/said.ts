import type { Rig } from '../diver/index.ts';
import { letterOf, type FanLine } from './fan.ts';
import { foreseen } from './foreseen.ts';
import { ROWS_PER_S } from './goal.ts';
import type { Lesson } from './lesson.ts';
import { outcomeOf } from './outcomes.ts';
import type { PredictStep } from './predict.ts';
import type { LockedAnswer } from './run.ts';
import { truthOf } from './truth.ts';

/** A locked prediction as depth over time, and what came of it in the words of the debrief. */
export interface SaidInWater {
  readonly fromS: number;
  readonly overS: number;
  /** The chosen line, metres, or the one depth that was said. */
  readonly depthsM: readonly number[];
  readonly words: string;
  /** What the model comes to: null where the dive itself shows it. */
  readonly came: { readonly depthsM: readonly number[]; readonly words: string } | null;
}

/** A question about another place than this is not drawn on the diver's line once he goes on, metres off. */
const THERE_M = 1;

/**
 * What was said of a motion, to be drawn on the line of the dive that goes on; null for what was passed over, or cannot be drawn.
 * @param thenM where the diver was
 * @param hands that were counted for it; 0: one person said it
 */
export function saidInWater(
  lesson: Lesson,
  rig: Rig,
  { id, answer, atRow }: LockedAnswer,
  thenM: number,
  hands: number,
): SaidInWater | null {
  const step = lesson.steps.find((one): one is PredictStep => one.kind === 'predict' && one.id === id);
  const drawn = step && answer !== null ? foreseen(lesson, rig, step) : null;
  if (!step || !drawn || Math.abs(drawn.fromM - thenM) > THERE_M) return null;
  const { overS, comesM, lines } = drawn;
  const fromS = atRow / ROWS_PER_S;
  const truth = truthOf(lesson, rig, step);
  if (typeof answer === 'number') {
    const { said, came, off } = outcomeOf(step, answer, truth, fromS);
    // The dive goes on under somebody's hands: what came is what was asked about.
    const words = off
      ? `you said ${said}; as asked it came to ${came}: ${off}`
      : `you said ${said}, and as asked it came so`;
    return { fromS, overS, depthsM: [answer], words: `you said ${said}`, came: { depthsM: comesM, words } };
  }
  const line = lines.find((one) => one.id === answer);
  const letter = letterOf(lines.findIndex((one) => one.id === truth));
  return (
    (line && {
      fromS,
      overS,
      depthsM: line.depthsM,
      words: saidWords(line, hands),
      came: { depthsM: comesM, words: `as asked it came to ${letter}` },
    }) ??
    null
  );
}

/** "you said B"; of a class that was counted "14 said B". */
export function saidWords({ letter }: FanLine, hands: number): string {
  return hands > 0 ? `${hands} said ${letter}` : `you said ${letter}`;
}
