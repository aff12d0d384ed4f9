import { describe, expect, test } from 'vitest';
import { readySetup } from '../../src/app/setups.ts';
import { rigOf } from '../../src/diver/index.ts';
import {
  LESSONS,
  flyLesson,
  lessonSetup,
  lineEvidence,
  type FlownLesson,
  type LineEvidence,
} from '../../src/lesson/index.ts';
import { gapWords, offWords, outsideWords, taskWords, toldGaps } from '../../src/lesson/line-words.ts';
import { excesses } from '../../src/lesson/measures.ts';
import { traceOf } from '../../src/lesson/trace.ts';
import type { PilotName } from '../../src/pilot/index.ts';
import { firstDiveRig } from '../fixtures/lessons/first-dive.ts';
import { madeUp } from '../fixtures/lessons/made-up.ts';

interface Flight {
  readonly flown: FlownLesson;
  readonly line: LineEvidence;
}

async function flight(id: string, pilot: PilotName, seed: number): Promise<Flight> {
  const lesson = LESSONS.find((one) => one.id === id)!;
  const rig = rigOf(lessonSetup(lesson, await readySetup(lesson.setup.ready)));
  const flown = flyLesson(lesson, rig, pilot, seed);
  return { flown, line: lineEvidence(lesson, flown.run, flown.dive, flown.marks) };
}

const flights: Readonly<Record<string, Flight>> = Object.fromEntries(
  await Promise.all(
    (
      [
        ['first-dive', 'learner'],
        ['first-dive', 'kicker'],
        ['ascent-with-stop', 'late-venter'],
        ['ascent-with-stop', 'early-leaver'],
        ['descent', 'dumper'],
        ['hover', 'learner'],
        ['hover', 'idler'],
      ] as const
    ).map(async ([id, pilot]) => [`${id}, ${pilot}`, await flight(id, pilot, 1)] as const),
  ),
);
const all = Object.entries(flights);
const markOf = ({ flown }: Flight, id: string) => flown.marks.find((one) => one.id === id);
const rawOf = (from: Flight, id: string, part: string) => markOf(from, id)?.parts.find((one) => one.id === part)?.raw;

describe('lineEvidence()', () => {
  test.each(all)('%s: the spread of a hold is the raw value of its mark, bit by bit', (_, one) => {
    const raws = one.flown.marks.flatMap(({ parts }) =>
      parts.filter(({ id }) => id === 'distance').map(({ raw }) => raw),
    );
    expect(new Set(one.line.holds.map(({ rmsM }) => rmsM))).toEqual(new Set(raws));
  });

  test.each(all)('%s: what is hollow lasts as long as the share of its mark that is not in the band', (_, one) => {
    for (const { rmsM, fromS, toS, out, outS } of one.line.holds) {
      const mark = one.flown.marks.find(({ parts }) => parts.some(({ id, raw }) => id === 'distance' && raw === rmsM))!;
      const percent = mark.criteria.find(({ id }) => id === 'in-band')!.value;
      // What carried the diver before the window opened is counted with it.
      const before = out.filter((span) => span.toS <= fromS).reduce((sum, span) => sum + span.toS - span.fromS, 0);
      expect(outS).toBeCloseTo((toS - fromS + before) * (1 - percent / 100), 6);
      expect(out.reduce((sum, span) => sum + span.toS - span.fromS, 0)).toBeCloseTo(outS, 6);
    }
  });

  test('the gaps of an ascent add up to what its mark counts, and each is a gap between two lines', () => {
    const one = flights['ascent-with-stop, late-venter']!;
    const up = one.line.gaps.filter(({ way }) => way === 'up');
    expect(up.length).toBeGreaterThan(0);
    expect(markOf(one, 'ascent')!.criteria.find(({ id }) => id === 'surfaced')!.met).toBe(true);
    expect(up.reduce((sum, { metres }) => sum + metres, 0)).toBeCloseTo(rawOf(one, 'ascent', 'excess-climb')!, 9);
    for (const { metres, allowedM, reachedM, fromM, fromS, toS, mpmin } of up) {
      expect(allowedM - reachedM).toBeCloseTo(metres, 9);
      expect((fromM - allowedM) / (toS - fromS)).toBeCloseTo(mpmin / 60, 9);
    }
  });

  test('the end of a gap lies on the line: the mean of the three seconds about it', () => {
    const one = flights['ascent-with-stop, late-venter']!;
    const depthM = one.flown.dive.recording.column('depthM');
    for (const { toS, reachedM } of one.line.gaps) {
      const [from, to] = [Math.round(toS * 10 - 14.5), Math.round(toS * 10 + 14.5)];
      const about = depthM.slice(from, to + 1);
      expect(about).toHaveLength(30);
      expect(reachedM).toBeCloseTo(about.reduce((sum, one) => sum + one, 0) / 30, 6);
    }
  });

  test('who sinks faster than his step allows has gone too far down', () => {
    const { flown, line } = flights['descent, dumper']!;
    expect(flown.marks[0]!.criteria.find(({ id }) => id === 'rate')!.met).toBe(false);
    const [worst] = toldGaps(line.gaps);
    expect(worst).toMatchObject({ way: 'down', mpmin: 18 });
    expect(worst!.reachedM).toBeGreaterThan(worst!.allowedM);
  });

  test.each(all)(
    '%s: tasks cover what was flown from end to end, with the words of the marks and no others',
    (_, one) => {
      const { tasks } = one.line;
      expect(tasks[0]!.fromS).toBe(0);
      for (const [i, { fromS }] of tasks.slice(1).entries()) expect(Math.abs(fromS - tasks[i]!.toS)).toBeLessThan(0.11);
      expect(tasks.at(-1)!.toS).toBeCloseTo((one.flown.dive.recording.rows - 1) / 10, 0);
      for (const { title, word } of tasks) expect(word).toBe(markOf(one, title)?.word ?? null);
    },
  );

  test('a first dive is a surface without a mark, a descent, a hover, an ascent with its stop', () => {
    const { tasks } = flights['first-dive, learner']!.line;
    expect(tasks.map(({ title }) => title)).toEqual(['Positive', 'descent', 'hover', 'ascent']);
    expect(taskWords(tasks[0]!)).toBe('Positive');
  });

  test('thrust of fins adds up to what a hold counts, and nobody who never kicked has any', () => {
    const one = flights['first-dive, kicker']!;
    const total = one.flown.dive.recording;
    const sumNs = one.line.fins.flatMap(({ upN }) => upN).reduce((sum, thrustN) => sum + Math.abs(thrustN) / 10, 0);
    const last = total.rows - 1;
    expect(sumNs).toBeCloseTo(total.at(last, 'finsUpNs') + total.at(last, 'finsDownNs'), 6);
    expect(sumNs).toBeGreaterThan(100);
    expect(flights['hover, learner']!.line.fins).toEqual([]);
  });
});

test('excesses() finds each stretch above a limit: 15 s at 12 m/min lead 0.64 m further than 9 allows', () => {
  const depthM = (row: number) => 20 - (0.2 * Math.min(Math.max(row - 100, 0), 150)) / 10;
  const trace = traceOf({ rig: firstDiveRig, recording: madeUp(600, { depthM }), changes: [] });
  const [one, ...more] = excesses(trace, { from: 0, to: 600 }, 0.15, -1);
  expect(more).toEqual([]);
  // The 3 s mean: 12 s at 0.05 m/s above the limit, and two triangles of 0.75 s.
  expect(one!.metres).toBeCloseTo(12 * 0.05 + 0.75 * 0.05, 2);
  expect(excesses(trace, { from: 0, to: 600 }, 0.15, 1)).toEqual([]);
});

test('words of a line are short, and only the worst two gaps have any', () => {
  expect(gapWords({ way: 'up', metres: 2.345 })).toBe('2.3 m too far up');
  expect(offWords({ rmsM: 0.412 })).toBe('typically 0.41 m off');
  expect([0, 0.4, 7.04, 45.2].map((outS) => outsideWords({ outS }))).toEqual([
    '',
    '0.4 s outside',
    '7 s outside',
    '45 s outside',
  ]);
  const gaps = [0.2, 0.5, 1.5, 0.9].map((metres) => ({
    ...flights['ascent-with-stop, late-venter']!.line.gaps[0]!,
    metres,
  }));
  expect(toldGaps(gaps).map(({ metres }) => metres)).toEqual([1.5, 0.9]);
});
