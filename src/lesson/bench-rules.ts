import { nearest } from '../diver/file.ts';
import { HANDS_DO } from './bench-lesson.ts';
import { benchPredictRules } from './bench-predict-rules.ts';
import type { GivenBenchLesson, GivenBenchStep } from './bench-schema.ts';
import { keyRules, rangeRules, type DetailBreak } from './detail-rules.ts';
import type { LessonBreak } from './lesson-rules.ts';

/** Rules about a whole lesson of the bench, once every key of it is sound by itself. */
export function benchLessonRules(lesson: GivenBenchLesson): LessonBreak[] {
  return [
    ...sceneRules(lesson),
    ...orderRules(lesson.steps),
    ...lesson.steps.flatMap((step, i) => under(['steps', i], stepRules(step, lesson))),
    ...proofRules(lesson),
  ];
}

type Path = readonly (string | number)[];

function under(place: Path, breaks: readonly DetailBreak[]): LessonBreak[] {
  return breaks.map(({ at, ...rest }) => ({ at: [...place, ...at], ...rest }));
}

const SCENE_KEYS = ['set', 'water', 'massKg', 'material', 'widthMm', 'heightMm'];
/** What can be other than usual in each set. */
const SET_KEYS: Readonly<Record<string, readonly string[]>> = {
  putty: ['massKg'],
  stones: [],
  stuffs: [],
  'odd-stone': ['massKg', 'material'],
  can: ['widthMm', 'heightMm'],
  block: ['material', 'widthMm', 'heightMm'],
};

function sceneRules({ bench }: GivenBenchLesson): LessonBreak[] {
  if (bench.mode !== 'tank') return under(['bench'], keyRules(bench, `mode ${bench.mode}`, [], [], SCENE_KEYS));
  const may = ['water', ...(SET_KEYS[bench.set ?? ''] ?? [])];
  return under(['bench'], keyRules(bench, `set ${bench.set ?? 'left out'}`, ['set'], may, SCENE_KEYS));
}

/** Readings of a column, and those of both. */
const COLUMN_READS = ['depthM', 'gasL', 'squeezeKPa'];
const BOTH_READ = ['held', 'speedMps', 'netN'];

function stepRules(step: GivenBenchStep, { bench }: GivenBenchLesson): DetailBreak[] {
  if (step.kind === 'predict') return benchPredictRules(step, bench.mode === 'tank' ? bench.set : bench.mode);
  if (step.kind !== 'try') return [];
  return step.each.flatMap(({ all }, i) =>
    all.flatMap((range, k) => {
      const inColumn = bench.mode !== 'tank';
      const fits = BOTH_READ.includes(range.what) || COLUMN_READS.includes(range.what) === inColumn;
      const misplaced: DetailBreak = {
        at: ['what'],
        found: `${range.what} with mode ${bench.mode}`,
        allowed: `what ${inColumn ? 'a column' : 'the tank'} reads`,
        suggestion: inColumn ? 'Write depthM, for example' : 'Write draughtMm, for example',
      };
      const broken = [...rangeRules(range), ...(fits ? [] : [misplaced])];
      return broken.map(({ at, ...rest }) => ({ at: ['each', i, 'all', k, ...at], ...rest }));
    }),
  );
}

function orderRules(steps: readonly GivenBenchStep[]): LessonBreak[] {
  const last = steps.map(({ kind }) => kind).lastIndexOf('try');
  const nothing: LessonBreak = {
    at: ['steps'],
    found: 'nothing to try',
    allowed: 'at least one step of kind try',
    suggestion: 'Add a step of kind try',
  };
  const broken = last < 0 ? [nothing] : [];
  steps.forEach(({ id, kind }, i) => {
    const first = steps.findIndex((one) => one.id === id);
    if (first < i)
      broken.push({
        at: ['steps', i, 'id'],
        found: `${id}, as in step ${first + 1}`,
        allowed: 'a different id for each step',
        suggestion: 'Rename it',
      });
    const asksEarly = kind === 'ask' && steps.slice(i).some((later) => later.kind !== 'ask');
    if (asksEarly)
      broken.push({
        at: ['steps', i, 'kind'],
        found: 'ask before other steps',
        allowed: 'questions of kind ask at the end, everything else before',
        suggestion: 'Move it to the end, or make it predict',
      });
  });
  return broken;
}

const HAND_KEYS = ['thing', 'shape', 'water', 'byMm', 'atM', 'kPa'];

function proofRules({ proof = [], steps }: GivenBenchLesson): LessonBreak[] {
  const tried = steps.flatMap(({ kind, id }) => (kind === 'try' ? [id] : []));
  const known = [...tried, 'predictions'];
  return proof.flatMap(({ hands = [], fault, comes }, i) => {
    const broken = hands.flatMap((move, k) => {
      const needs = HANDS_DO[move.do];
      const keys = keyRules(move, `do ${move.do}`, needs === null ? [] : [needs], [], HAND_KEYS);
      const stray: DetailBreak = {
        at: ['during'],
        found: move.during,
        allowed: `the id of a step to try: ${tried.join(', ')}`,
        suggestion: `Write ${nearest(move.during, tried) ?? tried[0] ?? 'the id of a step'}`,
      };
      return under(['proof', i, 'hands', k], [...keys, ...(tried.includes(move.during) ? [] : [stray])]);
    });
    if (fault === undefined || (comes === 'fail' && known.includes(fault))) return broken;
    const suggestion =
      comes === 'pass' ? 'Delete fault: who passes has none' : `Write ${nearest(fault, known) ?? 'predictions'}`;
    const found = comes === 'pass' ? 'fault with comes: pass' : fault;
    const allowed = `with comes: fail one of ${known.join(', ')}`;
    return [...broken, { at: ['proof', i, 'fault'], found, allowed, suggestion }];
  });
}
