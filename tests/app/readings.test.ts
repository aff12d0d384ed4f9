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

  test('who bobs with a full jacket is afloat, also while he is pulled down; who is too heavy goes under with his head out', () => {
    const depthM = floatingDepthM(rig, 8e-3) - 0.15;
    const high = readingsOf(rig, startState(rig, { depthM, jacketM3: 8e-3, pitchDeg: 90 }), midBreathM3(rig));
    expect(high.midNetN).toBeLessThan(-5);
    expect(high.place).toBe('afloat');
    const going = startState(rig, { depthM: 0.5, jacketM3: 0, pitchDeg: 90 });
    const low = readingsOf(rig, going, midBreathM3(rig) - 1.5e-3);
    expect(low.place).toBe('under');
  });

  test('gasScaleM3 holds what each store of the kit can, and is the same at every depth', () => {
    const scales = [0.3, 8, 11.9].map((depthM) => readingsOf(rig, startState(rig, { depthM }), null).gasScaleM3);
    expect(new Set(scales).size).toBe(1);
    expect(scales[0]).toBeGreaterThanOrEqual(Math.max(rig.jacket.capacityM3, rig.lungs.totalM3));
  });

  test('jacket gas at 10 m of sea fills about twice as much at the surface', () => {
    const state = startState(rig, { depthM: 10, jacketM3: 2e-3 });
    const jacket = readingsOf(rig, state, null).gas.find(({ name }) => name === 'jacket')!;
    // Boyle: p = 101325 Pa + 1026 kg/m³ · 9.81 m/s² · 10 m. @source closed form
    expect(jacket.surfaceM3 / jacket.hereM3).toBeCloseTo((101325 + 1026 * 9.80665 * 10) / 101325, 2);
  });
});
