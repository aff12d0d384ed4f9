import * as v from 'valibot';
import { bounded, choice, group, list, number, text, yesNo } from '../diver/file.ts';
import { BELIEFS, COURSE_PHASES } from './lesson.ts';
import { TOPICS, type Topic } from './topics.ts';

/*
 * The keys of a lesson file and what each may hold. Bounds are common practice, no source, and wide on purpose. Which keys a
 * prediction needs depends on its shape and topic: those rules are in lesson-rules.ts.
 */

/** A field that may not be left out. */
const must = <T extends v.GenericSchema>(field: v.OptionalSchema<T, undefined>): T => field.wrapped;
const SAYS_WHAT = 'one of explain, predict, fly, ask\nWrite kind: explain, predict, fly or ask';
const GOAL_WHAT = 'one of float, travel, hold\nWrite kind: float, travel or hold';

const id = () =>
  v.pipe(text(40), v.regex(/^[a-z][a-z0-9-]*$/, 'small letters, digits and dashes\nWrite it like first-dive'));
const rate = () => v.optional(v.nullable(bounded(0.5, 120)));
const options = () => list(group({ id: id(), words: text(120) }), 2, 6);

const goal = v.variant(
  'kind',
  [
    group({ kind: v.literal('float'), forS: bounded(1, 300), withinS: bounded(1, 900) }),
    group({ kind: v.literal('travel'), toM: bounded(0.5, 100), bandM: bounded(0.2, 5), withinS: bounded(5, 900) }),
    group({
      kind: v.literal('hold'),
      atM: bounded(0.5, 100),
      bandM: bounded(0.2, 5),
      settleS: bounded(0, 60),
      forS: bounded(5, 900),
    }),
  ],
  GOAL_WHAT,
);

const step = v.variant(
  'kind',
  [
    group({ kind: v.literal('explain'), id: id(), title: text(80), text: text(1200) }),
    group({
      kind: v.literal('predict'),
      id: id(),
      shape: must(choice(['choice', 'number', 'order'])),
      topic: choice(Object.keys(TOPICS) as [Topic, ...Topic[]]),
      atM: number(0, 100),
      toM: number(0, 100),
      question: text(400),
      options: options(),
      answer: v.optional(text(40)),
      unit: v.optional(text(12)),
      least: number(-1000, 1000),
      most: number(-1000, 1000),
      step: number(0.01, 100),
      within: number(0.01, 100),
      items: options(),
      why: text(1200),
    }),
    group({
      kind: v.literal('fly'),
      id: id(),
      title: text(40),
      hint: text(600),
      goal,
      limits: v.optional(group({ upMpmin: rate(), downMpmin: rate() })),
    }),
    group({ kind: v.literal('ask'), id: id(), question: text(400) }),
  ],
  SAYS_WHAT,
);

/** Shape and ranges of a lesson file. */
export const lessonSchema = group({
  format: v.literal(1, '1\nWrite format: 1; files of other formats are not read'),
  id: id(),
  title: text(80),
  minutes: bounded(1, 120),
  phase: must(choice(COURSE_PHASES)),
  beliefs: list(must(choice(BELIEFS)), 0, BELIEFS.length),
  objective: text(600),
  caution: text(600),
  setup: group({
    ready: text(60),
    changes: v.optional(
      group({
        moreLeadKg: number(-10, 20),
        fillBar: number(0, 328),
        suitThicknessMm: number(0, 12),
        salinityPsu: number(0, 42),
        temperatureC: number(-2, 40),
        bottomM: number(1.5, 150),
      }),
    ),
  }),
  start: group({ place: must(choice(['afloat', 'under'])), depthM: number(0.5, 100), jacketL: bounded(0, 60) }),
  steps: must(list(step, 1, 60)),
  marks: must(
    list(
      group({
        mark: must(choice(['descent', 'hover', 'ascent'])),
        travel: v.optional(id()),
        hold: id(),
        surface: v.optional(id()),
        fastAscentIsThePoint: yesNo(),
      }),
      1,
      9,
    ),
  ),
  waterAdds: text(1200),
});

/** What a file gives, checked key by key. */
export type GivenLesson = v.InferOutput<typeof lessonSchema>;
export type GivenStep = GivenLesson['steps'][number];
export type GivenPredict = Extract<GivenStep, { kind: 'predict' }>;
