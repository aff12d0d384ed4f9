import { nearest } from '../diver/file.ts';
import { eventRules, flyerRules, goalRules, keepRules, startRules, type DetailBreak } from './detail-rules.ts';
import type { GivenLesson, GivenStep } from './lesson-schema.ts';
import { limitRules } from './limit-rules.ts';

type Path = readonly (string | number)[];

/** A break of a rule that joins several places of a lesson. */
export interface LessonBreak {
  readonly at: Path;
  readonly found: string;
  readonly allowed: string;
  readonly suggestion: string;
}

/** Rules about the whole lesson, once every key of it is sound by itself. */
export function lessonRules(lesson: GivenLesson): LessonBreak[] {
  return [
    ...under(['start'], startRules(lesson.start)),
    ...orderRules(lesson.steps),
    ...lesson.steps.flatMap((step, i) => stepRules(step, ['steps', i])),
    ...markRules(lesson),
    ...limitRules(lesson),
    ...proofRules(lesson),
  ];
}

/** Breaks of a part of the lesson, with where that part stands. */
function under(place: Path, breaks: readonly DetailBreak[]): LessonBreak[] {
  return breaks.map(({ at, ...rest }) => ({ at: [...place, ...at], ...rest }));
}

function stepRules(step: GivenStep, place: Path): LessonBreak[] {
  if (step.kind === 'watch') {
    const start = step.start ? under([...place, 'start'], startRules(step.start)) : [];
    return [...under(place, flyerRules(step)), ...start];
  }
  if (step.kind !== 'fly') return [];
  const { goal, keep = [], events = [] } = step;
  return [
    ...under([...place, 'goal'], goalRules(goal)),
    ...keep.flatMap((one, i) => under([...place, 'keep', i], keepRules(one, events.length > 0))),
    ...events.flatMap((event, i) => under([...place, 'events', i], eventRules(event))),
  ];
}

/** Faults that no mark and no step of a lesson bears the name of. */
const HABITS = ['breath-held-while-rising', 'shot-to-the-surface'];

function proofRules({ proof = [], marks, steps }: GivenLesson): LessonBreak[] {
  const flown = steps.flatMap((step) => (step.kind === 'fly' ? [step.id] : []));
  const known = [...marks.map(({ mark }) => mark), ...flown, ...HABITS];
  return proof.flatMap((one, i) => {
    const broken = under(['proof', i], flyerRules(one));
    const { fault } = one;
    if (fault === undefined || (one.comes === 'fail' && known.includes(fault))) return broken;
    const near = nearest(fault, known) ?? known[0];
    const suggestion = one.comes === 'pass' ? 'Delete fault: who passes has none' : `Write ${near}`;
    return [
      ...broken,
      {
        at: ['proof', i, 'fault'],
        found: one.comes === 'pass' ? 'fault with comes: pass' : fault,
        allowed: `with comes: fail one of ${known.join(', ')}`,
        suggestion,
      },
    ];
  });
}

function orderRules(steps: readonly GivenStep[]): LessonBreak[] {
  const broken: LessonBreak[] = [];
  const last = steps.map(({ kind }) => kind).lastIndexOf('fly');
  if (last < 0)
    broken.push({
      at: ['steps'],
      found: 'nothing to fly',
      allowed: 'at least one step of kind fly',
      suggestion: 'Add a step of kind fly',
    });
  steps.forEach((step, i) => {
    const first = steps.findIndex(({ id }) => id === step.id);
    if (first < i)
      broken.push({
        at: ['steps', i, 'id'],
        found: `${step.id}, as in step ${first + 1}`,
        allowed: 'a different id for each step',
        suggestion: `Rename it`,
      });
    if (last >= 0 && (step.kind === 'ask') !== i > last)
      broken.push({
        at: ['steps', i, 'kind'],
        found: `${step.kind} ${i > last ? 'after' : 'before'} the last step that is flown`,
        allowed: 'questions of kind ask at the end, everything else before',
        suggestion: i > last ? 'Move it up, or make it ask' : 'Move it to the end, or make it predict',
      });
  });
  return broken;
}

/** Steps that each mark needs: key, kind of goal, and their order. */
const NEEDS = {
  descent: [
    ['travel', 'travel'],
    ['hold', 'hold'],
  ],
  hover: [['hold', 'hold']],
  ascent: [
    ['travel', 'travel'],
    ['hold', 'hold'],
    ['surface', 'float'],
  ],
} as const;

function markRules({ marks, steps }: GivenLesson): LessonBreak[] {
  const broken: LessonBreak[] = [];
  marks.forEach((mark, m) => {
    const needs = NEEDS[mark.mark];
    const say = (key: string, found: string, allowed: string, suggestion: string) =>
      broken.push({ at: ['marks', m, key], found, allowed, suggestion });
    if (marks.findIndex((other) => other.mark === mark.mark) < m)
      say('mark', `${mark.mark} twice`, 'each mark once', 'Delete one of them');
    for (const key of ['travel', 'surface'] as const)
      if (mark[key] !== undefined && !needs.some(([needed]) => needed === key))
        say(
          key,
          `${key} with ${mark.mark}`,
          `with ${mark.mark} the keys ${needs.map(([k]) => k).join(', ')}`,
          `Delete ${key}`,
        );
    let before = -1;
    for (const [key, kind] of needs) {
      const id = mark[key];
      const at = steps.findIndex((step) => step.id === id);
      const step = steps[at];
      const fitting = steps.filter((one) => one.kind === 'fly' && one.goal.kind === kind).map((one) => one.id);
      const allowed = `the id of a flown step with goal ${kind}${fitting.length > 0 ? `: ${fitting.join(', ')}` : ''}`;
      const near = (id === undefined ? undefined : nearest(id, fitting)) ?? fitting[0];
      if (step?.kind !== 'fly' || step.goal.kind !== kind)
        say(
          key,
          id ?? `no ${key}`,
          allowed,
          near === undefined ? `Add a flown step with goal ${kind}` : `Write ${near}`,
        );
      else if (at < before)
        say(key, `${id}, which is flown earlier`, 'steps in the order in which they are flown', 'Change the order');
      before = Math.max(before, at);
    }
  });
  return broken;
}
