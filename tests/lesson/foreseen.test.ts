import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadSetupText } from '../../src/diver/file.ts';
import { rigOf } from '../../src/diver/index.ts';
import { FAN_DOTS, fanOf, letterOf, mirroredEnds, rankedEnds, type FanLine } from '../../src/lesson/fan.ts';
import { LESSONS, foreseen, lessonSetup, saidInWater, shownNumber, type PredictStep } from '../../src/lesson/index.ts';
import { outcomeOf } from '../../src/lesson/outcomes.ts';
import { TOPICS } from '../../src/lesson/topics.ts';
import { truthOf } from '../../src/lesson/truth.ts';
import { READY_TEXTS } from '../fixtures/setups/texts.ts';

/** Every question of every lesson that is drawn in the water. */
const drawn = LESSONS.flatMap((lesson) => {
  const rig = rigOf(lessonSetup(lesson, loadSetupText(READY_TEXTS.get(lesson.setup.ready)!)));
  return lesson.steps.flatMap((step) => {
    if (step.kind !== 'predict') return [];
    const look = foreseen(lesson, rig, step);
    return look
      ? [{ name: `${lesson.id}, ${step.id}`, lesson, rig, step, look, truth: truthOf(lesson, rig, step) }]
      : [];
  });
});
const fans = drawn.filter(({ look }) => look.lines.length > 0);
const places = drawn.filter(({ look }) => look.lines.length === 0);
const endOf = (line: readonly number[]) => line[line.length - 1]!;

/** What could tell one line from another but where it ends: how it leaves, and how evenly it bends. */
function manner({ depthsM }: Pick<FanLine, 'depthsM'>, leavesM: number) {
  const steps = depthsM.slice(1).map((depthM, i) => depthM - depthsM[i]!);
  const bends = steps.slice(1).map((step, i) => step - steps[i]!);
  const bend = endOf(depthsM) - depthsM[0]! - leavesM;
  return {
    dots: depthsM.length,
    from: depthsM[0],
    even: bends.every((one) => Math.abs(one - (2 * bend) / FAN_DOTS ** 2) < 1e-9),
  };
}

describe('foreseen() draws', () => {
  test('questions of five topics and no others: those whose answers are depths over time', () => {
    const topics = ['floats-hands-off', 'lead-let-go', 'deep-breath', 'drift-leads', 'comes-back'];
    expect([...new Set(drawn.map(({ step }) => step.topic))].sort()).toEqual([...topics].sort());
    const asked = LESSONS.flatMap(({ steps }) => steps.filter((step): step is PredictStep => step.kind === 'predict'));
    expect(drawn).toHaveLength(asked.filter(({ topic }) => topics.includes(topic ?? '')).length);
    expect(Object.keys(TOPICS)).toEqual(expect.arrayContaining(topics));
  });

  test.each(fans)(
    '$name: a letter for each answer in its order, no two lines together, all of one manner',
    ({ step, look }) => {
      if (step.shape !== 'choice') throw new Error('a fan of something that is not chosen');
      expect(look.lines.map(({ id, letter }) => [id, letter])).toEqual(
        step.options.map(({ id }, at) => [id, letterOf(at)]),
      );
      for (const line of look.lines)
        expect(manner(line, 0)).toEqual({ dots: FAN_DOTS + 1, from: look.fromM, even: true });
      const ends = look.lines.map(({ depthsM }) => endOf(depthsM)).sort((a, b) => a - b);
      ends.slice(1).forEach((end, i) => expect(end - ends[i]!).toBeGreaterThan(0.25));
      for (const depthM of look.lines.flatMap(({ depthsM }) => depthsM)) expect(depthM).toBeGreaterThanOrEqual(0);
    },
  );

  test.each(fans)('$name: the true line ends where the model does, and the others elsewhere', ({ look, truth }) => {
    for (const { id, depthsM } of look.lines) {
      const off = Math.abs(endOf(depthsM) - endOf(look.comesM));
      if (id === truth) expect(off).toBeLessThan(0.05);
      else expect(off).toBeGreaterThan(0.25);
    }
  });

  test.each(places)(
    '$name: no line, and the model comes to the very number of the debrief',
    ({ look, truth, step }) => {
      expect(look.lines).toEqual([]);
      expect(endOf(look.comesM)).toBe(truth);
      expect([look.comesM.length, look.overS]).toEqual([FAN_DOTS + 1, step.afterS]);
      expect(look.fromM).toBe(step.atM! + step.byM!);
    },
  );
});

describe('a fan', () => {
  const depth = fc.double({ min: 0, max: 40, noNaN: true });

  test('fanOf() leaves with the speed of the moment and bends evenly to its end, whichever line it is', () => {
    fc.assert(
      fc.property(
        depth,
        fc.array(depth, { minLength: 2, maxLength: 6 }),
        fc.double({ min: -5, max: 5, noNaN: true }),
        (fromM, ends, leavesM) => {
          const lines = fanOf(
            fromM,
            ends.map((endM, i) => ({ id: `a${i}`, endM })),
            leavesM,
          );
          lines.forEach((line, i) => {
            expect(manner(line, leavesM)).toEqual({ dots: FAN_DOTS + 1, from: fromM, even: true });
            expect(endOf(line.depthsM)).toBeCloseTo(ends[i]!, 9);
          });
        },
      ),
    );
  });

  test('mirroredEnds() sends who moves as far up as down, so that a length tells nothing', () => {
    const way = [
      { id: 'up', goes: -1 },
      { id: 'down', goes: 1 },
      { id: 'stays', goes: { toM: 20 } },
    ] as const;
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 15, noNaN: true }),
        fc.constantFrom('up', 'down', 'stays'),
        (farM, truth) => {
          const comesM = truth === 'up' ? 20 - farM : truth === 'down' ? 20 + farM : 20.1;
          const [up, down, stays] = mirroredEnds(20, way, truth, comesM).map(({ endM }) => endM) as [
            number,
            number,
            number,
          ];
          expect(20 - up).toBeCloseTo(down - 20, 9);
          expect({ up, down, stays }[truth]).toBe(comesM);
        },
      ),
    );
  });

  test('rankedEnds() keeps the order and the true end, whichever is true', () => {
    const believed = [0.4, 0.9, 2.4].map((endM, i) => ({ id: `a${i}`, endM }));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 }), fc.double({ min: 0.75, max: 9, noNaN: true }), (rank, comesM) => {
        const ends = rankedEnds(believed, `a${rank}`, comesM).map(({ endM }) => endM);
        expect(ends[rank]).toBe(comesM);
        expect(ends[1]! - ends[0]!).toBeGreaterThan(0.3);
        expect(ends[2]! - ends[1]!).toBeGreaterThan(0.3);
      }),
    );
  });
});

describe('saidInWater()', () => {
  test.each(places)('$name: metres and words are those of the debrief', ({ lesson, rig, step, look, truth }) => {
    const answer = 5.5;
    const { said, came, off } = outcomeOf(step, answer, truth, 3);
    const flag = saidInWater(lesson, rig, { id: step.id, answer, atRow: 30 }, look.fromM, 0)!;
    expect([flag.fromS, flag.overS, flag.depthsM, flag.words]).toEqual([3, look.overS, [5.5], 'you said 5.5 m']);
    expect(flag.came!.words).toBe(`you said ${said}; as asked it came to ${came}: ${off}`);
    expect(`${endOf(flag.came!.depthsM).toFixed(1)} m`).toBe(came);
    const right = Math.round(Number(truth) * 10) / 10;
    const met = saidInWater(lesson, rig, { id: step.id, answer: right, atRow: 0 }, look.fromM, 0)!;
    expect(met.came!.words).toBe(`you said ${right.toFixed(1)} m, and as asked it came so`);
  });

  test.each(fans.filter(({ name }) => name !== 'fresh-layer, below'))(
    '$name: the chosen line, by its letter, with the hands that were counted',
    ({ lesson, rig, step, look, truth }) => {
      const chosen = look.lines[1]!;
      const locked = { id: step.id, answer: chosen.id, atRow: 0 };
      const flag = saidInWater(lesson, rig, locked, look.fromM, 0)!;
      expect([flag.words, flag.depthsM]).toEqual(['you said B', chosen.depthsM]);
      expect(saidInWater(lesson, rig, locked, look.fromM, 14)!.words).toBe('14 said B');
      const letter = look.lines.find(({ id }) => id === truth)!.letter;
      expect(flag.came).toEqual({ depthsM: look.comesM, words: `as asked it came to ${letter}` });
    },
  );

  test('nothing is drawn of what was passed over, of another depth than the diver was at, and of what is no motion', () => {
    const { lesson, rig, step, look } = places[0]!;
    expect(saidInWater(lesson, rig, { id: step.id, answer: null, atRow: 0 }, look.fromM, 0)).toBeNull();
    expect(saidInWater(lesson, rig, { id: step.id, answer: 7, atRow: 0 }, look.fromM + 4, 0)).toBeNull();
    const hover = LESSONS.find(({ id }) => id === 'hover')!;
    const setup = lessonSetup(hover, loadSetupText(READY_TEXTS.get(hover.setup.ready)!));
    expect(saidInWater(hover, rigOf(setup), { id: 'breath', answer: 'gas', atRow: 0 }, 8, 0)).toBeNull();
  });
});

describe('shownNumber()', () => {
  const numbers = LESSONS.flatMap(({ steps }) => steps).filter((step): step is PredictStep => step.kind === 'predict');

  test('shows depths of no known moment on the scale, a rate on the way up as a slope, and nothing that foreseen() draws', () => {
    const shown = numbers.filter((step) => shownNumber(step) !== null);
    expect([...new Set(shown.map(({ topic }) => topic))].sort()).toEqual([
      'breath-reaches-to',
      'lost-lead-rate',
      'stops-at',
    ]);
    for (const step of shown) {
      expect(drawn.some((one) => one.step === step)).toBe(false);
      if (step.shape !== 'place' && step.shape !== 'number') throw new Error('a mark for what is no number');
      expect(step.unit).toBe(shownNumber(step)!.as === 'depth' ? 'm' : 'm/min');
    }
  });

  test('tells nothing of the answer: what is shown follows from the question alone', () => {
    for (const step of numbers) expect(shownNumber({ ...step, why: '' })).toEqual(shownNumber(step));
    const atTen = numbers.filter(({ topic }) => topic === 'lost-lead-rate');
    for (const step of atTen) expect(shownNumber(step)).toEqual({ as: 'slope', fromM: step.atM, way: -1 });
  });
});
