import type { Rig } from '../diver/index.ts';
import { Dive, TICKS_PER_CHANGE, TICKS_PER_S, startState, type DiveEvent, type DiveState } from '../dive/index.ts';
import type { PilotName, Task } from '../pilot/index.ts';
import { lessonStart } from './begin.ts';
import { meddled } from './happening.ts';
import { judgeLesson } from './judge.ts';
import type { MeetGoal } from './condition.ts';
import type { Lesson } from './lesson.ts';
import type { LessonResult } from './mark.ts';
import type { LessonRun } from './run.ts';
import { advanceLesson, answerPrompt, beginLesson, promptOf } from './runner.ts';
import { flyerOf } from './script.ts';
import { begunSteps, flySteps } from './steps.ts';
import type { Flyer } from './watch.ts';

/** No lesson takes longer, seconds: a file that would is a mistake. */
const LONGEST_S = 3600;

export interface FlownLesson extends LessonResult {
  readonly run: LessonRun;
  readonly events: readonly DiveEvent[];
  readonly dive: Dive;
}

/** A piece of a dive that is flown between two breaths of a page, seconds: well under a millisecond of work. */
const PIECE_S = 5;

/**
 * Flies a lesson without a screen: the pilot passes predictions over, decides twenty times a second, and the dive ends when
 * nothing is left to fly. The same lesson, rig, pilot and seed give the same bits.
 */
export function flyLesson(lesson: Lesson, rig: Rig, by: PilotName | Flyer, seed: number): FlownLesson {
  const flying = flyingLesson(lesson, rig, by, seed);
  for (;;) {
    const next = flying.next();
    if (next.done) return next.value;
  }
}

/**
 * The same a piece at a time, for whoever must not be kept waiting.
 * @param start the state that the dive begins in; left out: the lesson's start, its chance from the seed
 */
export function* flyingLesson(
  lesson: Lesson,
  rig: Rig,
  by: PilotName | Flyer,
  seed: number,
  start: DiveState = startState(rig, lessonStart(lesson, rig, seed)),
): Generator<void, FlownLesson> {
  const pilot = flyerOf(typeof by === 'string' ? { pilot: by } : by, rig, seed);
  const dive = new Dive(rig, start);
  // Most lessons let nothing go wrong, and looking for it twenty times a second costs more than the dive.
  const eventful = flySteps(lesson).some(({ events }) => events.length > 0);
  let run = beginLesson(lesson);
  for (;;) {
    while (promptOf(lesson, run)) run = answerPrompt(lesson, run, null);
    const before = run;
    run = advanceLesson(lesson, run, dive.recording);
    if (run.ended !== null || dive.tick > LONGEST_S * TICKS_PER_S) break;
    // A question came up on this row: pass it over before deciding.
    if (run !== before && promptOf(lesson, run)) continue;
    const wanted = pilot.decide(dive.state, taskOf(lesson, run));
    dive.steer(eventful ? meddled(begunSteps(lesson, run), rig, dive.recording, wanted, dive.state) : wanted);
    dive.advance(TICKS_PER_CHANGE);
    if (dive.tick % (PIECE_S * TICKS_PER_S) === 0) yield;
  }
  return { ...judgeLesson(lesson, run, dive), run, events: dive.events, dive };
}

/** What the step that is flown now asks of a pilot. */
export function taskOf(lesson: Lesson, run: LessonRun): Task {
  const step = lesson.steps[run.step];
  if (step?.kind !== 'fly') return { kind: 'float' };
  const { goal } = step;
  if (goal.kind === 'travel') return { kind: 'travel', depthM: goal.toM };
  if (goal.kind === 'hold') return { kind: 'hold', depthM: goal.atM };
  if (goal.kind === 'meet')
    return goal.aimM > 0 ? { kind: 'hold', depthM: goal.aimM, ...asked(goal, run) } : { kind: 'surface' };
  return run.phases.length > 1 || lesson.start.place === 'under' ? { kind: 'surface' } : { kind: 'float' };
}

/** So far into the range of an attitude that is asked for a pilot turns, degrees. */
const INTO_DEG = 5;

/** The attitude that is the next thing to be met. */
function asked({ each }: MeetGoal, run: LessonRun): { readonly pitchDeg?: number } {
  const met = run.phases[run.phases.length - 1]?.each ?? [];
  const next = each.find((_, i) => met[i]?.metRow === null);
  if (next?.what !== 'pitchDeg') return {};
  return { pitchDeg: next.least > -180 ? next.least + INTO_DEG : next.most - INTO_DEG };
}
