// @vitest-environment happy-dom
import { afterEach, describe, expect, test } from 'vitest';
import { findLesson, keepOwnFile, ownFile, readOwn, warningsOf } from '../../src/app/own-lesson.ts';
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
