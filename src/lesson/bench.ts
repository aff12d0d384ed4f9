/*
 * The third public door of this room: lessons at the bench. It carries the bench with its engine, which nobody needs who only
 * flies.
 */
export { BenchInHand, benchAsExpected, onScale, showingHands, workedBench, type ScriptedHands } from './bench-hands.ts';
export { BENCH_LESSONS } from './bench-catalogue.ts';
export type { BenchResult } from './bench-judge.ts';
export { triedUnder } from './tried-under.ts';
export type { BenchAim, BenchLesson, BenchPredict, BenchProof, TryStep } from './bench-lesson.ts';
export { benchDone, benchPrompt, sketchOf, tryingNow, type BenchRun } from './bench-runner.ts';
export { benchTruth } from './truth-bench.ts';
