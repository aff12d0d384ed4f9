import { expect, test } from 'vitest';
import { Dive, restingControls, startState, withMishaps, type Mishap } from '../../src/dive/index.ts';
import { WaterSunk } from '../../src/stage/water-sunk.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';

test('WaterSunk: water sinks by the current of the setup and by what sets in, at any moment asked for in any order', () => {
  const rig = weighed(changed(EXAMPLE, { water: { currentDownMps: 0.03 } }));
  const dive = new Dive(rig, startState(rig, { depthM: 8 }), restingControls(320));
  const mishap: Mishap = { kind: 'current', atS: 2, downMps: 0.2, forS: 4 };
  for (let slot = 0; slot < 200; slot++) {
    dive.steer(withMishaps(restingControls(320), [mishap], dive.state));
    dive.advance(6);
  }
  const { changes } = dive;
  const water = new WaterSunk();
  // A ramp is half of what it leads to; its twentieths of a second are exact at their ends.
  for (const [nowS, sunkM] of [
    [0, 0],
    [2, 0.06],
    [3, 0.09 + 0.1],
    [6, 0.18 + 0.7],
    [4, 0.12 + 0.3],
    [7, 0.21 + 0.8],
    [9.5, 0.285 + 0.8],
    [1, 0.03],
  ] as const)
    expect(water.sunkM({ rig, changes, nowS })).toBeCloseTo(sunkM, 9);
});
