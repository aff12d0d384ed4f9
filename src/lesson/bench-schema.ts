import * as v from 'valibot';
import { bounded, choice, group, list, number, text } from '../diver/file.ts';
import type { BenchMode, BenchSet, BenchWaterName, MaterialId } from '../bench/index.ts';
import { BENCH_QUANTITIES, HANDS_DO, type BenchQuantity, type HandDoes } from './bench-lesson.ts';
import { BENCH_THINGS, BENCH_TOPICS, type BenchTopic } from './bench-topics.ts';
import { lessonSchema } from './lesson-schema.ts';
import { id, must, options } from './step-schema.ts';

/*
 * The keys of a lesson file for the bench: what it has in common with every lesson, `bench` in place of setup and start, steps to
 * try in place of flown ones. Bounds are what fits the bench.
 */

const MODES = ['tank', 'deep', 'bottle'] as const satisfies readonly BenchMode[];
const SETS = ['putty', 'stones', 'odd-stone', 'can', 'block', 'stuffs'] as const satisfies readonly BenchSet[];
const WATERS = ['fresh', 'brackish', 'salt'] as const satisfies readonly BenchWaterName[];
const STUFF = [
  ...(['cork', 'pine', 'ice', 'beeswax', 'polystyrene', 'rubber', 'putty'] as const),
  ...(['glass', 'granite', 'aluminium', 'steel', 'lead'] as const),
] as const satisfies readonly MaterialId[];
const quantities = Object.keys(BENCH_QUANTITIES) as [BenchQuantity, ...BenchQuantity[]];
const topics = Object.keys(BENCH_TOPICS) as [BenchTopic, ...BenchTopic[]];
const hands = Object.keys(HANDS_DO) as [HandDoes, ...HandDoes[]];

/** Which of several things: a whole number. */
const nth = () => v.optional(v.pipe(bounded(1, 5), v.integer('a whole number\nWrite 1, for example')));
const SAYS_WHAT = 'one of explain, predict, try, ask\nWrite kind: explain, predict, try or ask';

const steps = v.variant(
  'kind',
  [
    group({ kind: v.literal('explain'), id: id(), title: text(80), text: text(1200) }),
    group({
      kind: v.literal('predict'),
      id: id(),
      shape: must(choice(['choice', 'number', 'curve'])),
      topic: must(choice(topics)),
      of: choice(BENCH_THINGS),
      thing: nth(),
      atM: number(0, 40),
      toWater: choice(WATERS),
      question: text(400),
      options: options(),
      unit: v.optional(text(12)),
      least: number(-1000, 20_000),
      most: number(-1000, 20_000),
      step: number(0.01, 1000),
      within: number(0.01, 2000),
      withinShare: number(0.01, 0.5),
      along: list(bounded(0, 40), 2, 6),
      alongUnit: v.optional(text(12)),
      why: text(1200),
    }),
    group({
      kind: v.literal('try'),
      id: id(),
      title: text(40),
      hint: text(600),
      each: must(
        list(
          group({
            says: text(160),
            forS: number(0, 60),
            all: must(
              list(
                group({
                  what: must(choice(quantities)),
                  thing: nth(),
                  least: number(-2000, 20_000),
                  most: number(-2000, 20_000),
                }),
                1,
                9,
              ),
            ),
          }),
          1,
          9,
        ),
      ),
    }),
    group({ kind: v.literal('ask'), id: id(), question: text(400) }),
  ],
  SAYS_WHAT,
);

const { format, title, minutes, paths, opens, beliefs, objective, caution, values, rightAtLeast, waterAdds } =
  lessonSchema.entries;

/** Shape and ranges of a lesson file for the bench. */
export const benchLessonSchema = group({
  format,
  id: id(),
  title,
  minutes,
  phase: must(choice(['bench'])),
  paths,
  opens,
  beliefs,
  objective,
  caution,
  values,
  bench: group({
    mode: must(choice(MODES)),
    set: choice(SETS),
    water: choice(WATERS),
    massKg: number(0.05, 2),
    material: choice(STUFF),
    widthMm: number(20, 300),
    heightMm: number(20, 200),
  }),
  steps: must(list(steps, 1, 60)),
  rightAtLeast,
  proof: list(
    group({
      answers: choice(['right', 'wrong', 'none']),
      hands: list(
        group({
          during: id(),
          atS: bounded(0, 600),
          do: must(choice(hands)),
          thing: nth(),
          shape: choice(['ball', 'tray', 'boat']),
          water: choice(WATERS),
          byMm: number(-500, 500),
          atM: number(0, 40),
          kPa: number(0, 15),
        }),
        0,
        60,
      ),
      comes: must(choice(['pass', 'fail'])),
      fault: v.optional(text(60)),
    }),
    0,
    24,
  ),
  waterAdds,
});

/** What such a file gives, checked key by key. */
export type GivenBenchLesson = v.InferOutput<typeof benchLessonSchema>;
export type GivenBenchStep = GivenBenchLesson['steps'][number];
export type GivenBenchPredict = Extract<GivenBenchStep, { kind: 'predict' }>;
