import type { Keep, MeetGoal } from './condition.ts';
import type { LessonEvent } from './happening.ts';
import type { FlyStep, Goal, Lesson, LessonStart, MarkTask, Step } from './lesson.ts';
import type { LessonLimits, MarkLimits } from './limits.ts';
import type { GivenLesson, GivenStep } from './lesson-schema.ts';
import type { PredictStep } from './predict.ts';
import type { GivenStart } from './start-schema.ts';
import type { GivenEvent, GivenGoal, GivenKeep } from './step-schema.ts';
import type { Flyer, Proof, ScriptChange } from './watch.ts';

/** A lesson with every key that was left out. Its rules have seen to it that what belongs together is there. */
export function completed(given: GivenLesson): Lesson {
  const start = startOf(given.start);
  const gauges = given.gauges ?? 'all';
  return {
    format: 1,
    id: given.id,
    title: given.title,
    minutes: given.minutes,
    phase: given.phase,
    paths: given.paths ?? ['self-study'],
    opens: given.opens ?? 'always',
    beliefs: given.beliefs ?? [],
    objective: given.objective,
    caution: given.caution,
    values: given.values ?? [],
    setup: { ready: given.setup.ready, changes: given.setup.changes ?? {} },
    start,
    steps: given.steps.map((step) => stepOf(step, start, gauges)),
    marks: given.marks.map(
      (mark) => ({ ...mark, fastAscentIsThePoint: mark.fastAscentIsThePoint ?? false }) as MarkTask,
    ),
    markLimits: limitsOf(given.markLimits),
    rightAtLeast: given.rightAtLeast ?? null,
    proof: (given.proof ?? []).map((one): Proof => ({ ...flyerOf(one), comes: one.comes, fault: one.fault ?? '' })),
    waterAdds: given.waterAdds,
  };
}

function limitsOf(given: GivenLesson['markLimits']): LessonLimits {
  if (!given) return null;
  const { why, ...change } = given;
  const stated = Object.entries(change).filter(([, value]) => value !== undefined);
  return { change: Object.fromEntries(stated) as Partial<MarkLimits>, why };
}

function startOf(given: GivenStart): LessonStart {
  const { depthM, jacketL, offNeutralL, wrongByL, speedMpmin = 0, pitchDeg = 0 } = given;
  if (given.place === 'afloat' || depthM === undefined) return { place: 'afloat', jacketL: jacketL ?? 0 };
  const gas =
    jacketL !== undefined
      ? { jacketL }
      : offNeutralL !== undefined
        ? { offNeutralL }
        : { wrongByL: [wrongByL?.[0] ?? 0, wrongByL?.[1] ?? 0] as const };
  return { place: 'under', depthM, gas, speedMpmin, pitchDeg };
}

function stepOf(step: GivenStep, start: LessonStart, gauges: FlyStep['gauges']): Step {
  if (step.kind === 'watch') {
    const { kind, id, title, text, freezes, moreLeadKg = 0, aimM = 0 } = step;
    const begins = step.start ? startOf(step.start) : start;
    return { kind, id, title, text, by: flyerOf(step), start: begins, moreLeadKg, aimM, freezes };
  }
  if (step.kind !== 'fly') return step.kind === 'predict' ? (step as PredictStep) : step;
  return {
    kind: 'fly',
    id: step.id,
    title: step.title,
    hint: step.hint,
    goal: goalOf(step.goal),
    limits: { upMpmin: step.limits?.upMpmin ?? null, downMpmin: step.limits?.downMpmin ?? null },
    keep: (step.keep ?? []).map(keepOf),
    events: (step.events ?? []).map(eventOf),
    gauges: step.gauges ?? gauges,
    hands: step.hands ?? [],
  };
}

function goalOf(goal: GivenGoal): Goal {
  if (goal.kind !== 'meet') return goal;
  const each = goal.each.map((one) => ({ ...rangeOf(one), do: one.do, forS: one.forS }) as MeetGoal['each'][number]);
  return { ...goal, each, order: goal.order ?? 'given' };
}

function keepOf(keep: GivenKeep): Keep {
  const { says } = keep;
  if (keep.do === 'presses') return { do: 'presses', most: keep.most ?? 0, longestS: keep.longestS ?? FOR_EVER, says };
  if (keep.do === 'lead-changes') return { do: keep.do, most: keep.most ?? 0, says };
  const range = rangeOf(keep);
  if (keep.do === 'before' || keep.do === 'after')
    return { do: keep.do, ...range, atS: keep.atS ?? 0, of: keep.of ?? 'step', says };
  return { do: keep.do, ...range, says };
}

function eventOf({ afterS, ...event }: GivenEvent): LessonEvent {
  return { ...event, afterS: [afterS[0] ?? 0, afterS[1] ?? 0] } as LessonEvent;
}

/** Limits that are open; JSON has no infinity. */
const FOR_EVER = 1e9;

function rangeOf(given: Pick<GivenKeep, 'what' | 'least' | 'most' | 'overS'>) {
  const { what = 'depthM', least = -FOR_EVER, most = FOR_EVER, overS = 0 } = given;
  return { what, least, most, overS };
}

function flyerOf({ pilot, script }: Pick<Extract<GivenStep, { kind: 'watch' }>, 'pilot' | 'script'>): Flyer {
  return pilot === undefined ? { script: (script ?? []) as readonly ScriptChange[] } : { pilot };
}
