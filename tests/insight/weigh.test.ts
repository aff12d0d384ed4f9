import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantOf, netForceN, rigOf, type Rig, type Setup } from '../../src/diver/index.ts';
import { neutralLeadKg } from '../../src/insight/index.ts';
import { EXAMPLE, changed, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';

/** 7 mm two-piece of 2.1 m². */
const TWO_PIECE = changed(EXAMPLE, { suit: { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as never });
/** 7 mm one-piece in fresh water of 8 °C. */
const LAKE = changed(EXAMPLE, { suit: { thicknessMm: 7 } as never, water: { salinityPsu: 0, temperatureC: 8 } });
const ALUMINIUM = {
  ...EXAMPLE,
  cylinders: [
    {
      material: 'aluminium',
      waterL: 11.1,
      emptyKg: 15.1,
      externalL: 16.5,
      workingBar: 207,
      fillBar: 207,
      o2Percent: 21,
    },
  ],
} as Setup;

describe('lead', () => {
  // Landmarks of the model's own page [derived], ±0.05 kg.
  test.each([
    ['5 mm, sea', EXAMPLE, 3.73],
    ['7 mm two-piece, sea', TWO_PIECE, 8.14],
    ['7 mm one-piece, fresh water 8 °C', LAKE, 2.14],
    ['5 mm, sea, 11.1 L aluminium', ALUMINIUM, 6.51],
  ] as const)('neutralLeadKg() of %s is the landmark within 0.05 kg', (_, setup, kg) => {
    expect(Math.abs(neutralLeadKg(rigOf(setup)) - kg)).toBeLessThan(0.05);
  });

  test('neutralLeadKg() makes the net force nothing where it says', () => {
    const rig = weighed(EXAMPLE);
    expect(Math.abs(netForceN(rig, instantOf(rig, { depthM: 5, cylinderBar: 50 })))).toBeLessThan(1e-9);
  });

  test('from sea to fresh water with the gas volumes held the lead falls by M(1 − ρ₂/ρ₁)/(1 − ρ₂/ρ_lead)', () => {
    const [sea, fresh] = [1025, 1000];
    const at = { depthM: 5, reserveBar: 50 };
    const seaRig = rigOf(changed(EXAMPLE, { water: { densityKgPerM3: sea } }));
    const leadKg = neutralLeadKg(seaRig, at);
    // The same volumes of suit, gut and lungs: the fresh column begins with the pressure that makes 5 m equal in both.
    const level = sea * 9.80665 * 5 + 101325 - fresh * 9.80665 * 5;
    const freshSetup = changed(EXAMPLE, { water: { densityKgPerM3: fresh, surfacePressureBar: level / 1e5 } });
    const freshLeadKg = neutralLeadKg(rigOf(freshSetup), at);
    const whole = withLeadKg(changed(EXAMPLE, { water: { densityKgPerM3: sea } }), leadKg);
    const massKg = massOf(whole);
    const predicted = (massKg * (1 - fresh / sea)) / (1 - fresh / 11340);
    expect(Math.abs(leadKg - freshLeadKg - predicted)).toBeLessThan(1e-9);
    expect(predicted).toBeGreaterThan(2);
  });

  test('a drysuit is weighed at its least loft: more gas at the start asks for no more lead', () => {
    const at = (gasL: number) => neutralLeadKg(rigOf(setupOf(`\nsuit: { kind: drysuit, gasL: ${gasL} }`)));
    expect(at(12)).toBe(at(8));
  });
});

describe('neutral with jacket gas', () => {
  test('the total of gas that follows Boyle is the same at neutrality at every depth, lungs held at mid-breath', () => {
    const rig = weighed(EXAMPLE, 3);
    const totals = [4, 9, 17, 30].map((depthM) => compressibleM3(rig, depthM));
    for (const total of totals) expect(Math.abs(total - totals[0]!)).toBeLessThan(1e-12);
  });

  test('more lead asks for more gas, by what it weighs in water', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 6, noNaN: true }),
        fc.double({ min: 3, max: 35, noNaN: true }),
        (kg, depthM) => {
          const [light, heavy] = [weighed(EXAMPLE, 3), weighed(EXAMPLE, 3 + kg)];
          const rho = light.column.segments[0]!.densityKgPerM3;
          const gas = compressibleM3(heavy, depthM) - compressibleM3(light, depthM);
          expect(Math.abs(gas - (kg * (1 - rho / 11340)) / rho)).toBeLessThan(1e-12);
        },
      ),
      { seed: 5, numRuns: 100 },
    );
  });
});

/** All mass of a rig at the reserve, kilograms, from the weight of nothing displaced. */
function massOf(rig: Rig): number {
  const at = instantOf(rig, { depthM: 5, cylinderBar: 50 });
  const mol = at.lungMol + at.jacketMol + at.cylinderMol[0]!;
  return rig.bareKg + rig.lead[0]!.massKg + mol * rig.kgPerMol;
}

/** Foam gas, gut gas and jacket gas together when the jacket makes the diver neutral, m³; the jacket by halving. */
function compressibleM3(rig: Rig, depthM: number): number {
  const pressure = rig.column.surfacePressurePa + rig.column.segments[0]!.densityKgPerM3 * 9.80665 * depthM;
  let low = 0;
  let high = 18e-3;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (netForceN(weightless(rig), instantOf(rig, { depthM, jacketM3: middle, cylinderBar: 120 })) < 0) low = middle;
    else high = middle;
  }
  return low + ((rig.foam.gasM3 + rig.gutM3) * 101325) / pressure;
}

/** The rig with gas of no weight, in the cylinder too, so that the balance is of volumes alone. */
function weightless(rig: Rig): Rig {
  return { ...rig, kgPerMol: 0 };
}
