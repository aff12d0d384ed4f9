import { describe, expect, test } from 'vitest';
import { BENCH_LESSONS, benchAsExpected, benchTruth, workedBench, type BenchPredict } from '../../src/lesson/bench.ts';

const predictions = (lesson: (typeof BENCH_LESSONS)[number]) =>
  lesson.steps.filter((step): step is BenchPredict => step.kind === 'predict');

describe.each(BENCH_LESSONS.map((lesson) => [lesson.id, lesson] as const))('%s', (_, lesson) => {
  test('comes as its proof says, within its minutes', { timeout: 30_000 }, () => {
    expect(lesson.proof.filter(({ comes }) => comes === 'pass').length).toBeGreaterThanOrEqual(1);
    expect(lesson.proof.filter(({ comes }) => comes === 'fail').length).toBeGreaterThanOrEqual(2);
    for (const [i, proof] of lesson.proof.entries()) {
      const result = workedBench(lesson, proof);
      const unmet = result.demands.filter(({ met }) => !met).map(({ id }) => id);
      expect(benchAsExpected(proof, result), `${i + 1}: ${result.verdict}, not met: ${unmet.join()}`).toBe(true);
      if (proof.comes === 'pass') expect(result.tookS).toBeLessThan(lesson.minutes * 60);
    }
  });

  test('asks what lies on its scales, of which nobody is right by chance, and says why', () => {
    expect(predictions(lesson).length).toBeGreaterThanOrEqual(2);
    for (const step of predictions(lesson)) {
      const truth = benchTruth(lesson, step);
      if (step.shape === 'choice') {
        expect(step.options.map(({ id }) => id)).toContain(truth);
        continue;
      }
      for (const value of [truth].flat().map(Number)) {
        expect(value, step.id).toBeGreaterThanOrEqual(step.least);
        expect(value, step.id).toBeLessThan(step.most);
        const within = step.shape === 'curve' ? step.withinShare * value : step.within;
        expect(within * 2, step.id).toBeLessThan((step.most - step.least) / 3);
      }
    }
    expect(lesson.steps.at(-1)?.kind).toBe('ask');
    for (const { why } of lesson.values) expect(why).toMatch(/^Practice: /);
  });
});

/** What the bench says to one question of one lesson. */
function truth(lessonId: string, stepId: string) {
  const lesson = BENCH_LESSONS.find(({ id }) => id === lessonId)!;
  return benchTruth(
    lesson,
    predictions(lesson).find(({ id }) => id === stepId)!,
  );
}

describe('benchTruth() agrees with what is worked out by hand', () => {
  // Fresh water of 18 °C has 998.6 kg/m³, sea water of 15 °C and 35 psu 1025.97 (EOS-80, published tables).
  const G = 9.80665;

  test('F = m g (1 − ρw/ρ) of the lump, nothing of the tray', () => {
    expect(truth('lump-and-tray', 'lump-reads')).toBeCloseTo(0.7 * G * (1 - 998.6 / 1750), 2);
    expect(truth('lump-and-tray', 'tray-reads')).toBe(0);
    expect(truth('lump-and-tray', 'floats')).toBe('tray');
  });

  test('V = m/ρ of the stone, and its density', () => {
    expect(truth('weighing-in-water', 'volume')).toBeCloseTo((0.8 / 2650) * 1e6, 3);
    expect(truth('weighing-in-water', 'density')).toBeCloseTo(2650, 6);
  });

  test('h ρ (1/ρ₁ − 1/ρ₂) less deep in the sea', () => {
    expect(truth('two-waters', 'draught')).toBeCloseTo(120 * 960 * (1 / 998.6 - 1 / 1025.97), 2);
    expect(truth('two-waters', 'rides')).toBe('higher');
  });

  test('V = V₀ p₀/p of the bag', () => {
    const pa = (depthM: number) => 101_325 + 1026 * G * depthM;
    const at5L = (1 / 1026 - 6e-5) * 1e3;
    const wanted = [0, 10, 30].map((depthM) => (at5L * pa(5)) / pa(depthM));
    const found = truth('rigid-and-flexible', 'curve') as readonly number[];
    for (const [i, litres] of wanted.entries()) expect(found[i]).toBeCloseTo(litres, 9);
  });

  test('ρ g h of squeeze to sink, and no return where the bottle is neutral', () => {
    expect(truth('bottle-diver', 'squeeze')).toBeCloseTo((998.6 * G * 0.2) / 1000, 9);
    expect(truth('bottle-diver', 'point')).toBeCloseTo(25, 9);
  });
});
