import { describe, expect, test } from 'vitest';
import { advance, restingControls, startState } from '../../src/dive/index.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';

const TWO_PIECE = changed(EXAMPLE, { suit: { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as never });
const LAKE = changed(EXAMPLE, { suit: { thicknessMm: 7 } as never, water: { salinityPsu: 0, temperatureC: 8 } });

// Landmarks of the model's own page [derived]: ±0.1 m, and the printed m/min.
describe('sinking from 1.5 m at rest with 200 bar, level, lungs 3.2 L throughout', () => {
  test.each([
    ['5 mm, sea', EXAMPLE, 0, [5.5, 11.3, 17.7], 20],
    ['5 mm, sea, 4 kg too much', EXAMPLE, 4, [9.5, 18.8, 28.6], 30],
    ['7 mm two-piece, sea', TWO_PIECE, 0, [2.8, 7.6, 14.6], 23],
    ['7 mm two-piece, sea, 4 kg too much', TWO_PIECE, 4, [9.2, 19.4, 30.4], 34],
    ['7 mm one-piece, fresh water 8 °C', LAKE, 0, [5.3, 11.4, 18.4], 22],
  ])(
    '%s passes the landmark’s depths at 20, 40 and 60 s and ends with its speed',
    (_, setup, surplusKg, depthsM, mpm) => {
      const rig = weighed(setup, surplusKg);
      const state = startState(rig, { depthM: 1.5, lungM3: 3.2e-3, cylinderBar: 200 });
      const still = { ...restingControls(320), breath: 1 };
      for (const depthM of depthsM) {
        advance(rig, state, still, 20 * 120);
        expect(Math.abs(state.depthM - depthM), `${state.depthM} m`).toBeLessThan(0.1);
      }
      // The page prints whole metres a minute: what is reached must round to them (its ±0.3 would need the decimals).
      expect(Math.round(state.speedMps * 60), `${state.speedMps * 60} m/min`).toBe(mpm);
    },
  );
});
