// @vitest-environment happy-dom
import { afterEach, describe, expect, test } from 'vitest';
import benchTemplate from '../../lessons/bench/template.yaml?raw';
import { findLesson, findTaught, keepOwnFile, ownFile, readOwn, warningsOf } from '../../src/app/own-lesson.ts';
import { LESSONS } from '../../src/lesson/index.ts';
import { fiveMistakes, lineOf, mistakes, templateText } from '../fixtures/lessons/five-mistakes.ts';

afterEach(() => sessionStorage.clear());

const own = async (text: string) => {
  const read = await readOwn({ name: 'mine.yaml', text });
  if (!('lesson' in read)) throw new Error(JSON.stringify(read.problems));
  return read.lesson;
};

describe('a lesson file of one’s own', () => {
  test('readOwn(): five mistakes are five problems, each with line, found, allowed and suggestion', async () => {
    const read = await readOwn({ name: 'mine.yaml', text: fiveMistakes });
    if (!('problems' in read)) throw new Error('it was read');
    expect(read.problems.map(({ line, path }) => [line, path])).toEqual(
      mistakes.map(([path, , to]) => [lineOf(to), path]),
    );
    for (const { found, allowed, suggestion } of read.problems)
      expect([found, allowed, suggestion].every((words) => words.length > 0)).toBe(true);
  });

  test('readOwn(): a setup in which no dive can begin is a problem of its line, not an error', async () => {
    const read = await readOwn({ name: 'deep.yaml', text: templateText.replace('bottomM: 20', 'bottomM: 3') });
    expect(read).toHaveProperty('problems');
  });

  test('findLesson(): the file is found by its id for as long as it is kept, another text has another id', async () => {
    const lesson = await own(templateText);
    expect(await findLesson(lesson.id, window)).toBeNull();
    keepOwnFile(window, { name: 'mine.yaml', text: templateText });
    expect(await findLesson(lesson.id, window)).toEqual(lesson);
    expect(LESSONS.some(({ id }) => id === lesson.id)).toBe(false);
    expect((await own(`${templateText}\n# changed\n`)).id).not.toBe(lesson.id);
    keepOwnFile(window, null);
    expect(ownFile(window)).toBeNull();
  });

  test.each(['{', '"text"', '{"name":1}', 'null'])('ownFile(): %s in the store is no file', (found) => {
    sessionStorage.setItem('midwater-own-lesson', found);
    expect(ownFile(window)).toBeNull();
  });

  test('warningsOf(): the template has none; without proof, or with a false one, it says so', async () => {
    expect(await warningsOf(await own(templateText))).toEqual([]);
    const proofless = templateText.replace(/proof:[^\n]*\n(?: {2}- [^\n]*\n)+/, '');
    expect((await warningsOf(await own(proofless))).join()).toMatch(/no proof/);
    const wrong = templateText.replace('{ pilot: idler, comes: fail, fault: hover }', '{ pilot: idler, comes: pass }');
    const words = (await warningsOf(await own(wrong))).join(' ');
    expect(words).toMatch(/idler comes to pass.*here idler fails by hover/);
  });
});

describe('a lesson file of one’s own for the bench', () => {
  test('readOwn(): mistakes are problems with line, found, allowed and suggestion; without them it can be begun', async () => {
    expect((await own(benchTemplate)).phase).toBe('bench');
    const wrong = benchTemplate
      .replace('topic: stone-volume', 'topic: stone-volum')
      .replace('{ what: hung, least: 1 }', '{ what: depthM, least: 1 }')
      .replace('water: salt', 'water: salty');
    const read = await readOwn({ name: 'mine.yaml', text: wrong });
    if (!('problems' in read)) throw new Error('it was read');
    const line = (words: string) => wrong.split('\n').findIndex((one) => one.includes(words)) + 1;
    expect(read.problems.map((one) => one.line)).toEqual(
      expect.arrayContaining([line('water: salty'), line('topic: stone-volum')]),
    );
    for (const { found, allowed, suggestion } of read.problems)
      expect([found, allowed, suggestion].every((words) => words.length > 0)).toBe(true);
  });

  test('findTaught(): the file is found by its id for as long as it is kept, and is no lesson to be flown', async () => {
    const lesson = await own(benchTemplate);
    expect(await findTaught(lesson.id, window)).toBeNull();
    keepOwnFile(window, { name: 'mine.yaml', text: benchTemplate });
    expect(await findTaught(lesson.id, window)).toEqual(lesson);
    expect(await findLesson(lesson.id, window)).toBeNull();
    expect(await findTaught('five-stones', window)).toMatchObject({ id: 'five-stones', phase: 'bench' });
  });

  test(
    'warningsOf(): the template has none; a false proof, and an answer that no scale has, are told',
    { timeout: 20_000 },
    async () => {
      expect(await warningsOf(await own(benchTemplate))).toEqual([]);
      const words = (await warningsOf(await own(benchTemplate.replace('byMm: 220', 'byMm: 20')))).join(' ');
      expect(words).toMatch(/hands 1 come to pass; here they fail by under.*No hands of its proof pass/);
      const off = await warningsOf(await own(benchTemplate.replace('massKg: 1.2', 'massKg: 0.2')));
      expect(off.join(' ')).toMatch(/volume: it comes to 80\.0 mL, which is not on its scale/);
    },
  );
});
