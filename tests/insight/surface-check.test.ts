import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { advance, restingControls, startState } from '../../src/dive/index.ts';
import { rigOf, type Rig } from '../../src/diver/index.ts';
import { EYES_M, surfaceCheck, type SurfaceCheck } from '../../src/insight/index.ts';
import { EXAMPLE, changed, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';

const RHO = 1025.9727538653833;
const G = 9.80665;
const PULL = 1 - RHO / 11340;

const lineOf = (rig: Rig, cylinder: SurfaceCheck['cylinder'], breath: SurfaceCheck['breath']) =>
  surfaceCheck(rig).find((line) => line.cylinder === cylinder && line.breath === breath)!;

describe('surfaceCheck()', () => {
  test('has a line for each cylinder and breath, with the lungs of that breath', () => {
    expect(
      surfaceCheck(rigOf(EXAMPLE)).map(({ cylinder, breath, lungM3 }) => [cylinder, breath, lungM3! * 1e3]),
    ).toEqual([
      ['full', 'breathed out', 1.5],
      ['full', 'normal breath', 3.7],
      ['full', 'full breath', 6.3],
      ['reserve', 'breathed out', 1.5],
      ['reserve', 'normal breath', 3.7],
      ['reserve', 'full breath', 6.3],
    ]);
  });

  test('who is weighed for 5 m floats at eye level at the reserve with a normal breath, and goes under on breathing out', () => {
    // How the surface check is told [practice, no source].
    const rig = weighed(EXAMPLE);
    expect(lineOf(rig, 'reserve', 'normal breath').word).toBe('at eye level');
    expect(lineOf(rig, 'reserve', 'breathed out')).toMatchObject({
      floats: false,
      waterlineM: null,
      word: 'goes under',
    });
    expect(lineOf(rig, 'full', 'normal breath').word).toBe('goes under');
  });

  test('a kilogram of lead at the reserve is what the gas between full and reserve weighs: 2.10 kg', () => {
    // Landmark of the physics for a 12 L cylinder from 200 to 50 bar [derived], to the digits printed.
    const rig = weighed(EXAMPLE);
    const [full, reserve] = [lineOf(rig, 'full', 'normal breath'), lineOf(rig, 'reserve', 'normal breath')];
    expect(Math.abs((reserve.coveredN - full.coveredN) / G - 2.1)).toBeLessThan(0.01);
  });

  test('the waterline is where the fixed step comes to rest, upright, within a millimetre', () => {
    const rig = weighed(EXAMPLE);
    for (const [breath, lungCl] of [
      ['normal breath', 370],
      ['full breath', 630],
    ] as const) {
      const { waterlineM } = lineOf(rig, 'reserve', breath);
      const start = {
        depthM: 0.65 - waterlineM! + 0.02,
        lungM3: lungCl * 1e-5,
        jacketM3: 0,
        cylinderBar: 50,
        pitchDeg: 90,
      };
      const state = startState(rig, start);
      advance(rig, state, { ...restingControls(lungCl), breath: 1, pitchDeg: 90 }, 120 * 40);
      expect(Math.abs(0.65 - state.depthM - waterlineM!), breath).toBeLessThan(1e-3);
      expect(Math.abs(state.speedMps)).toBeLessThan(1e-4);
    }
  });

  test('what the head displaces is what it lifts: with no gas to compress the waterline is F/(ρ g 4.5 L/0.24 m)', () => {
    const rig = { ...weighed(setupOf('\nsuit: { kind: none }')), gutM3: 0 };
    const { waterlineM, coveredN } = lineOf(rig, 'reserve', 'normal breath');
    // The gas in the lungs weighs less higher up: under a milligram, and what it weighs is all that is left out.
    expect(Math.abs(waterlineM! - coveredN / (RHO * G * (4.5e-3 / 0.24)))).toBeLessThan(1e-6);
  });

  test('lead that takes off what floats the diver above the eyes brings the waterline to the eyes, 0.12 m', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (surplusKg) => {
        const rig = weighed(EXAMPLE, surplusKg);
        const { atEyesN } = lineOf(rig, 'reserve', 'normal breath');
        const there = withLeadKg(EXAMPLE, rig.lead[0]!.massKg + atEyesN / (G * PULL));
        const line = lineOf(there, 'reserve', 'normal breath');
        expect(Math.abs(line.waterlineM! - EYES_M)).toBeLessThan(1e-9);
        expect(line.word).toBe('at eye level');
      }),
      { seed: 3, numRuns: 60 },
    );
  });

  test('more lead floats lower, a fuller cylinder lower, a larger breath higher', () => {
    const outM = (line: SurfaceCheck) => line.waterlineM ?? -1;
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (surplusKg, moreKg) => {
          const [light, heavy] = [
            surfaceCheck(weighed(EXAMPLE, surplusKg)),
            surfaceCheck(weighed(EXAMPLE, surplusKg + moreKg)),
          ];
          light.forEach((line, i) => {
            expect(heavy[i]!.coveredN).toBeLessThan(line.coveredN);
            expect(outM(heavy[i]!)).toBeLessThanOrEqual(outM(line));
            if (line.floats) expect(outM(heavy[i]!)).toBeLessThan(outM(line));
            expect(line.floats).toBe(line.coveredN >= 0);
          });
          for (const breath of [0, 1, 2]) expect(light[breath]!.coveredN).toBeLessThan(light[breath + 3]!.coveredN);
          for (const i of [0, 1, 3, 4]) expect(outM(light[i]!)).toBeLessThanOrEqual(outM(light[i + 1]!));
        },
      ),
      { seed: 4, numRuns: 60 },
    );
  });

  test.each([
    // Force that is left above the waterline at the eyes, kilograms of pull, and the word for it.
    [-3, 'goes under'],
    [-1.5, 'top of the head out'],
    [0.3, 'at eye level'],
    [1.2, 'eyes out'],
    [4, 'chin out'],
    [10, 'shoulders out'],
  ] as const)('%s kg of pull at the eyes is called "%s"', (kgf, word) => {
    const rig = weighed(EXAMPLE);
    const overKgf = lineOf(rig, 'reserve', 'normal breath').atEyesN / G - kgf;
    const massKg = rig.lead[0]!.massKg + overKgf / PULL;
    // Below no lead at all, other gear of that mass and no volume stands for it.
    const moved = withLeadKg({ ...EXAMPLE, other: [...EXAMPLE.other, lift(Math.min(massKg, 0))] }, Math.max(massKg, 0));
    expect(lineOf(moved, 'reserve', 'normal breath').word).toBe(word);
  });

  test('on a closed loop one line stands for every breath, at the least volume of the loop', () => {
    const lines = surfaceCheck(rigOf(setupOf('\napparatus: loop')));
    expect(lines.map(({ cylinder, breath, lungM3 }) => [cylinder, breath, lungM3])).toEqual([
      ['full', 'any breath', null],
      ['reserve', 'any breath', null],
    ]);
  });

  test('a drysuit is checked at its least loft, whatever gas it starts with', () => {
    const at = (gasL: number) => surfaceCheck(rigOf(setupOf(`\nsuit: { kind: drysuit, gasL: ${gasL} }`)));
    expect(at(14)).toEqual(at(8));
  });

  test('the reserve asked for is the one that counts', () => {
    const rig = weighed(EXAMPLE);
    const cylinderAt = (bar: number) => surfaceCheck(rig, bar)[4]!.coveredN;
    expect(cylinderAt(200)).toBe(lineOf(rig, 'full', 'normal breath').coveredN);
    expect(cylinderAt(80)).toBeLessThan(cylinderAt(50));
  });

  test('the air above a lake does not change what is out of the water without gas in the suit', () => {
    const bare = setupOf('\nsuit: { kind: none }');
    const high = changed(bare, { water: { altitudeM: 2000 } });
    const lineAt = (setup: typeof bare) =>
      lineOf({ ...withLeadKg(setup, 1), gutM3: 0 }, 'reserve', 'full breath').waterlineM!;
    expect(Math.abs(lineAt(high) - lineAt(bare))).toBeLessThan(1e-4);
  });
});

/** Gear without volume that pulls up by so many kilograms, given below 0. */
function lift(massKg: number) {
  return { name: 'stand-in', massKg: massKg * PULL, volumeL: 0, headwardM: 0, backwardM: 0 };
}
