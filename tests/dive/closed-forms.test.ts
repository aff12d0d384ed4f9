import { describe, expect, test } from 'vitest';
import { advance, restingControls, startState, type DiveState } from '../../src/dive/index.ts';
import { instantOf, jacketM3, ledger, midBreathM3, netForceN, type Rig } from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { sinkingWithN } from '../reference/answers-motion.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';

/** The lungs stand still at 3.2 L: the airway is open, so the volume is what the diver chooses. */
const STILL = { ...restingControls(320), breath: 1 };

/** Mass in motion, kg: all parts and the added mass of what they displace. */
function inertiaKg(rig: Rig, state: DiveState): number {
  const parts = ledger(rig, state);
  const massKg = parts.reduce((kg, part) => kg + part.massKg, 0);
  const displacedKg = parts.reduce((n, part) => n + part.buoyancyN, 0) / rig.column.gravityMps2;
  return massKg + rig.addedMassLevel * displacedKg;
}

describe('closed forms of motion', () => {
  test('a diver without compressible gas approaches terminal speed as v∞·tanh(t/τ), to 1e-10 m/s', () => {
    const setup = changed(EXAMPLE, { water: { bottomM: 300 } });
    const rig = sinkingWithN(setup, 30, 5);
    const state = startState(rig, { depthM: 5, lungM3: 3.2e-3 });
    const half = 0.5 * rig.column.segments[0]!.densityKgPerM3 * rig.dragAreaLevelM2;
    const terminalMps = Math.sqrt(30 / half);
    const tauS = inertiaKg(rig, state) / Math.sqrt(30 * half);
    let worst = 0;
    let fallenM = 0;
    for (let tick = 12; tick <= 120 * 15; tick += 12) {
      advance(rig, state, STILL, 12);
      const t = tick / 120;
      worst = Math.max(worst, Math.abs(state.speedMps - terminalMps * Math.tanh(t / tauS)));
      fallenM = terminalMps * tauS * Math.log(Math.cosh(t / tauS));
    }
    // Air that the lungs take in on the way comes out of the cylinder: the diver's mass stays, and the form is exact.
    expect(worst).toBeLessThan(1e-10);
    expect(Math.abs(state.depthM - 5 - fallenM)).toBeLessThan(1e-9);
    expect(state.speedMps).toBeGreaterThan(0.98 * terminalMps);
  });

  test('1 mm off an unstable neutral depth the offset grows as cosh(λt), lungs held open at one volume', () => {
    const rig = weighed(EXAMPLE, 4);
    const neutral = neutralState(rig, 10);
    const net = (offM: number) => netForceN(rig, { ...neutral, depthM: 10 + offM });
    const k = -(net(1e-3) - net(-1e-3)) / 2e-3;
    const lambda = Math.sqrt(k / inertiaKg(rig, neutral));
    const state = { ...neutral, depthM: 10.001, cylinderMol: [...neutral.cylinderMol] };
    for (let second = 1; second <= 6; second++) {
      advance(rig, state, STILL, 120, undefined, true);
      // Drag is quadratic in a speed of tenths of a millimetre per second: under 0.01 % of the offset in six seconds.
      const expected = 1e-3 * Math.cosh(lambda * second);
      expect(Math.abs(state.depthM - 10 - expected) / expected, `after ${second} s`).toBeLessThan(1e-4);
    }
    expect(state.depthM - 10).toBeGreaterThan(1.3e-3);
  });

  test('hovering off the other side grows the other way', () => {
    const rig = weighed(EXAMPLE, 4);
    const neutral = neutralState(rig, 10);
    const state = { ...neutral, depthM: 9.999, cylinderMol: [...neutral.cylinderMol] };
    advance(rig, state, STILL, 600, undefined, true);
    expect(state.depthM).toBeLessThan(9.999);
  });

  test('a current carries a neutral rigid diver along: the speed settles on that of the water', () => {
    const setup = changed(EXAMPLE, { water: { bottomM: 300, currentDownMps: 0.2 } });
    const rig = sinkingWithN(setup, 0, 5);
    const state = startState(rig, { depthM: 5, lungM3: 3.2e-3 });
    advance(rig, state, STILL, 120 * 300);
    expect(Math.abs(state.speedMps - 0.2)).toBeLessThan(0.01);
  });

  test('the fins’ vertical component balances a steady force: thrust 30 N at 30° holds 15 N of surplus', () => {
    const setup = changed(EXAMPLE, { water: { bottomM: 300 } });
    const rig = sinkingWithN(setup, 15, 20);
    const state = startState(rig, { depthM: 20, lungM3: 3.2e-3, pitchDeg: 30 });
    advance(rig, state, { ...STILL, finsN: 30, pitchDeg: 30 }, 120 * 20, undefined, true);
    expect(Math.abs(state.depthM - 20)).toBeLessThan(1e-3);
    expect(state.finsUpNs).toBeCloseTo(15 * 20, 6);
  });
});

/** The state that is neutral at a depth with jacket gas, at mid-breath, at rest, level. */
function neutralState(rig: Rig, depthM: number): DiveState {
  const pressure = pressurePa(rig.column, depthM);
  let [low, high] = [0, 18e-3];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (netForceN(rig, instantOf(rig, { depthM, jacketM3: middle })) < 0) low = middle;
    else high = middle;
  }
  const state = startState(rig, { depthM, jacketM3: low, lungM3: midBreathM3(rig) });
  expect(jacketM3(rig, state.jacketMol, pressure)).toBeCloseTo(low, 12);
  return state;
}
