import * as v from 'valibot';
import { READY_SETUPS } from '../diver/index.ts';
import { bounded, choice, group, list, number, text, yesNo } from '../diver/file.ts';
import { BELIEFS, COURSE_PATHS, COURSE_PHASES, GAUGES } from './lesson.ts';
import { LIMIT_RANGES } from './limits.ts';
import { flyerKeys, id, must, stepSchema } from './step-schema.ts';
import { startSchema } from './start-schema.ts';

/*
 * The keys of a lesson file and what each may hold. Bounds are common practice, no source, and wide on purpose. Which keys go
 * together depends on kinds and shapes: those rules are in *-rules.ts.
 */

/** Our ready setups, one of which a lesson takes. */
const READY_IDS = READY_SETUPS.map(({ id }) => id);

/** Shape and ranges of a lesson file. */
export const lessonSchema = group({
  format: v.literal(1, '1\nWrite format: 1; files of other formats are not read'),
  id: id(),
  title: text(80),
  minutes: bounded(1, 120),
  phase: must(choice(COURSE_PHASES)),
  paths: list(must(choice(COURSE_PATHS)), 1, COURSE_PATHS.length),
  opens: choice(['always', 'instructor']),
  beliefs: list(must(choice(BELIEFS)), 0, BELIEFS.length),
  objective: text(600),
  caution: text(600),
  values: list(group({ value: text(60), why: text(300) }), 0, 12),
  setup: group({
    ready: must(choice(READY_IDS)),
    changes: v.optional(
      group({
        moreLeadKg: number(-10, 20),
        leadPieceKg: number(0.25, 5),
        fillBar: number(0, 328),
        suitThicknessMm: number(0, 12),
        salinityPsu: number(0, 42),
        temperatureC: number(-2, 40),
        bottomM: number(1.5, 150),
      }),
    ),
  }),
  start: startSchema,
  gauges: choice(GAUGES),
  steps: must(list(stepSchema, 1, 60)),
  marks: must(
    list(
      group({
        mark: must(choice(['descent', 'hover', 'ascent'])),
        travel: v.optional(id()),
        hold: id(),
        surface: v.optional(id()),
        fastAscentIsThePoint: yesNo(),
      }),
      0,
      9,
    ),
  ),
  markLimits: v.optional(
    group({
      ascentMpmin: number(...LIMIT_RANGES.ascentMpmin),
      fastMpmin: number(...LIMIT_RANGES.fastMpmin),
      descentMpmin: number(...LIMIT_RANGES.descentMpmin),
      excessM: number(...LIMIT_RANGES.excessM),
      inBandPercent: number(...LIMIT_RANGES.inBandPercent),
      finsNs: number(...LIMIT_RANGES.finsNs),
      why: text(300),
    }),
  ),
  rightAtLeast: number(1, 40),
  proof: list(group({ ...flyerKeys(), comes: must(choice(['pass', 'fail'])), fault: v.optional(text(60)) }), 0, 24),
  waterAdds: text(1200),
});

/** What a file gives, checked key by key. */
export type GivenLesson = v.InferOutput<typeof lessonSchema>;
export type GivenStep = GivenLesson['steps'][number];
export type GivenPredict = Extract<GivenStep, { kind: 'predict' }>;
