import { openDB } from 'idb';
import { beforeEach, describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import type { Setup } from '../../src/diver/index.ts';
import { replay } from '../../src/dive/index.ts';
import { Store, type KeptPair } from '../../src/store/index.ts';
import { busyDive, readyRig } from '../dive/run-file-fixture.ts';
import { WHAT, chanceOf, newBrowser } from './fixture.ts';

beforeEach(newBrowser);

const PAIR: KeptPair = { difference: 'former', by: 'steady', own: firstDive as Setup, words: '2 kg less lead' };
const HEAVIER: KeptPair = { difference: 'lead:4', by: 'hands', own: null, words: '' };

const flown = () => busyDive(readyRig('first-dive'), 10, chanceOf(3));
const readPair = async (id: number) => (await new Store().read(id)).pair;

/** Changes what stands in a dive's line. */
async function changed(id: number, change: (line: Record<string, unknown>) => unknown): Promise<void> {
  const db = await openDB('midwater');
  await db.put('dives', change((await db.get('dives', id)) as Record<string, unknown>));
  db.close();
}

describe('the second diver who is kept with a dive', () => {
  test('comes back as he was, his setup with him', async () => {
    const keeping = new Store().begin();
    await keeping.keep(flown(), { ...WHAT, pair: PAIR });
    expect(await readPair(keeping.id!)).toEqual(PAIR);
  });

  test('it is behind while another or nobody dives beside, and follows that though the dive stands still', async () => {
    const dive = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, { ...WHAT, pair: null });
    for (const pair of [PAIR, HEAVIER, null]) {
      expect(keeping.isBehind(dive, { ...WHAT, pair })).toBe(true);
      await keeping.keep(dive, { ...WHAT, pair });
      expect(keeping.isBehind(dive, { ...WHAT, pair })).toBe(false);
      expect(await readPair(keeping.id!)).toEqual(pair);
    }
  });

  test('stays where a page goes on with the dive and says nothing of him', async () => {
    const dive = flown();
    const first = new Store();
    const keeping = first.begin();
    await keeping.keep(dive, { ...WHAT, pair: PAIR });
    await keeping.leave(false);
    const kept = await first.read(keeping.id!);
    const { keeping: again } = await first.goOn(kept, false);
    const on = replay(kept.run);
    on.advance(60);
    await again.keep(on, WHAT);
    const read = await first.read(again.id!);
    expect(read.run.ticks).toBe(on.tick);
    expect(read.pair).toEqual(PAIR);
  });

  test('is not spoken of in a record of the shape before, which is read on', async () => {
    const dive = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, { ...WHAT, pair: PAIR });
    await changed(keeping.id!, ({ pair: _, ...line }) => ({ ...line, shape: 4 }));
    const kept = await new Store().read(keeping.id!);
    expect(kept.pair).toBeUndefined();
    expect(replay(kept.run).hash()).toBe(dive.hash());
  });

  test('goes with everything that is erased', async () => {
    const store = new Store();
    const keeping = store.begin();
    const dive = flown();
    await keeping.keep(dive, { ...WHAT, pair: PAIR });
    await store.eraseAll();
    await keeping.keep(dive, { ...WHAT, pair: HEAVIER });
    const db = await openDB('midwater');
    expect([...db.objectStoreNames]).toEqual([]);
    db.close();
  });

  const rotten = firstDive as Setup;
  const damages: Record<string, unknown> = {
    'a word': 'two',
    'a number': 2,
    'a list': [],
    'nobody who flies': { ...PAIR, by: 3 },
    'no words': { difference: 'lead:2', by: 'hands', own: null },
    'a setup that is none': { ...PAIR, own: { format: 1 } },
    'a setup of words': { ...PAIR, own: 'first-dive' },
    'no word of a setup': { difference: 'former', by: 'hands', words: '' },
    'lead of no mass': { ...PAIR, own: { ...rotten, lead: [{ ...rotten.lead[0]!, massKg: NaN }] } },
    'lead of a thousand tonnes': { ...PAIR, own: { ...rotten, lead: [{ ...rotten.lead[0]!, massKg: 1e6 }] } },
  };

  test.each(Object.entries(damages))('%s: that is said, and the dive comes back alone', async (_, pair) => {
    const dive = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, { ...WHAT, pair: PAIR });
    await changed(keeping.id!, (line) => ({ ...line, pair }));
    expect(await new Store().list()).toMatchObject([{ damaged: false }]);
    const kept = await new Store().read(keeping.id!);
    expect(kept.pair).toBe('damaged');
    expect(replay(kept.run).hash()).toBe(dive.hash());
  });
});
