import { openDB } from 'idb';
import { beforeEach, describe, expect, test } from 'vitest';
import { Store, type Result } from '../../src/store/index.ts';
import { MOST_LETTERS, MOST_RESULTS } from '../../src/store/result.ts';
import { busyDive, readyRig } from '../dive/run-file-fixture.ts';
import { WHAT, chanceOf, newBrowser } from './fixture.ts';

beforeEach(newBrowser);

const HOVER: Result = {
  lessonId: 'hover',
  at: '2026-11-20T18:30:00.000Z',
  under: 'a1',
  flight: 'f1',
  attempt: 1,
  marks: [{ id: 'hover', score: 61.5, word: 'nearly', ok: false }],
  demands: { met: 1, of: 2 },
  predictions: { right: 2, of: 3 },
  habits: ['no-breath'],
  verdict: 'fail',
  missed: null,
  word: '',
};

/** Days after the first, the flight another each time. */
const later = (days: number): Result => ({
  ...HOVER,
  at: new Date(Date.parse(HOVER.at) + days * 86_400_000).toISOString(),
  flight: `f${days}`,
});

/** Does something in the database past the store. */
async function past(work: (db: Awaited<ReturnType<typeof openDB>>) => Promise<unknown>): Promise<void> {
  const db = await openDB('midwater');
  await work(db);
  db.close();
}

describe('results', () => {
  test('come back as they were kept, the oldest first, whatever the order they were kept in', async () => {
    for (const days of [3, 1, 2]) await new Store().addResult(later(days));
    const read = await new Store().results();
    expect(read.map(({ id: _, ...rest }) => rest)).toEqual([later(1), later(2), later(3)]);
    expect(new Set(read.map(({ id }) => id)).size).toBe(3);
  });

  test('a flight is kept once, its word with it; the same bits under other limits are another', async () => {
    const store = new Store();
    const { id } = await store.addResult(HOVER);
    await store.writeWord(id, 'Wait for the breath.');
    expect(await store.addResult({ ...later(4), flight: HOVER.flight })).toEqual({
      ...HOVER,
      id,
      word: 'Wait for the breath.',
    });
    await store.addResult({ ...HOVER, under: 'b2' });
    expect(await store.results()).toHaveLength(2);
  });

  test('a word is changed, cut where it has no end, and refused where its result is gone', async () => {
    const store = new Store();
    const { id } = await store.addResult(HOVER);
    await store.writeWord(id, 'x'.repeat(MOST_LETTERS + 5));
    expect((await store.results())[0]!.word).toHaveLength(MOST_LETTERS);
    await store.writeWord(id, '');
    expect((await store.results())[0]!.word).toBe('');
    await expect(store.writeWord(id + 1, 'nobody')).rejects.toMatchObject({ fault: 'gone' });
  });

  test('of more than may be kept the oldest go', async () => {
    const store = new Store();
    await store.addResult(later(0));
    await past(async (db) => {
      const all = db.transaction('results', 'readwrite');
      for (let day = 1; day < MOST_RESULTS; day++) await all.store.add(later(day));
      await all.done;
    });
    await store.addResult(later(MOST_RESULTS));
    const read = await store.results();
    expect(read).toHaveLength(MOST_RESULTS);
    expect(read[0]!.at).toBe(later(1).at);
  });

  const damages: Record<string, object> = {
    'a score of nobody': { marks: [{ id: 'hover', score: 'high', word: 'nearly', ok: true }] },
    'a score above 100': { marks: [{ id: 'hover', score: 101, word: 'secure', ok: true }] },
    'a word of another language': { marks: [{ id: 'hover', score: 50, word: 'gut', ok: true }] },
    'more met than there was': { demands: { met: 3, of: 2 } },
    'no day': { at: 'yesterday' },
    'habits that are none': { habits: [7] },
    'no predictions': { predictions: null },
    'a flight before the first': { attempt: 0 },
    'a verdict of tomorrow': { verdict: 'perhaps' },
    'no word': { word: undefined },
  };

  test.each(Object.entries(damages))('%s: left out, and the others can be read', async (_, damage) => {
    const store = new Store();
    const { id } = await store.addResult(HOVER);
    const sound = await store.addResult(later(2));
    await past((db) => db.put('results', { ...HOVER, id, ...damage }));
    expect(await store.results()).toEqual([sound]);
  });

  test('all of it is erased with everything else, and what comes after is kept again', async () => {
    const store = new Store();
    await store.addResult(HOVER);
    await store.eraseAll();
    expect(await store.results()).toEqual([]);
    await store.addResult(later(1));
    expect(await store.results()).toHaveLength(1);
  });

  test('a database of the version before is brought up to this one, its dives with it', async () => {
    const db = await openDB('midwater', 2, {
      upgrade(old) {
        old.createObjectStore('dives', { keyPath: 'id', autoIncrement: true });
        old.createObjectStore('starts', { keyPath: 'id' });
        old.createObjectStore('pieces', { keyPath: ['id', 'piece'] });
        old.createObjectStore('beside', { keyPath: 'id' });
      },
    });
    await db.put('dives', { id: 1, name: 'kept before', shape: 1 });
    db.close();
    const store = new Store();
    await store.addResult(HOVER);
    expect(await store.results()).toHaveLength(1);
    expect(await store.list()).toHaveLength(1);
  });

  test('which flight of a lesson a kept dive is comes back with it; of older ones it is the first', async () => {
    const keeping = new Store().begin();
    await keeping.keep(busyDive(readyRig('first-dive'), 5, chanceOf(1)), { ...WHAT, attempt: 3 });
    expect((await new Store().read(keeping.id!)).attempt).toBe(3);
    await past(async (db) => {
      const { attempt: _, ...line } = (await db.get('dives', keeping.id!)) as { attempt?: number };
      await db.put('dives', { ...line, shape: 2 });
    });
    expect((await new Store().read(keeping.id!)).attempt).toBe(1);
  });
});
