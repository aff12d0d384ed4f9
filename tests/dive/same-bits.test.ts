import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  Dive,
  advance,
  copyState,
  direction,
  hashOf,
  replay,
  restingControls,
  startState,
  type DiveEvent,
} from '../../src/dive/index.ts';
import { letGo } from '../../src/dive/aftermath.ts';
import { fullTick } from '../../src/dive/full-tick.ts';
import { Chance, chanceControls, chanceRig, chanceState } from '../reference/chance.ts';
import { EXAMPLE, weighed } from '../reference/rigs.ts';

const seeds = fc.integer({ min: 0, max: 0xffffffff });

describe('the calm path is the full path', () => {
  test('advance() in blocks of any length gives the bits and events of one full tick after another', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const chance = new Chance(seed);
        const rig = chanceRig(chance, { plain: chance.percent(80) });
        const calm = chanceState(chance, rig);
        const full = copyState(calm);
        const locked = chance.percent(15);
        const [calmEvents, fullEvents]: [DiveEvent[], DiveEvent[]] = [[], []];
        let controls = restingControls(320);
        for (let change = 0; change < 60; change++) {
          controls = chanceControls(chance, rig, chance.percent(10), controls);
          const ticks = chance.whole(1, 48);
          for (let left = ticks; left > 0;) {
            const block = Math.min(left, chance.whole(1, 20));
            advance(rig, calm, controls, block, calmEvents, locked);
            left -= block;
          }
          letGo(rig, full, controls, fullEvents);
          for (let tick = 0; tick < ticks; tick++)
            fullTick(rig, full, controls, direction(controls.pitchDeg), fullEvents, locked, 1);
          expect(hashOf(calm), `after change ${change}`).toBe(hashOf(full));
          expect(calm.netN).toBe(full.netN);
        }
        expect(calmEvents).toEqual(fullEvents);
      }),
      { seed: 11, numRuns: 200, endOnFailure: true },
    );
  }, 60_000);

  test('most of a breathing hover is calm: the comparison above compares two paths', () => {
    const rig = weighed(EXAMPLE);
    const state = startState(rig, { depthM: 8, jacketM3: 1.4e-3 });
    let calmTicks = 0;
    for (let tick = 0; tick < 240; tick++) {
      advance(rig, state, restingControls(320), 1);
      if (state.calmUntil > 0) calmTicks++;
    }
    expect(calmTicks).toBeGreaterThan(200);
  });
});

describe('replays', () => {
  test('replay() of a dive gives the same state, recording and events, whole or up to any tick', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const chance = new Chance(seed);
        const rig = chanceRig(chance);
        const dive = new Dive(rig, chanceState(chance, rig), restingControls(320), chance.percent(20));
        const [half, from] = [chance.whole(0, 79), dive.tick];
        let [halfTicks, halfHash] = [0, ''];
        for (let change = 0; change < 80; change++) {
          dive.steer(chanceControls(chance, rig, chance.percent(30), dive.controls));
          for (let block = chance.whole(1, 4); block > 0; block--) dive.advance(chance.whole(1, 11));
          if (change === half) [halfTicks, halfHash] = [dive.tick - from, dive.hash()];
        }
        const run = JSON.parse(JSON.stringify(dive.run())) as ReturnType<Dive['run']>;
        const again = replay(run);
        expect(again.hash()).toBe(dive.hash());
        expect(again.events).toEqual(dive.events);
        expect(again.changes).toEqual(dive.changes);
        expect(again.recording.rows).toBe(dive.recording.rows);
        for (let row = 0; row < again.recording.rows; row++)
          expect(again.recording.row(row)).toEqual(dive.recording.row(row));
        expect(replay(run, halfTicks).hash()).toBe(halfHash);
      }),
      { seed: 12, numRuns: 60, endOnFailure: true },
    );
  }, 60_000);
});
