/*
 * The third public door of this room: lessons at the bench. It carries the bench with its engine, which nobody needs who only
 * flies.
 */
export { benchAsExpected, workedBench } from './bench-hands.ts';
export { BENCH_LESSONS } from './bench-catalogue.ts';
export type { BenchResult } from './bench-judge.ts';
export type { BenchAim, BenchLesson, BenchPredict, BenchProof, TryStep } from './bench-lesson.ts';
export { benchTruth } from './truth-bench.ts';
