import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  Dive,
  TICKS_PER_CHANGE,
  commonTick,
  copyState,
  diveAt,
  hashOf,
  momentAt,
  replay,
  restingControls,
} from '../../src/dive/index.ts';
import { Chance, chanceControls, chanceRig, chanceState } from '../reference/chance.ts';

const seeds = fc.integer({ min: 0, max: 0xffffffff });

/** A dive of some changes by chance, and what changes the next ones. */
function byChance(chance: Chance, changes: number): Dive {
  const rig = chanceRig(chance);
  const dive = new Dive(rig, chanceState(chance, rig), restingControls(320), chance.percent(20));
  flyOn(dive, chance, changes);
  return dive;
}

function flyOn(dive: Dive, chance: Chance, changes: number): void {
  for (let change = 0; change < changes; change++) {
    dive.steer(chanceControls(chance, dive.rig, chance.percent(30), dive.controls));
    dive.advance(chance.whole(1, 48));
  }
}

describe('a moment of a dive', () => {
  test('momentAt() has the state and controls of a replay up to that tick, to the bit, at any tick', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const chance = new Chance(seed);
        const dive = byChance(chance, 90);
        const { startTick } = dive.recording;
        for (let look = 0; look < 6; look++) {
          const ticks = chance.whole(0, dive.tick - startTick);
          const moment = momentAt(dive, startTick + ticks);
          const again = replay(dive.run(), ticks);
          expect(hashOf(moment.state)).toBe(again.hash());
          expect(moment.state.netN).toBe(again.state.netN);
          expect(moment.controls).toEqual(again.controls);
          expect(moment.tick).toBe(again.tick);
        }
      }),
      { seed: 31, numRuns: 20, endOnFailure: true },
    );
  }, 60_000);

  test('momentAt() keeps to the ticks that there are', () => {
    const dive = byChance(new Chance(5), 30);
    expect(momentAt(dive, -1e9).tick).toBe(dive.recording.startTick);
    expect(momentAt(dive, 1e9).tick).toBe(dive.tick);
    expect(momentAt(dive, 1e9).state).toEqual(copyState(dive.state));
  });
});

describe('a dive taken up at an earlier moment', () => {
  test('diveAt() is the replay up to there: state, rows, events, changes; and goes on as the replay would', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const chance = new Chance(seed);
        const dive = byChance(chance, 90);
        const { startTick } = dive.recording;
        const ticks = TICKS_PER_CHANGE * chance.whole(0, Math.floor((dive.tick - startTick) / TICKS_PER_CHANGE));
        const [taken, again] = [diveAt(dive, startTick + ticks), replay(dive.run(), ticks)];
        for (let part = 0; part < 2; part++) {
          expect(taken.hash()).toBe(again.hash());
          expect(taken.events).toEqual(again.events);
          expect(taken.changes).toEqual(again.changes);
          expect(taken.kept.map(hashOf)).toEqual(again.kept.map(hashOf));
          expect(taken.recording.rows).toBe(again.recording.rows);
          for (let row = 0; row < taken.recording.rows; row++)
            expect(taken.recording.row(row)).toEqual(again.recording.row(row));
          const same = chance.whole(0, 0xffffff);
          flyOn(taken, new Chance(same), 60);
          flyOn(again, new Chance(same), 60);
        }
      }),
      { seed: 32, numRuns: 40, endOnFailure: true },
    );
  }, 60_000);

  test('diveAt() leaves the dive it was taken from as it was', () => {
    const dive = byChance(new Chance(9), 60);
    const before = [dive.hash(), dive.recording.rows, dive.changes.length, dive.recording.row(40)];
    const taken = diveAt(dive, dive.tick / 2);
    flyOn(taken, new Chance(10), 60);
    expect([dive.hash(), dive.recording.rows, dive.changes.length, dive.recording.row(40)]).toEqual(before);
    expect(replay(taken.run()).hash()).toBe(taken.hash());
  });

  test('diveAt() between two twentieths takes the one before', () => {
    const dive = byChance(new Chance(11), 30);
    const { startTick } = dive.recording;
    expect(diveAt(dive, startTick + 65).tick).toBe(startTick + 60);
    expect(diveAt(dive, startTick + 65).onTwentieth).toBe(true);
  });
});

describe('where two dives part', () => {
  test('commonTick() is the tick of the first difference in what was done; of a dive and its own past, the end of the past', () => {
    const dive = byChance(new Chance(12), 60);
    const at = dive.recording.startTick + 240;
    const taken = diveAt(dive, at);
    expect(commonTick(dive, taken)).toBe(at);
    taken.steer({ ...taken.controls, jacketAdd: 1 - taken.controls.jacketAdd });
    taken.advance(120);
    expect(commonTick(dive, taken)).toBe(at);
    expect(commonTick(taken, dive)).toBe(at);
    const same = replay(dive.run());
    expect(commonTick(dive, same)).toBe(dive.tick);
    same.steer({ ...same.controls, finsN: same.controls.finsN === 20 ? 10 : 20 });
    same.advance(60);
    expect(commonTick(dive, same)).toBe(dive.tick);
  });

  test('commonTick() is null for another start or another diver', () => {
    const [one, other] = [byChance(new Chance(1), 5), byChance(new Chance(2), 5)];
    expect(commonTick(one, other)).toBeNull();
  });
});

test('momentAt(): any of 60 moments of a ten-minute dive comes in under 50 ms', () => {
  const chance = new Chance(77);
  const rig = chanceRig(chance);
  const dive = new Dive(rig, chanceState(chance, rig), restingControls(320));
  while (dive.tick - dive.recording.startTick < 600 * 120) flyOn(dive, chance, 20);
  const tookMs = Array.from({ length: 60 }, () => {
    const tick = dive.recording.startTick + chance.whole(0, 72000);
    const beganMs = performance.now();
    momentAt(dive, tick);
    return performance.now() - beganMs;
  }).sort((a, b) => a - b);
  expect(tookMs[54]).toBeLessThan(50);
});
