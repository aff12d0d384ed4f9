import type { Rig } from '../diver/index.ts';
import { Dive, TICKS_PER_CHANGE, TICKS_PER_S, startState, type DiveEvent } from '../dive/index.ts';
import { pilotOf, type PilotName, type Task } from '../pilot/index.ts';
import { lessonStart } from './begin.ts';
import { judgeLesson } from './judge.ts';
import type { Lesson } from './lesson.ts';
import type { LessonResult } from './mark.ts';
import type { LessonRun } from './run.ts';
import { advanceLesson, answerPrompt, beginLesson, promptOf } from './runner.ts';

/** No lesson takes longer, seconds: a file that would is a mistake. */
const LONGEST_S = 3600;

export interface FlownLesson extends LessonResult {
  readonly run: LessonRun;
  readonly events: readonly DiveEvent[];
  readonly dive: Dive;
}

/**
 * Flies a lesson without a screen: the pilot passes predictions over, decides twenty times a second, and the dive ends when
 * nothing is left to fly. The same lesson, rig, pilot and seed give the same bits.
 */
export function flyLesson(lesson: Lesson, rig: Rig, pilotName: PilotName, seed: number): FlownLesson {
  const pilot = pilotOf(pilotName, rig, seed);
  const dive = new Dive(rig, startState(rig, lessonStart(lesson, rig)));
  let run = beginLesson(lesson);
  for (;;) {
    while (promptOf(lesson, run)) run = answerPrompt(lesson, run, null);
    const before = run;
    run = advanceLesson(lesson, run, dive.recording);
    if (run.ended !== null || dive.tick > LONGEST_S * TICKS_PER_S) break;
    // A question came up on this row: pass it over before deciding.
    if (run !== before && promptOf(lesson, run)) continue;
    dive.steer(pilot.decide(dive.state, taskOf(lesson, run)));
    dive.advance(TICKS_PER_CHANGE);
  }
  return { ...judgeLesson(lesson, run, dive), run, events: dive.events, dive };
}

/** What the step that is flown now asks of a pilot. */
function taskOf(lesson: Lesson, run: LessonRun): Task {
  const step = lesson.steps[run.step];
  if (step?.kind !== 'fly') return { kind: 'float' };
  const { goal } = step;
  if (goal.kind === 'travel') return { kind: 'travel', depthM: goal.toM };
  if (goal.kind === 'hold') return { kind: 'hold', depthM: goal.atM };
  return run.phases.length > 1 || lesson.start.place === 'under' ? { kind: 'surface' } : { kind: 'float' };
}
