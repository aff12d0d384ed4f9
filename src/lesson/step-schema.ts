import * as v from 'valibot';
import { bounded, choice, group, list, number, text, yesNo } from '../diver/file.ts';
import { PILOT_NAMES } from '../pilot/index.ts';
import { QUANTITIES, type Quantity } from './condition.ts';
import { HAPPENINGS } from './happening.ts';
import { GAUGES, HANDS_NEEDED } from './lesson.ts';
import { startSchema } from './start-schema.ts';
import { TOPICS, type Topic } from './topics.ts';

/* The keys of the steps of a lesson file. */

/** A field that may not be left out. */
export const must = <T extends v.GenericSchema>(field: v.OptionalSchema<T, undefined>): T => field.wrapped;
const SAYS_WHAT = 'one of explain, predict, watch, fly, ask\nWrite kind: explain, predict, watch, fly or ask';
const GOAL_WHAT = 'one of float, travel, hold, meet\nWrite kind: float, travel, hold or meet';

export const id = () =>
  v.pipe(text(40), v.regex(/^[a-z][a-z0-9-]*$/, 'small letters, digits and dashes\nWrite it like first-dive'));
const rate = () => v.optional(v.nullable(bounded(0.5, 120)));
export const options = () => list(group({ id: id(), words: text(120) }), 2, 6);
const quantities = Object.keys(QUANTITIES) as [Quantity, ...Quantity[]];
const range = () => ({
  what: choice(quantities),
  least: number(-1000, 1000),
  most: number(-1000, 1000),
  overS: number(0.1, 120),
});

/** Who flies: one of the two. */
export const flyerKeys = () => ({
  pilot: choice(PILOT_NAMES),
  script: list(
    group({
      atS: bounded(0, 1800),
      jacketAdd: yesNo(),
      jacketVent: yesNo(),
      oral: yesNo(),
      suitAdd: yesNo(),
      suitVent: yesNo(),
      diluent: yesNo(),
      lungsL: v.optional(v.nullable(bounded(0.5, 12))),
      finsN: number(-100, 100),
      pitchDeg: number(-180, 180),
      holdLine: yesNo(),
      release: yesNo(),
      leadPieces: number(-31, 31),
      suitValveHPa: number(0, 100),
    }),
    1,
    60,
  ),
});

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
    group({
      kind: v.literal('meet'),
      each: must(list(group({ do: must(choice(['reach', 'hold'])), ...range(), forS: number(0.5, 900) }), 1, 12)),
      order: choice(['any', 'given']),
      withinS: bounded(1, 900),
      aimM: bounded(0, 100),
      says: text(200),
    }),
  ],
  GOAL_WHAT,
);

const keep = group({
  do: must(choice(['stay', 'never', 'end', 'before', 'after', 'presses', 'lead-changes'])),
  ...range(),
  atS: number(0.1, 900),
  of: choice(['step', 'event']),
  longestS: number(0.1, 60),
  says: text(160),
});

export const stepSchema = v.variant(
  'kind',
  [
    group({ kind: v.literal('explain'), id: id(), title: text(80), text: text(1200) }),
    group({
      kind: v.literal('predict'),
      id: id(),
      shape: must(choice(['choice', 'number', 'place', 'curve', 'order'])),
      topic: choice(Object.keys(TOPICS) as [Topic, ...Topic[]]),
      atM: number(0, 100),
      toM: number(0, 100),
      byM: number(-10, 10),
      offL: number(-30, 30),
      speedMpmin: number(-60, 60),
      afterS: number(0, 600),
      kg: number(-30, 30),
      toPsu: number(0, 42),
      suitShare: number(0.2, 3),
      question: text(400),
      options: options(),
      answer: v.optional(text(40)),
      unit: v.optional(text(12)),
      least: number(-1000, 1000),
      most: number(-1000, 1000),
      step: number(0.01, 100),
      within: number(0.01, 100),
      along: list(bounded(0, 1000), 2, 6),
      alongUnit: v.optional(text(12)),
      items: options(),
      why: text(1200),
    }),
    group({
      kind: v.literal('watch'),
      id: id(),
      title: text(80),
      text: text(1200),
      ...flyerKeys(),
      start: v.optional(startSchema),
      moreLeadKg: number(-10, 20),
      aimM: number(0, 100),
      freezes: must(list(group({ atS: bounded(0, 900), words: text(300) }), 1, 12)),
    }),
    group({
      kind: v.literal('fly'),
      id: id(),
      title: text(40),
      hint: text(600),
      goal,
      limits: v.optional(group({ upMpmin: rate(), downMpmin: rate() })),
      keep: list(keep, 0, 12),
      events: list(
        group({
          kind: must(choice(HAPPENINGS)),
          afterS: must(list(bounded(0, 600), 2, 2)),
          forS: number(1, 600),
          upNs: number(-500, 500),
          downMpmin: number(-60, 60),
          leftBar: number(1, 300),
        }),
        0,
        6,
      ),
      gauges: choice(GAUGES),
      hands: list(must(choice(HANDS_NEEDED)), 0, HANDS_NEEDED.length),
    }),
    group({ kind: v.literal('ask'), id: id(), question: text(400), watched: v.optional(text(400)) }),
  ],
  SAYS_WHAT,
);

export type GivenEvent = NonNullable<Extract<v.InferOutput<typeof stepSchema>, { kind: 'fly' }>['events']>[number];
export type GivenKeep = v.InferOutput<typeof keep>;
export type GivenGoal = v.InferOutput<typeof goal>;
