import { describe, expect, test } from 'vitest';
import {
  FLAG,
  LUNG_CRITICAL_PA,
  LUNG_WARN_PA,
  SQUEEZE_PA,
  advance,
  mouthIsClear,
  restingControls,
  startState,
  totalMol,
  type Controls,
  type DiveEvent,
} from '../../src/dive/index.ts';
import { lungOverpressurePa } from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { EXAMPLE, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';

const LIGHT = withLeadKg(EXAMPLE, 0);
const HEAVY = weighed(EXAMPLE, 6);
const BREATHING = restingControls(320);
const HELD: Controls = { ...BREATHING, breath: 2 };

describe('a held breath', () => {
  test('follows Boyle inside the chest: the product of dry pressure and volume stays', () => {
    const state = startState(HEAVY, { depthM: 6, lungM3: 4e-3 });
    const product = (pressurePa(HEAVY.column, 6) - 6270) * 4e-3;
    for (let i = 0; i < 20; i++) {
      advance(HEAVY, state, HELD, 30, undefined, true);
      expect((pressurePa(HEAVY.column, state.depthM) - 6270) * state.lungM3).toBeCloseTo(product, 6);
    }
    expect(state.depthM).toBeGreaterThan(7);
  });

  test('rising with full lungs: volume stays, over-pressure is what the gas has over ambient, warnings come in order', () => {
    const events: DiveEvent[] = [];
    const state = startState(LIGHT, { depthM: 12, lungM3: 6.3e-3 });
    const full = pressurePa(LIGHT.column, 12);
    let seen = 0;
    while (state.depthM > 1.5) {
      advance(LIGHT, state, HELD, 6, events, true);
      const over = lungOverpressurePa(LIGHT, state.lungMol, state.lungM3, pressurePa(LIGHT.column, state.depthM));
      expect(over).toBeCloseTo(full - pressurePa(LIGHT.column, state.depthM), 5);
      expect((state.flags & FLAG.overpressure) !== 0).toBe(over > LUNG_WARN_PA);
      expect((state.flags & FLAG.critical) !== 0).toBe(over > LUNG_CRITICAL_PA);
      seen++;
    }
    expect(state.lungM3).toBe(6.3e-3);
    expect(seen).toBeGreaterThan(20);
    const kinds = events.map(({ kind }) => kind);
    expect(kinds.indexOf('lung-overpressure')).toBeLessThan(kinds.indexOf('lung-overpressure-critical'));
    expect(kinds).toContain('lung-overpressure-critical');
  });

  test('sinking below the residual volume: the volume stays and the squeeze is said', () => {
    const events: DiveEvent[] = [];
    const state = startState(HEAVY, { depthM: 3, lungM3: 1.6e-3 });
    advance(HEAVY, state, HELD, 120 * 20, events, true);
    expect(state.lungM3).toBe(HEAVY.lungs.residualM3);
    expect(lungOverpressurePa(HEAVY, state.lungMol, state.lungM3, pressurePa(HEAVY.column, state.depthM))).toBeLessThan(
      -SQUEEZE_PA,
    );
    expect(events.map(({ kind }) => kind)).toContain('lung-squeeze');
  });

  test('moves no gas anywhere', () => {
    const state = startState(LIGHT, { depthM: 12, lungM3: 3e-3 });
    const { lungMol, cylinderMol } = { ...state, cylinderMol: [...state.cylinderMol] };
    advance(LIGHT, state, HELD, 600, undefined, true);
    expect(state.lungMol).toBe(lungMol);
    expect(state.cylinderMol).toEqual(cylinderMol);
    expect(state.bubbleMol).toBe(0);
  });
});

describe('breathing', () => {
  test('goes from end-expiratory to that plus a tidal volume, in 40 % and out 60 % of the period', () => {
    const rig = weighed(EXAMPLE);
    const state = startState(rig, { depthM: 10 });
    const volumes: number[] = [];
    for (let tick = 0; tick < 1440; tick++) {
      advance(rig, state, BREATHING, 1);
      volumes.push(state.lungM3);
    }
    expect(Math.min(...volumes)).toBeCloseTo(2.7e-3, 12);
    expect(Math.max(...volumes)).toBeCloseTo(3.7e-3, 12);
    expect(volumes.indexOf(Math.max(...volumes)) + 1).toBe(288);
    expect(volumes[719]).toBeCloseTo(2.7e-3, 12);
    // 3u² − 2u³ at a quarter of the way in: 0.15625.
    expect(volumes[71]).toBeCloseTo(2.7e-3 + 0.15625e-3, 12);
  });

  test('direct lungs move at most 1.5 L/s in and 2 L/s out, and stop at capacity and residual', () => {
    const rig = weighed(EXAMPLE);
    const state = startState(rig, { depthM: 10, lungM3: 3e-3 });
    advance(rig, state, { ...BREATHING, breath: 1, lungCl: 1200 }, 60);
    expect(state.lungM3).toBeCloseTo(3.75e-3, 12);
    advance(rig, state, { ...BREATHING, breath: 1, lungCl: 1200 }, 600);
    expect(state.lungM3).toBe(rig.lungs.totalM3);
    advance(rig, state, { ...BREATHING, breath: 1, lungCl: 0 }, 60);
    expect(state.lungM3).toBeCloseTo(5.3e-3, 12);
    advance(rig, state, { ...BREATHING, breath: 1, lungCl: 0 }, 600);
    expect(state.lungM3).toBe(rig.lungs.residualM3);
  });

  test('thrust shortens the period by 1 + |F|/45 N', () => {
    const rig = weighed(EXAMPLE);
    const state = startState(rig, { depthM: 20 });
    advance(rig, state, { ...BREATHING, finsN: 45 }, 1, undefined, true);
    expect(state.breathTicks).toBe(144);
  });

  test('with the mouth out of the water the lungs breathe air: the cylinder stays', () => {
    const rig = withLeadKg(setupOf('\nwater: { line: true }'), 0);
    const state = startState(rig, { depthM: 0, pitchDeg: 90, jacketM3: 15e-3 });
    const { cylinderMol } = { cylinderMol: [...state.cylinderMol] };
    const total = totalMol(state);
    let least = 0;
    for (let i = 0; i < 120; i++) {
      advance(rig, state, { ...BREATHING, pitchDeg: 90, holdLine: 1 }, 6, undefined, true);
      expect(mouthIsClear(state)).toBe(true);
      least = Math.min(least, state.airMol);
    }
    expect(state.cylinderMol).toEqual(cylinderMol);
    expect(least).toBeLessThan(-0.03);
    expect(Math.abs(totalMol(state) / total - 1)).toBeLessThan(1e-14);
  });
});
