import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FLAG, advance, floatingDepthM, restingControls, startState, type DiveEvent } from '../../src/dive/index.ts';
import { HEAD_OUT_M, emergedM3, instantOf, ledger, netForceN, rigOf } from '../../src/diver/index.ts';
import { EXAMPLE, changed, weighed, withLeadKg } from '../reference/rigs.ts';

const LIGHT = withLeadKg(EXAMPLE, 0);
const HEAVY = weighed(EXAMPLE, 6);
const BREATHING = restingControls(320);

describe('fins', () => {
  test('100 N last five seconds, then 45 N; rest gives them back', () => {
    const rig = weighed(EXAMPLE);
    const state = startState(rig, { depthM: 20 });
    const kick = { ...BREATHING, finsN: 100 };
    advance(rig, state, kick, 120 * 5 - 1, undefined, true);
    expect(state.thrustN).toBe(100);
    advance(rig, state, kick, 10, undefined, true);
    expect(state.thrustN).toBe(45);
    // Asking for more all the time gives no more: no second tick of sprint out of what a tick of cruising gave back.
    const before = state.finsUpNs + state.finsDownNs;
    advance(rig, state, { ...kick, pitchDeg: 90 }, 120 * 10, undefined, true);
    expect(state.thrustN).toBe(45);
    expect(state.finsUpNs + state.finsDownNs - before).toBeLessThanOrEqual(450);
    advance(rig, state, BREATHING, 120 * 20 + 1, undefined, true);
    expect(state.sprintS).toBe(5);
  });
});

describe('floor', () => {
  test('landing is inelastic: the diver lies 0.25 m over the bottom level, 1.3 m upright, and the speed is told', () => {
    for (const [pitchDeg, reachM] of [
      [0, 0.25],
      [90, 1.3],
    ] as const) {
      const rig = { ...HEAVY, bottomM: 15 };
      const state = startState(rig, { depthM: 5, pitchDeg });
      const events: DiveEvent[] = [];
      let speed = 0;
      while (state.resting === 0) {
        speed = state.speedMps;
        advance(rig, state, { ...BREATHING, pitchDeg }, 1, events, true);
      }
      expect(state.depthM).toBeCloseTo(15 - reachM, 12);
      expect(state.speedMps).toBe(0);
      const landing = events.find(({ kind }) => kind === 'bottom-touched')!;
      expect(landing.speedMps).toBeCloseTo(speed, 2);
      advance(rig, state, { ...BREATHING, pitchDeg }, 600, events, true);
      expect(state.depthM).toBeLessThanOrEqual(15 - reachM + 1e-12);
      expect(events.filter(({ kind }) => kind === 'bottom-touched')).toHaveLength(1);
    }
  });

  test('a ledge holds who comes from above while it is there; switched off it lets him through', () => {
    const rig = { ...HEAVY, bottomM: 30, ledgeM: 10 };
    const state = startState(rig, { depthM: 5 });
    const events: DiveEvent[] = [];
    advance(rig, state, BREATHING, 120 * 60, events);
    expect(state.depthM).toBeCloseTo(9.75, 9);
    expect(events.map(({ kind }) => kind)).toContain('ledge-touched');
    advance(rig, state, { ...BREATHING, ledge: 0 }, 120 * 20, events);
    expect(state.depthM).toBeGreaterThan(11);
  });

  test('hands on the up-line stop a diver and hold him against 200 N', () => {
    const rig = { ...HEAVY, line: true };
    const state = startState(rig, { depthM: 8, speedMps: 0.4 });
    advance(rig, state, { ...BREATHING, holdLine: 1 }, 120 * 5);
    expect(Math.abs(state.speedMps)).toBeLessThan(0.01);
    const depthM = state.depthM;
    advance(rig, state, { ...BREATHING, holdLine: 1 }, 120 * 20);
    expect(Math.abs(state.depthM - depthM)).toBeLessThan(0.2);
  });
});

describe('surface', () => {
  test('what emerges is never more than the whole, in the ledger and in the step', () => {
    const depth = fc.double({ min: -0.6, max: 0.7, noNaN: true });
    const sine = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(depth, sine, (depthM, pitchSin) => {
        const at = {
          ...instantOf(LIGHT, { depthM: 0 }),
          depthM,
          pitchSin,
          pitchCos: Math.sqrt(1 - pitchSin * pitchSin),
        };
        const parts = ledger(LIGHT, at);
        const displaced = parts.reduce((m3, part) => m3 + part.volumeM3, 0);
        expect(displaced).toBeGreaterThanOrEqual(-1e-12);
        const above = parts.find(({ part }) => part === 'above-water')?.volumeM3 ?? 0;
        const whole = displaced - above;
        expect(-above).toBeLessThanOrEqual(whole + 1e-12);
        expect(netForceN(LIGHT, at)).toBeGreaterThanOrEqual(-parts.reduce((n, part) => n + part.weightN, 0) - 1e-9);
      }),
      { seed: 31, numRuns: 300 },
    );
  });

  test('a diver set down at floatingDepthM() stays there, upright, within 2 cm', () => {
    const rig = weighed(EXAMPLE);
    for (const jacketM3 of [4e-3, 8e-3, 14e-3]) {
      const depthM = floatingDepthM(rig, jacketM3);
      expect(emergedM3(depthM, 1)).toBeGreaterThan(0);
      expect(depthM).toBeLessThan(HEAD_OUT_M);
      const state = startState(rig, { depthM, jacketM3, lungM3: 3.2e-3, pitchDeg: 90 });
      advance(rig, state, { ...BREATHING, breath: 1, pitchDeg: 90 }, 120 * 20, undefined, true);
      expect(Math.abs(state.depthM - depthM)).toBeLessThan(0.02);
    }
  });

  test('breaking the surface and going under are told, with the speed', () => {
    const events: DiveEvent[] = [];
    const state = startState(LIGHT, { depthM: 4 });
    advance(LIGHT, state, BREATHING, 120 * 40, events);
    const out = events.find(({ kind }) => kind === 'head-out')!;
    expect(out.speedMps!).toBeLessThan(0);
    expect(state.flags & FLAG.headOut).toBe(FLAG.headOut);
  });
});

describe('what a start refuses', () => {
  test('startState() refuses depths out of the water and under the bottom', () => {
    const rig = rigOf(changed(EXAMPLE, { water: { bottomM: 20 } }));
    for (const depthM of [-0.7, 20.1, NaN]) expect(() => startState(rig, { depthM })).toThrow(RangeError);
  });
});
