import { HEAD_OUT_M } from '../diver/index.ts';
import { ascentMark } from './ascent-mark.ts';
import { stepDemands } from './demands.ts';
import { descentMark } from './descent-mark.ts';
import { findHabits, habitOf } from './find-habits.ts';
import { rowsOf, windowEndRow } from './goal.ts';
import type { Found } from './habit-evidence.ts';
import { breathHabit, heldBreaths, type BreathHeld } from './habits.ts';
import { hoverMark } from './hover-mark.ts';
import type { Lesson, MarkTask } from './lesson.ts';
import { ascentTaskOf, holdOf } from './mark-tasks.ts';
import { markLimits, type MarkLimits } from './limits.ts';
import type { LessonResult, Mark } from './mark.ts';
import { notReached } from './mark-sum.ts';
import type { LessonRun } from './run.ts';
import { flySteps } from './steps.ts';
import { traceOf, type Flown, type Trace } from './trace.ts';
import { missedWords } from './view.ts';
import { plain } from './words.ts';

/**
 * Marks, habits and verdict of a flown lesson, from its recorded rows alone: the same for every frame rate and after replay.
 * pass: every criterion of every mark is met, all that steps asked for was kept and nothing was missed; error: it was not flown
 * to its end.
 */
export function judgeLesson(
  lesson: Lesson,
  run: LessonRun,
  flown: Flown,
  limits = markLimits(lesson.markLimits?.change ?? {}),
): LessonResult {
  const trace = traceOf(flown);
  const breaths = heldBreaths(flown.rig, trace);
  const marks = lesson.marks.map((task) => markOf(lesson, run, task, fairly(lesson, task, trace), breaths, limits));
  const capping = [...breaths.map(breathHabit), ...shots(lesson, run, trace, limits)].map(habitOf);
  const habits = [...capping, ...findHabits(lesson, run, flown, trace)];
  const missed = run.ended === 'late' ? missedWords(lesson, run) : null;
  const demands = stepDemands(lesson, run);
  if (run.ended === null)
    return { verdict: 'error', marks, demands, habits, missed: 'The lesson was not flown to its end' };
  const kept = run.ended === 'flown' && demands.every(({ met }) => met);
  const pass = kept && marks.every(({ ok, score }) => ok && score > 0);
  return { verdict: pass ? 'pass' : 'fail', marks, demands, habits, missed };
}

/** The trace without lead that was let go, where that is part of the task. */
function fairly(lesson: Lesson, { fastAscentIsThePoint }: MarkTask, trace: Trace): Trace {
  const meant =
    fastAscentIsThePoint || flySteps(lesson).some(({ events }) => events.some(({ kind }) => kind === 'lead-lost'));
  return meant ? { ...trace, leadRow: null } : trace;
}

function markOf(
  lesson: Lesson,
  run: LessonRun,
  task: MarkTask,
  trace: Trace,
  breaths: readonly BreathHeld[],
  limits: MarkLimits,
): Mark {
  const { goal, reachedRow } = holdOf(lesson, run, task.hold);
  if (reachedRow === null) return notReached(task.mark, `${plain(goal.atM)} m was not reached in time.`);
  if (task.mark === 'hover') return hoverMark(trace, goal, reachedRow, breaths, limits);
  if (task.mark === 'ascent')
    return ascentMark(trace, ascentTaskOf(lesson, run, task, goal, reachedRow), breaths, limits);
  const fromRow = run.phases.find(({ id }) => id === task.travel)?.fromRow ?? reachedRow;
  return descentMark(trace, fromRow, goal, reachedRow, breaths, limits);
}

/** Heads that came out too fast, or before the end of a stop. */
function shots(lesson: Lesson, run: LessonRun, trace: Trace, { fastMpmin }: MarkLimits): Found[] {
  const found: Found[] = [];
  for (const task of lesson.marks) {
    if (task.mark !== 'ascent' || task.fastAscentIsThePoint) continue;
    const phase = run.phases.find(({ id }) => id === task.travel);
    if (!phase) continue;
    const { goal, reachedRow } = holdOf(lesson, run, task.hold);
    const stopEnd = reachedRow === null ? trace.rows : windowEndRow(goal, reachedRow);
    for (let row = phase.fromRow + 1; row < trace.rows; row++) {
      if (trace.depthM[row]! >= HEAD_OUT_M || trace.depthM[row - 1]! < HEAD_OUT_M) continue;
      const mpmin = -trace.slowMps[row]! * 60;
      if (mpmin <= fastMpmin && row >= stopEnd) continue;
      const words =
        row < stopEnd ? "At the surface before the stop's end" : `At the surface at ${mpmin.toFixed(0)} m/min`;
      found.push({ id: 'shot-to-the-surface', from: Math.max(0, row - rowsOf(3)), to: row, words });
    }
  }
  return found;
}
