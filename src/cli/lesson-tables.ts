import { rigOf, type Rig } from '../diver/index.ts';
import { LESSONS, asExpected, flights, lessonSetup, type Flights, type Lesson } from '../lesson/index.ts';
import { BENCH_LESSONS, type BenchLesson } from '../lesson/bench.ts';
import { PILOT_NAMES } from '../pilot/index.ts';
import { setupAt } from './files.ts';
import type { Io } from './io.ts';
import { benchRows } from './lesson-bench.ts';

/** The first so many seeds. */
function seedsUpTo(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i + 1);
}

const HEAD = ['lesson', 'flown by', 'passes', 'expected', 'faults', 'marks, on average', 'longest'];

/** Every lesson with everybody whom its proof names. @returns whether all came as expected */
export function printAllProofs(
  io: Io,
  seeds: number,
  lessons: readonly Lesson[] = LESSONS,
  bench: readonly BenchLesson[] = BENCH_LESSONS,
): boolean {
  const worked = benchRows(bench);
  let { all } = worked;
  const rows = lessons.flatMap((lesson) => {
    const rig = rigOf(lessonSetup(lesson, setupAt(lesson.setup.ready)));
    return lesson.proof.map((proof, i) => {
      const flown = flights(lesson, rig, proof, seedsUpTo(proof.script ? 1 : seeds));
      const good = asExpected(proof, flown);
      all &&= good;
      const expected = `${proof.comes}${proof.fault ? ` (${proof.fault})` : ''}${good ? '' : ': NOT SO'}`;
      return row(lesson, proof.pilot ?? `script ${i + 1}`, expected, flown);
    });
  });
  printTable(io, [HEAD, ...rows, ...worked.rows]);
  return all;
}

/** One lesson with every simulated diver. */
export function printAllPilots(io: Io, lesson: Lesson, rig: Rig, seeds: number): void {
  const rows = PILOT_NAMES.map((pilot) => {
    const said = lesson.proof.find((one) => one.pilot === pilot);
    return row(lesson, pilot, said?.comes ?? '', flights(lesson, rig, { pilot }, seedsUpTo(seeds)));
  });
  printTable(io, [HEAD, ...rows]);
}

function row(
  { id }: Lesson,
  by: string,
  expected: string,
  { passed, flown, faults, scores, longestS }: Flights,
): string[] {
  const faultWords = [...faults].map(([fault, count]) => (count === flown ? fault : `${fault} ${count}/${flown}`));
  const scoreWords = [...scores].map(([mark, score]) => `${mark} ${score.toFixed(0)}`);
  return [
    id,
    by,
    `${passed}/${flown}`,
    expected,
    faultWords.join(', '),
    scoreWords.join(', '),
    `${longestS.toFixed(0)} s`,
  ];
}

/** Columns, each as wide as its widest. */
function printTable(io: Io, rows: readonly (readonly string[])[]): void {
  const widths = HEAD.map((_, i) => Math.max(...rows.map((cells) => cells[i]?.length ?? 0)));
  for (const cells of rows)
    io.out(
      `${cells
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd()}\n`,
    );
}
