import {
  BenchInHand,
  benchAsExpected,
  benchTruth,
  onScale,
  workedBench,
  type BenchLesson,
  type BenchPredict,
} from '../lesson/bench.ts';

/** The lesson, if its things can stand on the bench and its questions be answered. @throws {RangeError} where they cannot */
export function stood(lesson: BenchLesson): { readonly lesson: BenchLesson } {
  new BenchInHand(lesson).seen();
  for (const step of predictions(lesson)) benchTruth(lesson, step);
  return { lesson };
}

/** What its proof says of hands that pass and hands that fail, and does not come so, and answers that no scale of it has: a sentence each. */
export async function benchWarningsOf(lesson: BenchLesson): Promise<readonly string[]> {
  const warnings = predictions(lesson).flatMap((step) => offScale(lesson, step));
  const came: string[] = [];
  for (const [i, proof] of lesson.proof.entries()) {
    // Working through takes a while: the page has its turn in between.
    await new Promise((done) => setTimeout(done, 0));
    const result = workedBench(lesson, proof);
    came.push(result.verdict);
    if (benchAsExpected(proof, result)) continue;
    const unmet = result.demands.filter(({ met }) => !met).map(({ id }) => id);
    const how = result.verdict === 'pass' ? 'they pass' : `they fail by ${unmet.join(', ') || 'nothing that is named'}`;
    warnings.push(
      `Its proof says that hands ${i + 1} come to ${proof.comes}${proof.fault ? ` by ${proof.fault}` : ''}; here ${how}.`,
    );
  }
  if (!came.includes('pass')) warnings.push('No hands of its proof pass: perhaps it cannot be passed.');
  if (!came.includes('fail'))
    warnings.push('All hands of its proof pass: a lesson that everybody passes teaches nothing.');
  return warnings;
}

const predictions = ({ steps }: BenchLesson) => steps.filter((step): step is BenchPredict => step.kind === 'predict');

function offScale(lesson: BenchLesson, step: BenchPredict): string[] {
  const truth = benchTruth(lesson, step);
  if (step.shape === 'choice' || onScale(step, truth)) return [];
  const came = [truth].flat().map((one) => Number(one).toPrecision(3));
  return [`${step.id}: it comes to ${came.join(', ')} ${step.unit}, which is not on its scale.`];
}
