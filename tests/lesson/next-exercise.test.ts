import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BELIEF_ASKS, HABIT_TRAINING, PART_TRAINING } from '../../src/lesson/exercises.ts';
import { HABIT_IDS, HABIT_KINDS } from '../../src/lesson/habit-kinds.ts';
import {
  LESSONS,
  nextExercise,
  type Habit,
  type Lesson,
  type LessonResult,
  type Mark,
} from '../../src/lesson/index.ts';
import { BELIEFS } from '../../src/lesson/lesson.ts';
import { wordOf } from '../../src/lesson/mark-sum.ts';
import type { Flown } from '../../src/lesson/next-exercise.ts';

const lesson = (id: string): Lesson => LESSONS.find((one) => one.id === id)!;

function mark(id: Mark['id'], score: number, ...lost: readonly (readonly [part: string, points: number])[]): Mark {
  const rest = { label: '', raw: 0, unit: '', good: null, bad: null, atS: null, reason: '' };
  const parts = lost.map(([part, pointsLost]) => ({ ...rest, id: part, pointsLost }));
  return { id, score, word: wordOf(score), ok: score >= 50, criteria: [], parts };
}

function habit(id: Habit['id']): Habit {
  const { states, question } = HABIT_KINDS[id];
  return { id, fromS: 1, toS: 2, words: question, states, question };
}

const PASSED: LessonResult = { verdict: 'pass', marks: [], demands: [], habits: [], missed: null };
const said = (right: boolean) =>
  ({ id: 'p', question: 'Which?', said: 'a', came: 'b', right, off: null, within: null, why: '', atS: 0 }) as const;

function flown(id: string, result: Partial<LessonResult>, more: Partial<Flown> = {}): Flown {
  const none = { reports: {}, predictions: [], passed: new Set<string>(), opened: new Set<string>() };
  return { lesson: lesson(id), result: { ...PASSED, ...result }, ...none, ...more };
}

const badHover = mark('hover', 30, ['gas-to-and-fro', 50], ['distance', 20]);

describe('nextExercise()', () => {
  const cases: readonly [why: string, flown: Flown, lessonId: string, reason: RegExp][] = [
    [
      'what was not flown comes first',
      flown('hover', { verdict: 'fail', missed: 'Hold: 8 m was not reached', marks: [badHover] }),
      'hover',
      /not flown to its end \(Hold: 8 m was not reached\)/,
    ],
    [
      'breath held comes before marks',
      flown('first-dive', { verdict: 'fail', marks: [badHover], habits: [habit('breath-held-while-rising')] }),
      'first-dive',
      /^Breath was held while rising/,
    ],
    [
      'a mark that is not yet names what cost most, and what trains it',
      flown('hover', { verdict: 'fail', marks: [badHover] }),
      'coarse-and-fine',
      /^Hover: not yet, because gas went in and out again\. Coarse and fine trains short presses/,
    ],
    [
      'of two marks the weakest',
      flown('first-dive', { verdict: 'fail', marks: [badHover, mark('ascent', 20, ['excess-climb', 60])] }),
      'ascent-with-stop',
      /^Ascent: not yet, because you climbed above the rate/,
    ],
    [
      'the word of the last flights counts, not that of one',
      flown(
        'first-dive',
        { verdict: 'fail', marks: [badHover, mark('ascent', 20, ['excess-climb', 60])] },
        { reports: { ascent: { word: 'secure', score: 85, of: 3 }, hover: { word: 'not yet', score: 40, of: 3 } } },
      ),
      'coarse-and-fine',
      /^Hover: not yet over 3 flights, because gas/,
    ],
    [
      'a habit that is stated explains more than points',
      flown('first-dive', { verdict: 'fail', marks: [badHover], habits: [habit('kicks-while-heavy')] }),
      'kick-test',
      /fins carried your weight\. Kick test trains/,
    ],
    [
      'a habit that is only asked after explains nothing',
      flown('first-dive', { verdict: 'fail', marks: [badHover], habits: [habit('wrong-way')] }),
      'coarse-and-fine',
      /gas went in and out again/,
    ],
    [
      'the lesson that trains it is the one that was flown',
      flown('hover', { verdict: 'fail', marks: [mark('hover', 30, ['distance', 60])] }),
      'hover',
      /^Hover: not yet, because the depth was not held\. Fly the same once more/,
    ],
    [
      'what was not kept is flown again',
      flown('one-breath', {
        verdict: 'fail',
        demands: [{ id: 'a', title: 'Catch it', says: 'without a press', met: false, atS: 3 }],
      }),
      'one-breath',
      /^Not met in Catch it: without a press\. Fly the same once more/,
    ],
    [
      'half of the predictions otherwise: another lesson about the same belief',
      flown('kick-test', {}, { predictions: [said(true), said(false)] }),
      'hover',
      /^1 of 2 predictions came otherwise\. Hover asks again whether swimming level means neutral/,
    ],
    [
      'unless that was passed',
      flown('kick-test', {}, { predictions: [said(false)], passed: new Set(['hover']) }),
      'posture',
      /^1 of 1 prediction came otherwise\. Posture/,
    ],
    [
      'nearly is flown again before it is trained elsewhere',
      flown('hover', { marks: [mark('hover', 60, ['gas-to-and-fro', 30])] }),
      'hover',
      /^Hover: nearly, because gas went in and out again\. Fly the same once more/,
    ],
    [
      'nearly over three flights is trained elsewhere',
      flown(
        'hover',
        { marks: [mark('hover', 60, ['gas-to-and-fro', 30])] },
        { reports: { hover: { word: 'nearly', score: 62, of: 3 } } },
      ),
      'coarse-and-fine',
      /^Hover: nearly over 3 flights, because gas/,
    ],
    ['all met: the next of the path', flown('one-breath', {}), 'breath-reach', /^All that was asked for was met/],
    ['not one that is closed', flown('kick-test', {}), 'closed-loop', /Closed loop comes next/],
    [
      'one that the instructor opened',
      flown('kick-test', {}, { opened: new Set(['stuck-inflator']) }),
      'stuck-inflator',
      /Runaway ascent comes next/,
    ],
    [
      'nothing is left: again',
      flown('kick-test', {}, { passed: new Set(LESSONS.map(({ id }) => id)) }),
      'kick-test',
      /Every lesson that is open was passed/,
    ],
  ];

  test.each(cases)('%s', (_, after, lessonId, reason) => {
    const next = nextExercise(after, LESSONS);
    expect(next.reason).toMatch(reason);
    expect(next).toMatchObject({ lessonId, title: lesson(lessonId).title, again: lessonId === after.lesson.id });
  });

  const ids = LESSONS.map(({ id }) => id);
  const anyMark = fc
    .record({
      id: fc.constantFrom('descent' as const, 'hover' as const, 'ascent' as const),
      score: fc.double({ min: 0, max: 100, noNaN: true }),
      part: fc.constantFrom(...Object.keys(PART_TRAINING).map((key) => key.split('/').at(-1)!), 'floor', 'not-reached'),
      lost: fc.double({ min: -20, max: 100, noNaN: true }),
    })
    .map(({ id, score, part, lost }) => mark(id, score, [part, lost]));
  const anything = fc.record({
    id: fc.constantFrom(...ids),
    verdict: fc.constantFrom('pass' as const, 'fail' as const, 'error' as const),
    missed: fc.option(fc.constant('Hold: 8 m was not reached'), { freq: 4 }),
    marks: fc.uniqueArray(anyMark, { maxLength: 3, selector: ({ id }) => id }),
    habits: fc.subarray([...HABIT_IDS]),
    met: fc.boolean(),
    right: fc.array(fc.boolean(), { maxLength: 4 }),
    passed: fc.subarray(ids),
    opened: fc.subarray(ids),
  });

  test('always proposes a lesson that is there, gives evidence, and never one that only the instructor opens', () => {
    fc.assert(
      fc.property(anything, ({ id, verdict, missed, marks, habits, met, right, passed, opened }) => {
        const demands = [{ id: 'predictions', title: 'Predictions', says: 'two right', met, atS: null }];
        const after = flown(
          id,
          { verdict, missed, marks, demands, habits: habits.map(habit) },
          { predictions: right.map(said), passed: new Set(passed), opened: new Set(opened) },
        );
        const next = nextExercise(after, LESSONS);
        const there = lesson(next.lessonId);
        expect(next.title).toBe(there.title);
        expect(next.again).toBe(next.lessonId === id);
        expect(next.reason).toMatch(/^[A-Z0-9].{20,}\.$/);
        expect(next.again || there.opens === 'always' || opened.includes(there.id)).toBe(true);
        expect(nextExercise(after, LESSONS)).toEqual(next);
      }),
    );
  });

  test('whatever trains something is a lesson of ours, every belief is asked about, and only stated habits explain', () => {
    for (const { lessons } of [...Object.values(PART_TRAINING), ...Object.values(HABIT_TRAINING)])
      for (const id of lessons) expect(ids).toContain(id);
    for (const id of Object.keys(HABIT_TRAINING) as (keyof typeof HABIT_TRAINING)[])
      expect(HABIT_KINDS[id].states, id).toBe(true);
    expect(Object.keys(BELIEF_ASKS).sort()).toEqual([...BELIEFS].sort());
  });
});
