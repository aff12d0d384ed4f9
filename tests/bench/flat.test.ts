import { describe, expect, test } from 'vitest';
import { advance, copyState, restingControls } from '../../src/dive/index.ts';
import { FOAM } from './divers.ts';
import { minuteByOdex } from './flat-equations.ts';

describe('the adaptive solver that the benchmark is held against', () => {
  test('ends a minute of breathing within 0.1 mm of the step, and not a hundred times closer than it must', () => {
    const rows = new Float64Array(1202);
    const depthM = minuteByOdex(FOAM.rig, FOAM.start, rows);
    const state = copyState(FOAM.start);
    let worst = 0;
    for (let row = 0; row <= 600; row++) {
      worst = Math.max(worst, Math.abs(rows[2 * row]! - state.depthM));
      if (row < 600) advance(FOAM.rig, state, restingControls(320), 12);
    }
    expect(Math.abs(depthM - state.depthM)).toBeLessThan(1e-4);
    expect(Math.abs(depthM - state.depthM)).toBeGreaterThan(1e-6);
    expect(worst).toBeLessThan(1e-4);
  });
});
