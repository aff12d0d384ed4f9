import { benchAsExpected, benchTruth, workedBench, type BenchLesson, type BenchPredict } from '../lesson/bench.ts';
import { printJson, type Io } from './io.ts';

/** Lessons at the bench with everybody whom their proofs name: rows of the table, and whether all came as expected. */
export function benchRows(lessons: readonly BenchLesson[]): { readonly rows: string[][]; readonly all: boolean } {
  let all = true;
  const rows = lessons.flatMap((lesson) =>
    lesson.proof.map((proof, i) => {
      const result = workedBench(lesson, proof);
      const good = benchAsExpected(proof, result);
      all &&= good;
      const expected = `${proof.comes}${proof.fault ? ` (${proof.fault})` : ''}${good ? '' : ': NOT SO'}`;
      const faults = result.demands.filter(({ met }) => !met).map(({ id }) => id);
      const passed = result.verdict === 'pass' ? '1/1' : '0/1';
      return [lesson.id, `hands ${i + 1}`, passed, expected, faults.join(', '), '', `${result.tookS.toFixed(0)} s`];
    }),
  );
  return { rows, all };
}

/** A lesson at the bench by the first hands of its proof, and what the bench says to each prediction. @returns whether they pass */
export function printBench(io: Io, lesson: BenchLesson): boolean {
  const asked = lesson.steps.filter((step): step is BenchPredict => step.kind === 'predict');
  const answers = asked.map((step) => ({ id: step.id, question: step.question, came: benchTruth(lesson, step) }));
  const [proof] = lesson.proof;
  const result = proof ? workedBench(lesson, proof) : null;
  printJson(io, { verdict: result?.verdict ?? 'error', demands: result?.demands ?? [], answers });
  return result?.verdict === 'pass';
}
