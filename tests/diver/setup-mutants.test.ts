import { expect, test } from 'vitest';
import { problemText, readSetup, type Problem } from '../../src/diver/file.ts';
import { instantOf, netForceN, rigOf } from '../../src/diver/index.ts';
import { chanceOf, damaged, spoil, type Break, type Spoiled } from '../fixtures/setups/mutants.ts';
import { EXAMPLE, READY_TEXTS } from '../fixtures/setups/texts.ts';

const texts = [EXAMPLE, ...READY_TEXTS.values()];

/** Problems that a person can use: each with a line of the text and words in every field. */
function expectUsable(problems: readonly Problem[], text: string): void {
  expect(problems.length).toBeGreaterThan(0);
  const lines = text.split('\n').length;
  for (const { line, found, allowed, suggestion } of problems) {
    expect(Number.isInteger(line) && line >= 1 && line <= lines, `line ${line} of ${lines}`).toBe(true);
    for (const words of [found, allowed, suggestion]) expect(words).not.toBe('');
  }
}

function spoiledTexts(kind: Break, count: number, firstSeed: number): Spoiled[] {
  const all: Spoiled[] = [];
  for (let seed = firstSeed; all.length < count; seed++) {
    const spoiled = spoil(texts[seed % texts.length], kind, chanceOf(seed));
    if (spoiled) all.push(spoiled);
  }
  return all;
}

for (const kind of ['type', 'range', 'key', 'double'] as const)
  test(`readSetup() refuses each of 300 files with a broken ${kind}, on its line`, () => {
    for (const { text, line, key, written } of spoiledTexts(kind, 300, 1000)) {
      const read = readSetup(text);
      if (!('problems' in read)) throw new Error(`accepted ${key} as ${written} on line ${line} of\n${text}`);
      expectUsable(read.problems, text);
      const there = read.problems.filter((problem) => problem.line === line);
      expect(
        there.length,
        `${key} as ${written} on line ${line}: ${read.problems.map(problemText).join('\n')}`,
      ).toBeGreaterThan(0);
    }
  });

test('readSetup() suggests the key that was meant for 9 of 10 misspelt ones', () => {
  const spoiled = spoiledTexts('key', 200, 5000);
  const guessed = spoiled.filter(({ text, key }) => {
    const read = readSetup(text);
    return 'problems' in read && read.problems.some(({ suggestion }) => suggestion === `Write ${key}`);
  });
  expect(guessed.length).toBeGreaterThanOrEqual(180);
});

test('readSetup() finds two broken values in one file together', () => {
  let pairs = 0;
  for (const [i, first] of spoiledTexts('type', 200, 9000).entries()) {
    const second = spoil(first.text, 'range', chanceOf(i));
    // A list in brackets hides the place of a value that was replaced by it.
    if (!second || second.line === first.line) continue;
    pairs++;
    const read = readSetup(second.text);
    const lines = 'problems' in read ? read.problems.map(({ line }) => line) : [];
    expect(lines, second.text).toEqual(expect.arrayContaining([first.line, second.line]));
  }
  expect(pairs).toBeGreaterThan(150);
});

test('readSetup() survives 2,000 damaged files: a setup that works, or problems with lines', () => {
  let accepted = 0;
  for (let seed = 0; seed < 2000; seed++) {
    const chance = chanceOf(seed);
    let text = texts[seed % texts.length];
    for (let times = 1 + Math.floor(chance() * 3); times > 0; times--) text = damaged(text, chance);
    const read = readSetup(text);
    if ('problems' in read) expectUsable(read.problems, text);
    else {
      accepted++;
      const rig = rigOf(read.setup);
      for (const depthM of [0, rig.bottomM])
        expect(netForceN(rig, instantOf(rig, { depthM })), text).toBeTypeOf('number');
      expect(Number.isFinite(netForceN(rig, instantOf(rig, { depthM: rig.bottomM })))).toBe(true);
    }
  }
  expect(accepted).toBeGreaterThan(100);
  expect(accepted).toBeLessThan(1500);
});
