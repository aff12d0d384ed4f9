import { beforeEach, describe, expect, test, vi } from 'vitest';
import { Dive, midBreathCl, replay, restingControls, startState } from '../../src/dive/index.ts';
import { MOST_KEPT, Store } from '../../src/store/index.ts';
import { busyDive, readyRig } from '../dive/run-file-fixture.ts';
import { WHAT, chanceOf, newBrowser } from './fixture.ts';

const rig = readyRig('first-dive');

beforeEach(newBrowser);

/** A dive that begins at 3 m with nothing done yet. */
const still = () => new Dive(rig, startState(rig, { depthM: 3 }), restingControls(midBreathCl(rig)));

/** Goes on as another dive did: its hands, for so many ticks. */
function follow(dive: Dive, model: Dive, ticks: number): void {
  const end = dive.tick + ticks;
  while (dive.tick < end) {
    const { controls } = model.changes.filter(({ tick }) => tick <= dive.tick).at(-1)!;
    dive.steer(controls);
    dive.advance(1);
  }
}

describe('Keeping', () => {
  test('a busy dive kept bit by bit comes back to the bit, wherever it stopped', async () => {
    const chance = chanceOf(7);
    const model = busyDive(rig, 60, chance);
    const store = new Store();
    const keeping = store.begin();
    const dive = still();
    for (let i = 0; i < 30; i++) {
      follow(dive, model, 1 + Math.floor(chance() * 200));
      await keeping.keep(dive, WHAT);
      if (i % 5 > 0) continue;
      const kept = await new Store().read(keeping.id!);
      expect(kept.run.ticks).toBe(dive.tick);
      expect(kept.endHash).toBe(dive.hash());
      expect(replay(kept.run).hash()).toBe(dive.hash());
    }
    // It filled more than one piece, or this would prove less than it says.
    expect(dive.changes.length).toBeGreaterThan(200);
  });

  test('what is done on the first tick, and undone on it, is kept as it was done', async () => {
    const keeping = new Store().begin();
    const dive = still();
    await keeping.keep(dive, WHAT);
    dive.steer({ ...dive.controls, jacketVent: 1 });
    dive.advance(12);
    await keeping.keep(dive, WHAT);
    dive.steer({ ...dive.controls, jacketVent: 0 });
    await keeping.keep(dive, WHAT);
    dive.steer({ ...dive.controls, jacketVent: 1 });
    dive.advance(30);
    await keeping.keep(dive, WHAT);
    const { run } = await new Store().read(keeping.id!);
    expect(replay(run).hash()).toBe(dive.hash());
  });

  test('a dive that went back in time is kept as it is now', async () => {
    const keeping = new Store().begin();
    const long = busyDive(rig, 30, chanceOf(2));
    await keeping.keep(long, WHAT);
    const back = replay(long.run(), 600);
    back.advance(90);
    expect(keeping.isBehind(back, WHAT)).toBe(true);
    await keeping.keep(back, WHAT);
    const store = new Store();
    expect(await store.list()).toHaveLength(1);
    expect(replay((await store.read(keeping.id!)).run).hash()).toBe(back.hash());
  });

  test('is behind exactly while there is something new', async () => {
    const keeping = new Store().begin();
    const dive = still();
    dive.advance(60);
    expect(keeping.isBehind(dive, WHAT)).toBe(true);
    await keeping.keep(dive, WHAT);
    expect(keeping.isBehind(dive, WHAT)).toBe(false);
    expect(keeping.isBehind(dive, { ...WHAT, given: [null] })).toBe(true);
    dive.advance(1);
    expect(keeping.isBehind(dive, WHAT)).toBe(true);
  });

  test(`of more than ${MOST_KEPT} the oldest go`, async () => {
    vi.useFakeTimers({ toFake: ['Date'] });
    const store = new Store();
    const dive = still();
    dive.advance(600);
    const ids: number[] = [];
    for (let i = 0; i < MOST_KEPT + 3; i++) {
      vi.setSystemTime(1_700_000_000_000 + i * 1000);
      const keeping = store.begin();
      await keeping.keep(dive, WHAT);
      ids.push(keeping.id!);
    }
    vi.useRealTimers();
    expect((await store.list()).map(({ id }) => id)).toEqual(ids.slice(3).reverse());
    await expect(store.read(ids[0]!)).rejects.toThrow(/no longer kept/);
  });

  test('a dive that was left is not in hand; one that was hardly begun is gone', async () => {
    const store = new Store();
    const keeping = store.begin();
    const dive = still();
    dive.advance(60);
    await keeping.keep(dive, WHAT);
    await keeping.leave(false);
    expect(await store.list()).toMatchObject([{ inHand: false, ticks: 60 }]);
    expect(keeping.isBehind(dive, WHAT)).toBe(true);
    await keeping.leave(true);
    expect(await store.list()).toEqual([]);
  });
});

describe('two tabs', () => {
  test('the second does not write into the dive that the first holds: it keeps one of its own', async () => {
    const [first, second] = [new Store(), new Store()];
    const keeping = first.begin();
    const dive = still();
    dive.advance(120);
    await keeping.keep(dive, WHAT);
    const kept = await second.read(keeping.id!);
    const { keeping: other, elsewhere } = await second.goOn(kept, true);
    expect(elsewhere).toBe(true);
    const again = replay(kept.run);
    again.advance(60);
    dive.advance(240);
    await Promise.all([other.keep(again, WHAT), keeping.keep(dive, WHAT)]);
    expect(other.id).not.toBe(keeping.id);
    expect((await first.read(keeping.id!)).endHash).toBe(dive.hash());
    expect((await first.read(other.id!)).endHash).toBe(again.hash());
  });

  test('where no browser can say who flies, the first that writes goes on in it and the other keeps one of its own', async () => {
    const keeping = new Store().begin();
    const dive = still();
    dive.advance(120);
    await keeping.keep(dive, WHAT);
    vi.stubGlobal('navigator', {});
    const store = new Store();
    const kept = await store.read(keeping.id!);
    const { keeping: other, elsewhere } = await store.goOn(kept, true);
    expect(elsewhere).toBe(false);
    const again = replay(kept.run);
    again.advance(60);
    await other.keep(again, WHAT);
    dive.advance(240);
    await keeping.keep(dive, WHAT);
    expect((await store.list()).map(({ ticks }) => ticks).sort()).toEqual([180, 360]);
    expect((await store.read(keeping.id!)).endHash).toBe(dive.hash());
  });

  test('a page that goes on with a dive that it left writes on in it', async () => {
    const store = new Store();
    const keeping = store.begin();
    const dive = still();
    dive.advance(700);
    await keeping.keep(dive, WHAT);
    await keeping.leave(false);
    const kept = await store.read(keeping.id!);
    const again = await store.goOn(kept, false);
    expect(again.elsewhere).toBe(false);
    const on = replay(kept.run);
    on.advance(60);
    await again.keeping.keep(on, WHAT);
    expect(await store.list()).toMatchObject([{ ticks: 760, inHand: true }]);
  });

  test('a dive that a page left is held by nobody: another one goes on with it, and whoever writes second keeps one of its own', async () => {
    const store = new Store();
    const keeping = store.begin();
    const dive = still();
    dive.advance(700);
    await keeping.keep(dive, WHAT);
    await keeping.leave(false);
    const kept = await store.read(keeping.id!);
    const { keeping: other, elsewhere } = await new Store().goOn(kept, false);
    expect(elsewhere).toBe(false);
    const on = replay(kept.run);
    on.advance(60);
    await other.keep(on, WHAT);
    dive.advance(30);
    await keeping.keep(dive, WHAT);
    expect((await store.list()).map(({ ticks }) => ticks).sort()).toEqual([730, 760]);
  });

  test('a dive that was left and is flown on is held again', async () => {
    const keeping = new Store().begin();
    const dive = still();
    dive.advance(700);
    await keeping.keep(dive, WHAT);
    await keeping.leave(false);
    dive.advance(30);
    await keeping.keep(dive, WHAT);
    const store = new Store();
    const { elsewhere } = await store.goOn(await store.read(keeping.id!), true);
    expect(elsewhere).toBe(true);
  });

  test('a dive that another tab removed while it was flown is kept whole under a new number', async () => {
    const keeping = new Store().begin();
    const dive = busyDive(rig, 20, chanceOf(5));
    await keeping.keep(dive, WHAT);
    const first = keeping.id!;
    await new Store().remove(first);
    dive.advance(60);
    await keeping.keep(dive, WHAT);
    expect(keeping.id).not.toBe(first);
    expect(replay((await new Store().read(keeping.id!)).run).hash()).toBe(dive.hash());
  });

  test('erasing in one ends the keeping in the other, which says so and does not write again', async () => {
    const erased = vi.fn();
    const keeping = new Store(erased).begin();
    const store = new Store(erased);
    const other = store.begin();
    const dive = still();
    dive.advance(60);
    await other.keep(dive, WHAT);
    await new Store().eraseAll();
    expect(erased).toHaveBeenCalledOnce();
    expect(other.over).toBe(true);
    dive.advance(60);
    await other.keep(dive, WHAT);
    expect(await new Store().list()).toEqual([]);
    expect(keeping.over).toBe(false);
  });
});
