import type { Database, Together } from './database.ts';
import { MOST_LETTERS, MOST_RESULTS, isResult, type KeptResult, type Result } from './result.ts';
import { StoreProblem } from './trouble.ts';

/** All results that are as we write them, the oldest first. */
export function listResults(database: Database): Promise<KeptResult[]> {
  return database.together(soundOnes);
}

/** Keeps what came of a flight; a flight that is kept already stays as it is, its word with it. */
export function addResult(database: Database, result: Result): Promise<KeptResult> {
  return database.together(async (all) => {
    const there = (await soundOnes(all)).find((one) => isSameFlight(one, result));
    if (there) return there;
    // The database numbers a new one itself.
    const id = await all.objectStore('results').add({ ...result, word: short(result.word) } as KeptResult);
    await removeOldest(all);
    return { ...result, word: short(result.word), id };
  });
}

/** Writes the instructor's word beside a result. @throws {StoreProblem} when the result is gone */
export function writeWord(database: Database, id: number, word: string): Promise<void> {
  return database.together(async (all) => {
    const result = await all.objectStore('results').get(id);
    if (!isResult(result)) throw new StoreProblem('gone');
    await all.objectStore('results').put({ ...result, word: short(word) });
  });
}

async function soundOnes(all: Together): Promise<KeptResult[]> {
  const found: unknown[] = await all.objectStore('results').getAll();
  return found.filter(isResult).sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || a.id - b.id);
}

async function removeOldest(all: Together): Promise<void> {
  const results = all.objectStore('results');
  const tooMany = (await results.count()) - MOST_RESULTS;
  if (tooMany <= 0) return;
  for (const { id } of (await soundOnes(all)).slice(0, tooMany)) await results.delete(id);
}

const isSameFlight = (a: Result, b: Result): boolean =>
  a.lessonId === b.lessonId && a.under === b.under && a.flight === b.flight;

const short = (word: string): string => word.slice(0, MOST_LETTERS);
