import { openDB } from 'idb';
import { beforeEach, describe, expect, test } from 'vitest';
import { diveAt, replay } from '../../src/dive/index.ts';
import { Store, type KeptBeside } from '../../src/store/index.ts';
import { busyDive, readyRig } from '../dive/run-file-fixture.ts';
import { WHAT, chanceOf, newBrowser } from './fixture.ts';

beforeEach(newBrowser);

/** A dive that was left at 20 s for another, a bookmark on it, and the ghost of another diver. */
function flown() {
  const rig = readyRig('first-dive');
  const left = busyDive(rig, 40, chanceOf(3));
  const dive = diveAt(left, 20 * 120);
  dive.steer({ ...dive.controls, jacketVent: 1 });
  dive.advance(600);
  const ghost = busyDive(readyRig('drysuit-foam'), 30, chanceOf(5));
  const beside = {
    name: 'let go',
    marks: [{ number: 2, tick: 1200, name: 'first kick' }],
    others: [
      {
        ...{ letter: 'A', name: 'as it was', knotTick: 2400, shown: false, dive: left },
        ...{ leftAs: 3, later: [{ number: 4, tick: 3000, name: 'the ground' }] },
      },
    ],
    ghost: { name: 'ghost.midwater', shown: true, dive: ghost },
  } as const;
  return { dive, left, ghost, beside };
}

const hashOf = ({ dive }: { dive: Parameters<typeof replay>[0] }) => replay(dive).hash();

/** What was read beside a dive. */
async function readBeside(id: number) {
  const { beside } = await new Store().read(id);
  if (!beside || beside === 'damaged') throw new Error(`nothing beside it: ${beside}`);
  return beside;
}

describe('what is kept beside a dive', () => {
  test('other lines, bookmarks and ghost come back, every dive of them to the bit', async () => {
    const { dive, left, ghost, beside } = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, WHAT, beside);
    const read = await readBeside(keeping.id!);
    expect(read).toMatchObject({ name: 'let go', marks: beside.marks });
    expect(read.others).toMatchObject([{ letter: 'A', name: 'as it was', knotTick: 2400, shown: false }]);
    expect(read.others[0]).toMatchObject({ leftAs: 3, later: [{ number: 4, tick: 3000, name: 'the ground' }] });
    expect(hashOf(read.others[0]!)).toBe(left.hash());
    expect(read.ghost).toMatchObject({ name: 'ghost.midwater', shown: true });
    expect(hashOf(read.ghost!)).toBe(ghost.hash());
  });

  test('it is behind while what stands beside it is another, and follows it, to nothing too', async () => {
    const { dive, beside } = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, WHAT);
    expect((await new Store().read(keeping.id!)).beside).toBeNull();
    const marked: KeptBeside<typeof dive> = {
      name: '',
      marks: [{ number: 1, tick: 600, name: '' }],
      others: [],
      ghost: null,
    };
    for (const next of [beside, marked]) {
      expect(keeping.isBehind(dive, WHAT, next)).toBe(true);
      await keeping.keep(dive, WHAT, next);
      expect(keeping.isBehind(dive, WHAT, next)).toBe(false);
      expect((await readBeside(keeping.id!)).marks).toEqual(next.marks);
    }
    await keeping.keep(dive, WHAT, null);
    expect((await new Store().read(keeping.id!)).beside).toBeNull();
  });

  test('lines of a time when it was not counted which was left when come back, in the order of their letters', async () => {
    const { dive, beside } = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, WHAT, beside);
    const db = await openDB('midwater');
    const record = (await db.get('beside', keeping.id!)) as { others: { leftAs?: number; later?: unknown }[] };
    const { leftAs: _, later: __, ...old } = record.others[0]!;
    await db.put('beside', { ...record, others: [old, { ...old, letter: 'B' }] });
    db.close();
    const { others } = await readBeside(keeping.id!);
    expect(others.map(({ leftAs, later }) => [leftAs, later])).toEqual([
      [1, []],
      [2, []],
    ]);
  });

  test('bookmarks of a time when they had no names come back without', async () => {
    const { dive, beside } = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, WHAT, beside);
    const db = await openDB('midwater');
    const record = (await db.get('beside', keeping.id!)) as object;
    await db.put('beside', { ...record, marks: [{ number: 2, tick: 1200 }] });
    db.close();
    expect((await readBeside(keeping.id!)).marks).toEqual([{ number: 2, tick: 1200, name: '' }]);
  });

  test('it goes with its dive', async () => {
    const { dive, beside } = flown();
    const store = new Store();
    const keeping = store.begin();
    await keeping.keep(dive, WHAT, beside);
    await store.remove(keeping.id!);
    const db = await openDB('midwater');
    expect(await db.count('beside')).toBe(0);
    db.close();
  });

  const damages: Record<string, (record: Record<string, unknown>) => unknown> = {
    'no bookmarks': ({ marks: _, ...rest }) => rest,
    'a bookmark that is called a number': (record) => ({ ...record, marks: [{ number: 1, tick: 6, name: 3 }] }),
    'a bookmark before the start': (record) => ({ ...record, marks: [{ number: 1, tick: -6 }] }),
    'a line without a letter': (record) => ({ ...record, others: [{ ...first(record), letter: '' }] }),
    'a line without its run': (record) => ({ ...record, others: [{ ...first(record), dive: {} }] }),
    'a ghost of nobody': (record) => ({ ...record, ghost: { name: 'ghost', shown: true, dive: null } }),
  };
  const first = (record: Record<string, unknown>) => (record.others as object[])[0];

  test.each(Object.entries(damages))('%s: that is said, and the dive comes back without it', async (_, damage) => {
    const { dive, beside } = flown();
    const keeping = new Store().begin();
    await keeping.keep(dive, WHAT, beside);
    const db = await openDB('midwater');
    await db.put('beside', damage((await db.get('beside', keeping.id!)) as Record<string, unknown>));
    db.close();
    const kept = await new Store().read(keeping.id!);
    expect(kept.beside).toBe('damaged');
    expect(replay(kept.run).hash()).toBe(dive.hash());
  });

  test('a database of the version before is brought up to this one, its dives with it', async () => {
    const { dive, beside } = flown();
    const db = await openDB('midwater', 1, {
      upgrade(old) {
        old.createObjectStore('dives', { keyPath: 'id', autoIncrement: true });
        old.createObjectStore('starts', { keyPath: 'id' });
        old.createObjectStore('pieces', { keyPath: ['id', 'piece'] });
      },
    });
    db.close();
    const keeping = new Store().begin();
    await keeping.keep(dive, WHAT, beside);
    expect((await readBeside(keeping.id!)).name).toBe('let go');
  });
});
