import { expect, test } from 'vitest';
import { leftBenchRun, keepBenchRun } from '../../src/app/bench-memory.ts';
import { BENCH_LESSONS, BenchInHand } from '../../src/lesson/bench.ts';

const [lesson, other] = BENCH_LESSONS;

/** A tab's own shelf, or one that holds something else. */
function tab(text: string | null = null): Window {
  let kept = text;
  const sessionStorage = { getItem: () => kept, setItem: (_: string, value: string) => void (kept = value) };
  return { sessionStorage } as unknown as Window;
}

test('leftBenchRun() gives back what keepBenchRun() kept, answers and all, and only to the same lesson', () => {
  const view = tab();
  const hand = new BenchInHand(lesson!);
  hand.answer(null);
  hand.answer('both');
  keepBenchRun(view, hand.run, false);
  expect(leftBenchRun(view, lesson!)).toEqual({ run: hand.run, wasShown: false });
  expect(new BenchInHand(lesson!, leftBenchRun(view, lesson!)?.run).run.answers).toEqual([
    { id: 'floats', answer: 'both', atS: 0 },
  ]);
  expect(leftBenchRun(view, other!)).toBeUndefined();
});

test('leftBenchRun() remembers that a lesson was shown: after a reload it is still nobody’s result', () => {
  const view = tab();
  const hand = new BenchInHand(lesson!);
  keepBenchRun(view, hand.run, true);
  expect(leftBenchRun(view, lesson!)?.wasShown).toBe(true);
});

test.each([
  '',
  '{',
  'null',
  '7',
  '[]',
  '{"lessonId":"lump-and-tray","step":-1,"answers":[],"tries":[],"passedS":0}',
  '{"run":{"lessonId":"lump-and-tray","step":-1,"answers":[],"tries":[],"passedS":0},"wasShown":false}',
])('leftBenchRun() begins anew where %j was left', (text) => expect(leftBenchRun(tab(text), lesson!)).toBeUndefined());
