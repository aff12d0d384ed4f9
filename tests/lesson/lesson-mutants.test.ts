import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { problemText, type Problem } from '../../src/diver/file.ts';
import { readLesson } from '../../src/lesson/file.ts';
import { beginLesson } from '../../src/lesson/index.ts';
import { spoil, type Break } from '../fixtures/lessons/mutants.ts';
import { chanceOf, damaged } from '../fixtures/setups/mutants.ts';

const folder = new URL('../../lessons/', import.meta.url);
const TEXTS = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8'));
/** One of all our lessons, and the template, for each seed. */
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

for (const kind of ['type', 'range', 'key', 'double', 'word'] satisfies Break[])
  test(`readLesson() refuses each of 300 files with a broken ${kind}, on its line or its step's`, () => {
    for (let seed = 0; seed < 300; seed++) {
      const original = textFor(seed);
      const spoiled = spoil(original, kind, chanceOf(seed));
      if (!spoiled) throw new Error(`nothing to spoil by ${kind}`);
      const { text, line, key, written } = spoiled;
      const read = readLesson(text);
      if (!('problems' in read)) throw new Error(`accepted ${key} as ${written} on line ${line}\n${text}`);
      expectUsable(read.problems, text);
      const there = read.problems.some((problem) => Math.abs(problem.line - line) <= 16);
      expect(there, `${key} as ${written} on line ${line}: ${read.problems.map(problemText).join('\n')}`).toBe(true);
    }
  });

test.each([0, 1, 2, 3, 4])(
  'readLesson() survives 300 damaged files: a lesson that can begin, or problems (%i)',
  (part) => {
    let accepted = 0;
    for (let seed = part * 300; seed < (part + 1) * 300; seed++) {
      const chance = chanceOf(seed);
      let text = textFor(seed);
      for (let times = 1 + Math.floor(chance() * 3); times > 0; times--) text = damaged(text, chance);
      const read = readLesson(text);
      if ('problems' in read) expectUsable(read.problems, text);
      else {
        accepted++;
        expect(beginLesson(read.lesson).ended, text).toBeNull();
      }
    }
    expect(accepted).toBeGreaterThan(10);
    expect(accepted).toBeLessThan(250);
  },
);
