import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { problemText, type Problem } from '../../src/diver/file.ts';
import { BENCH_LESSONS, benchTruth } from '../../src/lesson/bench.ts';
import { loadBenchLessonText, readBenchLesson } from '../../src/lesson/file.ts';
import { spoil, type Break } from '../fixtures/lessons/mutants.ts';
import { chanceOf, damaged } from '../fixtures/setups/mutants.ts';

const folder = new URL('../../lessons/bench/', import.meta.url);
const FILES = readdirSync(folder);
const TEXTS = FILES.map((name) => readFileSync(new URL(name, folder), 'utf8'));
const textFor = (seed: number) => TEXTS[seed % TEXTS.length]!;

/** Problems that a person can use: each with a line of the text and words in every field. */
function expectUsable(problems: readonly Problem[], text: string): void {
  expect(problems.length).toBeGreaterThan(0);
  const lines = text.split('\n').length;
  for (const { line, found, allowed, suggestion } of problems) {
    expect(Number.isInteger(line) && line >= 1 && line <= lines, `line ${line} of ${lines}`).toBe(true);
    for (const words of [found, allowed, suggestion]) expect(words).not.toBe('');
  }
}

test('our own lessons at the bench are complete: what the reader gives is what the file says', () => {
  expect(FILES.filter((name) => name !== 'template.yaml').sort()).toEqual(
    BENCH_LESSONS.map(({ id }) => `${id}.yaml`).sort(),
  );
  for (const lesson of BENCH_LESSONS)
    expect(loadBenchLessonText(readFileSync(new URL(`${lesson.id}.yaml`, folder), 'utf8'))).toEqual(lesson);
});

test('readBenchLesson() has no key for an answer: the bench computes it', () => {
  const typed = textFor(0).replace(/( {4}topic: .*\n)/, '$1    answer: 25\n');
  const read = readBenchLesson(typed);
  expect('problems' in read && read.problems.map(({ found }) => found).join()).toContain('answer');
});

for (const kind of ['type', 'range', 'key', 'double', 'word'] satisfies Break[])
  test(`readBenchLesson() refuses each of 180 files with a broken ${kind}, on its line or its step's`, () => {
    for (let seed = 0; seed < 180; seed++) {
      const spoiled = spoil(textFor(seed), kind, chanceOf(seed));
      if (!spoiled) throw new Error(`nothing to spoil by ${kind}`);
      const { text, line, key, written } = spoiled;
      const read = readBenchLesson(text);
      if (!('problems' in read)) throw new Error(`accepted ${key} as ${written} on line ${line}\n${text}`);
      expectUsable(read.problems, text);
      const there = read.problems.some((problem) => Math.abs(problem.line - line) <= 16);
      expect(there, `${key} as ${written} on line ${line}: ${read.problems.map(problemText).join('\n')}`).toBe(true);
    }
  });

test('readBenchLesson() survives 300 damaged files: a lesson whose answers can be computed, or problems', () => {
  let accepted = 0;
  for (let seed = 0; seed < 300; seed++) {
    const chance = chanceOf(seed);
    let text = textFor(seed);
    for (let times = 1 + Math.floor(chance() * 3); times > 0; times--) text = damaged(text, chance);
    const read = readBenchLesson(text);
    if ('problems' in read) {
      expectUsable(read.problems, text);
      continue;
    }
    accepted++;
    for (const step of read.lesson.steps)
      if (step.kind === 'predict') expect(() => benchTruth(read.lesson, step), text).not.toThrow();
  }
  expect(accepted).toBeGreaterThan(10);
  expect(accepted).toBeLessThan(250);
});
