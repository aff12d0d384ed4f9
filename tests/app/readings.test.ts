import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { midBreathM3, rigOf, type Setup } from '../../src/diver/index.ts';
import { floatingDepthM, rowOf, startState } from '../../src/dive/index.ts';
import { readingsOf } from '../../src/app/readings-of.ts';

const rig = rigOf(firstDive as Setup);

describe('readingsOf()', () => {
  test('judges light and heavy in the middle of the breath, as the recording does', () => {
    const state = startState(rig, { depthM: 8, jacketM3: 2e-3 });
    expect(readingsOf(rig, state, midBreathM3(rig)).midNetN).toBeCloseTo(rowOf(rig, state).midNetN, 9);
    expect(readingsOf(rig, state, null).midNetN).toBeCloseTo(rowOf(rig, state).netN, 9);
  });

  test('its two bars differ by the net force, in kilograms of 9.80665 N', () => {
    const state = startState(rig, { depthM: 8, jacketM3: 2e-3 });
    const { up, down } = readingsOf(rig, state, null);
    const kg = (parts: readonly { kg: number }[]) => parts.reduce((sum, part) => sum + part.kg, 0);
    expect(kg(up) - kg(down)).toBeCloseTo(rowOf(rig, state).netN / 9.80665, 9);
  });

  test('is afloat with the head out, and not at depth', () => {
    const depthM = floatingDepthM(rig, 8e-3);
    const afloat = startState(rig, { depthM, jacketM3: 8e-3, pitchDeg: 90 });
    expect(readingsOf(rig, afloat, midBreathM3(rig)).place).toBe('afloat');
    expect(readingsOf(rig, startState(rig, { depthM: 3 }), null).place).toBe('under');
  });

  test('jacket gas at 10 m of sea fills about twice as much at the surface', () => {
    const state = startState(rig, { depthM: 10, jacketM3: 2e-3 });
    const jacket = readingsOf(rig, state, null).gas.find(({ name }) => name === 'jacket')!;
    // Boyle: p = 101325 Pa + 1026 kg/m³ · 9.81 m/s² · 10 m. @source closed form
    expect(jacket.surfaceM3 / jacket.hereM3).toBeCloseTo((101325 + 1026 * 9.80665 * 10) / 101325, 2);
  });
});
