import { beforeEach, expect, test } from 'vitest';
import type { Dives } from '../../src/app/dives.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import { KeptInHand } from '../../src/app/kept-hand.ts';
import type { Shell } from '../../src/app/shell.ts';
import { Store, type KeptPair } from '../../src/store/index.ts';
import { readyRig } from '../dive/run-file-fixture.ts';
import { newBrowser } from '../store/fixture.ts';

beforeEach(newBrowser);

const PAIR: KeptPair = { difference: 'lead:2', by: 'hands', own: null, words: '' };

/** A free dive of six seconds in hand, followed once; what is then kept of its second diver. */
async function keptPair(of: (flight: Flight) => Pick<Dives, 'pair' | 'shownBeside'>) {
  const rig = readyRig('first-dive');
  const flight = new Flight(rig, afloatStart(rig));
  flight.dive.advance(720);
  const free = { rig, id: 'first-dive', setup: null };
  const dives = { flight, free, lesson: null, begun: true, ...of(flight) } as Dives;
  const shell = { view: { projector: false, presenting: null } } as Shell;
  const store = new Store();
  const hand = new KeptInHand({ shell, dives, otherLines: null }, store, (words) => expect.fail(words));
  hand.follow();
  await expect.poll(() => hand.id).not.toBeNull();
  return (await store.read(hand.id!)).pair;
}

test('whoever was chosen to dive beside is kept with the dive in hand', async () => {
  expect(await keptPair(() => ({ pair: PAIR, shownBeside: null }))).toEqual(PAIR);
});

test('whom a demonstration brought is not kept with its dive that was taken over, nor is one who stands behind him', async () => {
  const shownBeside = (first: Flight) => ({ first }) as Dives['shownBeside'];
  expect(await keptPair((flight) => ({ pair: PAIR, shownBeside: shownBeside(flight) }))).toBeNull();
  const another = new Flight(readyRig('first-dive'), afloatStart(readyRig('first-dive')));
  expect(await keptPair(() => ({ pair: PAIR, shownBeside: shownBeside(another) }))).toEqual(PAIR);
});

test('a dive that is left for another diver is kept to its last tick, is in the list, and told; a short one is gone', async () => {
  const rig = readyRig('first-dive');
  const flown = (ticks: number) => {
    const flight = new Flight(rig, afloatStart(rig));
    flight.dive.advance(ticks);
    return flight;
  };
  const [first, second, third] = [flown(720), flown(300), flown(0)];
  const dives = {
    flight: first,
    free: { rig, id: 'first-dive', setup: null },
    lesson: null,
    begun: true,
    pair: null,
  } as unknown as { flight: Flight } & Dives;
  const shell = { view: { projector: false, presenting: null } } as Shell;
  const store = new Store();
  const hand = new KeptInHand({ shell, dives, otherLines: null }, store, (words) => expect.fail(words));
  expect(hand.follow()).toBeNull();
  await expect.poll(() => hand.id).not.toBeNull();
  const id = hand.id!;
  // What came after it was last kept.
  first.dive.advance(40);
  (dives as { flight: Flight }).flight = second;
  expect(hand.follow()).toMatchObject({ flight: first, keeping: { id } });
  await expect.poll(async () => (await store.read(id)).run.ticks).toBe(760);
  await expect.poll(async () => (await store.list()).find((one) => one.id === id)?.inHand).toBe(false);
  await expect.poll(() => hand.id).not.toBeNull();
  (dives as { flight: Flight }).flight = third;
  expect(hand.follow()).toBeNull();
  await expect.poll(async () => (await store.list()).map((one) => one.id)).toEqual([id]);
});
