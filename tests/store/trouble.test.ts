import { openDB } from 'idb';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { midBreathCl, Dive, replay, restingControls, startState } from '../../src/dive/index.ts';
import { Store, type StoreProblem } from '../../src/store/index.ts';
import { busyDive, readyRig } from '../dive/run-file-fixture.ts';
import { WHAT, chanceOf, newBrowser } from './fixture.ts';

const rig = readyRig('first-dive');

beforeEach(newBrowser);

async function oneKept(): Promise<{ store: Store; id: number; dive: Dive }> {
  const store = new Store();
  const keeping = store.begin();
  const dive = busyDive(rig, 20, chanceOf(3));
  await keeping.keep(dive, WHAT);
  return { store, id: keeping.id!, dive };
}

const faultOf = (wanted: Promise<unknown>) =>
  wanted.then(
    () => 'none',
    (problem: unknown) => (problem as StoreProblem).fault,
  );

test('a connection that was closed under its hands is opened anew, and nothing is said of it', async () => {
  const connections: IDBDatabase[] = [];
  const open = indexedDB.open.bind(indexedDB);
  const opened = vi.spyOn(indexedDB, 'open').mockImplementation((...how) => {
    const request = open(...how);
    request.addEventListener('success', () => connections.push(request.result));
    return request;
  });
  const { store, id, dive } = await oneKept();
  expect(connections).toHaveLength(1);
  connections[0]!.close();
  expect((await store.read(id)).endHash).toBe(dive.hash());
  expect(connections).toHaveLength(2);
  opened.mockRestore();
});

describe('a browser that keeps nothing', () => {
  test('without a database at all: refused, in a sentence', async () => {
    vi.stubGlobal('indexedDB', undefined);
    await expect(new Store().list()).rejects.toThrow('keeps nothing for us');
  });

  test('asking for it is refused: refused', async () => {
    vi.stubGlobal('indexedDB', {
      open: () => {
        throw new DOMException('no', 'SecurityError');
      },
    });
    expect(await faultOf(new Store().list())).toBe('refused');
  });

  test('a newer version of the database is left alone, and erased when that is asked for', async () => {
    (await openDB('midwater', 7, { upgrade: (db) => void db.createObjectStore('other') })).close();
    expect(await faultOf(new Store().list())).toBe('newer');
    await new Store().eraseAll();
    expect(await new Store().list()).toEqual([]);
  });

  test('a database that is not laid out as ours: broken, until it is erased', async () => {
    (await openDB('midwater', 1, { upgrade: (db) => void db.createObjectStore('other') })).close();
    const store = new Store();
    expect(await faultOf(store.list())).toBe('broken');
    await store.eraseAll();
    expect(await store.list()).toEqual([]);
  });

  test('a database that another tab does not let go of: busy, in time', async () => {
    const other = await openDB('midwater', 1);
    const deleting = indexedDB.deleteDatabase('midwater');
    expect(await faultOf(new Store().list())).toBe('busy');
    other.close();
    await new Promise((resolve) => (deleting.onsuccess = resolve));
    expect(await new Store().list()).toEqual([]);
  });

  test('no room left: full; nothing half written, and once there is room all of it is kept', async () => {
    const { store, dive } = await oneKept();
    const keeping = store.begin();
    const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    expect(await faultOf(keeping.keep(dive, WHAT))).toBe('full');
    full.mockRestore();
    expect(await store.list()).toHaveLength(1);
    dive.advance(60);
    await keeping.keep(dive, WHAT);
    expect((await store.read(keeping.id!)).endHash).toBe(dive.hash());
  });

  test('the connection is lost while a dive is kept: the next time it is opened anew', async () => {
    const { store, id, dive } = await oneKept();
    store.close();
    expect((await store.read(id)).endHash).toBe(dive.hash());
  });
});

describe('damaged records', () => {
  /** Each leaves a record that is not as it was written. */
  const damage: Record<string, (id: number) => Promise<unknown>> = {
    'a value of a control out of range': (id) =>
      changed('pieces', [id, 0], (piece) => ({ ...piece, by: piece.by.with(3, 1e9) })),
    'a column that is shorter': (id) => changed('pieces', [id, 0], (piece) => ({ ...piece, by: piece.by.slice(1) })),
    'a piece that is no piece': (id) => changed('pieces', [id, 0], (piece) => ({ ...piece, ticks: 'none' })),
    'no start': async (id) => (await openDB('midwater')).delete('starts', id),
    'a rig with a hole': (id) =>
      changed('starts', id, ({ rig: { column: _, ...hole }, ...rest }) => ({ ...rest, rig: hole })),
    'a state of words': (id) => changed('starts', id, (start) => ({ ...start, start: { depthM: 'deep' } })),
    'ticks below none': (id) => changed('dives', id, (line) => ({ ...line, ticks: -5 })),
    'a line without its answers': (id) => changed('dives', id, ({ given: _, ...line }) => line),
    'a shape of tomorrow': (id) => changed('dives', id, (line) => ({ ...line, shape: 6 })),
  };

  // eslint-disable-next-line @typescript-eslint/no-explicit-any
  async function changed(store: string, key: number | number[], change: (record: any) => unknown): Promise<void> {
    const db = await openDB('midwater');
    await db.put(store, change(await db.get(store, key)));
    db.close();
  }

  test.each(Object.entries(damage))('%s: said, never thrown otherwise, and it can be removed', async (_, harm) => {
    const { store, id } = await oneKept();
    await harm(id);
    expect(await faultOf(store.read(id))).toBe('damaged');
    expect(await store.list()).toHaveLength(1);
    await store.remove(id);
    expect(await store.list()).toEqual([]);
  });

  test('a dive of the shape before comes back: controls that it does not have are at rest', async () => {
    const { store, id } = await oneKept();
    const { run, endHash } = await store.read(id);
    await changed('dives', id, (line) => ({ ...line, shape: 1 }));
    await changed('starts', id, (start) => ({ ...start, controls: start.controls.slice(0, 17) }));
    expect(await store.list()).toMatchObject([{ id, damaged: false }]);
    expect((await store.read(id)).run).toStrictEqual(run);
    expect(replay(run).hash()).toBe(endHash);
  });

  test('the others can still be read', async () => {
    const { store, id } = await oneKept();
    await changed('dives', id, () => ({ id }));
    const keeping = store.begin();
    const dive = new Dive(rig, startState(rig, { depthM: 3 }), restingControls(midBreathCl(rig)));
    dive.advance(30);
    await keeping.keep(dive, WHAT);
    expect(await store.list()).toMatchObject([
      { id: keeping.id, damaged: false },
      { id, damaged: true },
    ]);
    expect((await store.read(keeping.id!)).run.ticks).toBe(30);
  });
});
