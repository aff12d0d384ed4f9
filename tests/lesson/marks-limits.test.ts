import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ascentMark } from '../../src/lesson/ascent-mark.ts';
import { descentMark } from '../../src/lesson/descent-mark.ts';
import { hoverMark } from '../../src/lesson/hover-mark.ts';
import {
  LIMIT_RANGES,
  USUAL_LIMITS,
  flyLesson,
  judgeLesson,
  limitsInForce,
  markLimits,
  reportOf,
  type MarkLimits,
} from '../../src/lesson/index.ts';
import { readLesson } from '../../src/lesson/file.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import { firstDive, firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { evenly, madeUp, type Columns } from '../fixtures/lessons/made-up.ts';

test('markLimits() takes what is between the bounds and refuses the rest by name, with what is allowed', () => {
  expect(markLimits({})).toEqual(USUAL_LIMITS);
  expect(markLimits({ excessM: 2 })).toEqual({ ...USUAL_LIMITS, excessM: 2 });
  for (const name of Object.keys(LIMIT_RANGES) as (keyof MarkLimits)[])
    for (const bad of [LIMIT_RANGES[name][0] - 1, LIMIT_RANGES[name][1] + 1, NaN, Infinity])
      expect(() => markLimits({ [name]: bad })).toThrow(new RegExp(`markLimits: ${name} must lie between .* got`));
  expect(() => markLimits({ ascentMpmin: 18 })).toThrow(/fastMpmin must lie above ascentMpmin of 18, got 18/);
});

test('a lesson file changes what its marks ask for, says why, and the mark follows', () => {
  const text = readFileSync(new URL('../../lessons/first-dive.yaml', import.meta.url), 'utf8');
  const strict = 'markLimits: { inBandPercent: 100, excessM: 0, why: "For who has it already." }\nmarks:';
  const read = readLesson(text.replace('marks:', strict));
  if (!('lesson' in read)) throw new Error(JSON.stringify(read.problems));
  const { lesson } = read;
  expect(lesson.markLimits).toEqual({ change: { inBandPercent: 100, excessM: 0 }, why: 'For who has it already.' });
  const { run, dive } = flyLesson(firstDive, rig, 'able', 3);
  const [usual, own] = [firstDive, lesson].map((one) => judgeLesson(one, run, dive).marks);
  expect(own).toEqual(judgeLesson(firstDive, run, dive, markLimits({ inBandPercent: 100, excessM: 0 })).marks);
  expect(own).not.toEqual(usual);
});

test('limitsInForce() has every limit that the marks ask about, with its reason, and the reason of the lesson for its own', () => {
  expect(limitsInForce(null, ['hover']).map(({ words }) => words)).toEqual([
    '80 % of a hold in its place',
    '20 N s of fins in a hold',
  ]);
  const own = limitsInForce({ change: { ascentMpmin: 6 }, why: 'A thick suit.' }, ['ascent', 'descent']);
  expect(own[0]).toEqual({ id: 'ascentMpmin', words: '6 m/min on the way up', why: 'A thick suit.', changed: true });
  expect(own.filter(({ changed }) => changed)).toHaveLength(1);
  expect(limitsInForce(null, ['ascent'])[0]!.why).toContain('US Navy Diving Manual');
  expect(new Set(limitsInForce(null, ['hover', 'ascent', 'descent']).map(({ id }) => id))).toEqual(
    new Set(Object.keys(USUAL_LIMITS)),
  );
});

test('reportOf() reports on the median of the last three', () => {
  const report = (...scores: number[]) => reportOf(scores.map((score) => ({ score })));
  expect(report()).toBeNull();
  expect(report(60)).toEqual({ score: 60, word: 'nearly', of: 1 });
  expect(report(90, 40)).toEqual({ score: 65, word: 'nearly', of: 2 });
  expect(report(10, 95, 20, 85)).toEqual({ score: 85, word: 'secure', of: 3 });
  expect(report(95, 95, 95, 10, 49, 49.9)).toMatchObject({ score: 49, word: 'not yet' });
});

// Marks of made-up columns: an error in the hold, gas to and fro, fins, imbalance and a dash on the way, each with its amount.
interface Excess {
  readonly offM: number;
  readonly gasL: number;
  readonly finsNs: number;
  readonly netN: number;
  readonly peakM: number;
}
const goal = { kind: 'hold', atM: 8, bandM: 1, settleS: 10, forS: 45 } as const;
const HOLD_FROM = 400;
const ROWS = 1550;

/** From 2 m down to 8 m, there, and up: the dive of all three marks, with each excess added. */
function dive({ offM, gasL, finsNs, netN, peakM }: Excess, up: boolean): Columns {
  const away = up ? -1 : 1;
  const way = (row: number) => (up ? Math.max(8, 13.6 - row * 0.014) : Math.min(8, 2 + row * 0.015));
  const last = (row: number) => (row < 960 ? 0 : Math.min(7.7, (row - 960) * 0.0145));
  const held = (row: number) => (row < HOLD_FROM || row >= 960 ? 0 : away * offM);
  // A dash on the way: so much further within three seconds, and then a pause.
  const dash = (row: number) =>
    (up ? -1 : 1) * Math.min(1, Math.max(0, row - 60) / 30) * Math.max(0, 1 - Math.max(0, row - 90) / 150) * peakM;
  return {
    depthM: (row) => Math.max(0.3, way(row) + held(row) + dash(row) - (up ? last(row) : 0)),
    letInM3: evenly(gasL * 1e-3, 420, 600),
    letOutM3: evenly(gasL * 1e-3, 620, 900),
    finsUpNs: evenly(finsNs, 420, 900),
    midNetN: () => netN,
  };
}

function marksOf(excess: Excess): number[] {
  const [down, up] = [false, true].map((way) =>
    traceOf({ rig, recording: madeUp(ROWS, dive(excess, way)), changes: [] }),
  );
  const task = { fromRow: 0, stop: goal, reachedRow: HOLD_FROM, surfaceWithinS: 60, fastAscentIsThePoint: false };
  return [
    hoverMark(down, goal, HOLD_FROM, []).score,
    descentMark(down, 0, goal, HOLD_FROM, []).score,
    ascentMark(up, task, []).score,
  ];
}

test('adding excess of any kind never raises a mark', () => {
  const amount = (max: number) => fc.double({ min: 0, max, noNaN: true });
  const excess = fc.record<Excess>({
    offM: amount(3),
    gasL: amount(20),
    finsNs: amount(120),
    netN: amount(20),
    peakM: amount(3),
  });
  const more = fc.constantFrom<keyof Excess>('offM', 'gasL', 'finsNs', 'netN', 'peakM');
  expect(marksOf({ offM: 0, gasL: 0, finsNs: 0, netN: 0, peakM: 0 }).every((score) => score > 99)).toBe(true);
  fc.assert(
    fc.property(excess, more, amount(1), (base, name, share) => {
      const before = marksOf(base);
      const after = marksOf({ ...base, [name]: base[name] * (1 + share) + share });
      after.forEach((score, i) => expect(score, `${name}, mark ${i}`).toBeLessThanOrEqual(before[i]! + 1e-9));
    }),
    { numRuns: 60 },
  );
});

test('a stricter limit never raises a mark', () => {
  const calm = { offM: 0.4, gasL: 4, finsNs: 10, netN: 4, peakM: 0.3 };
  const trace = traceOf({ rig, recording: madeUp(ROWS, dive(calm, true)), changes: [] });
  const task = { fromRow: 0, stop: goal, reachedRow: HOLD_FROM, surfaceWithinS: 60, fastAscentIsThePoint: false };
  const score = (limits: Partial<MarkLimits>) => ascentMark(trace, task, [], markLimits(limits)).score;
  for (const [name, looser, stricter] of [
    ['ascentMpmin', 12, 6],
    ['excessM', 3, 0.2],
    ['inBandPercent', 50, 100],
    ['finsNs', 100, 1],
  ] as const)
    expect(score({ [name]: stricter }), name).toBeLessThan(score({ [name]: looser }) + 1e-9);
  expect(score({ ascentMpmin: 6 })).toBeLessThan(score({ ascentMpmin: 12 }));
});
