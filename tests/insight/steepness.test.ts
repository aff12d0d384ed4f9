import { describe, expect, test } from 'vitest';
import { advance, direction, restingControls, type DiveState } from '../../src/dive/index.ts';
import { instantOf, ledger, netForceN, type Instant, type Rig } from '../../src/diver/index.ts';
import { steepnessAt } from '../../src/insight/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { EXAMPLE, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';
import { TWO_PIECE, chances, deep, layered, neutralAt, restingAt } from './hovering.ts';

/** −dF/dz just below a depth, by three points on that side: to the second order in 0.1 mm, and on one side of a corner. */
function slopeBelowNPerM(net: (depthM: number) => number, depthM: number): number {
  const h = 1e-4;
  return (3 * net(depthM) - 4 * net(depthM + h) + net(depthM + 2 * h)) / (2 * h);
}

/** Net force at another depth: all gas kept, and lungs too, or by Boyle's law between residual and total. */
function netAt(rig: Rig, at: Instant, held = false) {
  return (depthM: number) => {
    const dryPa = pressurePa(rig.column, Math.max(depthM, 0)) - 6270;
    const free = (at.lungMol * 8.314462618 * 310.15) / dryPa;
    const lungM3 = held ? Math.min(Math.max(free, rig.lungs.residualM3), rig.lungs.totalM3) : at.lungM3;
    return netForceN(rig, { ...at, depthM, lungM3 });
  };
}

const sumOf = (shares: object) => Object.values(shares).reduce((sum: number, share: number) => sum + share, 0);

describe('steepnessAt()', () => {
  test('k is −dF/dz of the net force, and its shares add up to it, over 600 chance rigs and moments', () => {
    const seen = new Set<string>();
    for (const [rig, at] of chances(600, 23)) {
      const { kNPerM, shares } = steepnessAt(rig, at);
      const expected = slopeBelowNPerM(netAt(rig, at), at.depthM);
      expect(Math.abs(kNPerM - expected), JSON.stringify({ at, shares })).toBeLessThan(1e-5 * (1 + Math.abs(expected)));
      expect(Math.abs(sumOf(shares) - kNPerM)).toBeLessThan(1e-9);
      for (const [part, share] of Object.entries(shares)) if (share !== 0) seen.add(part);
    }
    expect([...seen].sort()).toEqual(['drysuit', 'gut', 'jacket', 'loop', 'suit', 'surface', 'water']);
  });

  test('of a held breath k is −dF/dz with lungs by Boyle’s law between residual and total volume', () => {
    let free = 0;
    for (const [rig, at] of chances(300, 29)) {
      if (!rig.lungs.open || at.depthM < 0.65) continue;
      const { kNPerM, shares } = steepnessAt(rig, at, true);
      const expected = slopeBelowNPerM(netAt(rig, at, true), at.depthM);
      expect(Math.abs(kNPerM - expected)).toBeLessThan(1e-5 * (1 + Math.abs(expected)));
      if (shares.lungs > 0) free++;
    }
    expect(free).toBeGreaterThan(100);
  });

  test('10 L of free gas at 10 m of sea water have (ρg)²V/p = 5.0 N/m', () => {
    const rig = weighed(EXAMPLE, 8);
    const { shares } = steepnessAt(rig, instantOf(rig, { depthM: 10, jacketM3: 10e-3 }));
    const rhoG = rig.column.segments[0]!.densityKgPerM3 * 9.80665;
    expect(Math.abs(shares.jacket - (rhoG ** 2 * 10e-3) / (101325 + rhoG * 10))).toBeLessThan(1e-9);
    // Landmark of the model's own page [derived], as printed.
    expect(Math.abs(shares.jacket - 5)).toBeLessThan(0.05);
  });

  test('of a diver neutral by the jacket k·p is the same at every depth: all gas together keeps one volume', () => {
    // Gas of no weight, so that the balance is of volumes alone.
    const rig = deep({ ...weighed(EXAMPLE, 4), kgPerMol: 0 });
    const heavier = deep({ ...weighed(EXAMPLE, 5), kgPerMol: 0 });
    const rho = rig.column.segments[0]!.densityKgPerM3;
    const gasM3 = (of: Rig, depthM: number) =>
      (steepnessAt(of, neutralAt(of, depthM)).kNPerM * pressurePa(of.column, depthM)) / (rho * 9.80665) ** 2;
    for (const depthM of [3, 8, 15, 30, 60]) {
      expect(Math.abs(gasM3(rig, depthM) / gasM3(rig, 10) - 1)).toBeLessThan(1e-9);
      // 0.89 L a kilogram of surplus lead in sea water. Landmark of the model's own page [derived], as printed.
      const perKgM3 = gasM3(heavier, depthM) - gasM3(rig, depthM);
      expect(Math.abs(perKgM3 - (1 / rho) * (1 - rho / 11340))).toBeLessThan(1e-12);
      expect(Math.abs(perKgM3 * 1e3 - 0.89)).toBeLessThan(0.005);
    }
  });

  test('gas at the limit of its bag adds nothing: a full jacket, a squeezed drysuit, a held breath at total or residual', () => {
    const rig = weighed(EXAMPLE, 4);
    const at = instantOf(rig, { depthM: 10, jacketM3: rig.jacket.capacityM3 });
    expect(steepnessAt(rig, { ...at, depthM: 9 }).shares.jacket).toBe(0);
    expect(steepnessAt(rig, { ...at, depthM: 10.1 }).shares.jacket).toBeGreaterThan(8);
    const dry = weighed(setupOf('\nsuit: { kind: drysuit }'), 4);
    const loft = instantOf(dry, { depthM: 10, suitGasM3: dry.drysuit!.minimumM3 });
    expect(steepnessAt(dry, { ...loft, depthM: 10.1 }).shares.drysuit).toBe(0);
    expect(steepnessAt(dry, { ...loft, depthM: 9.9 }).shares.drysuit).toBeGreaterThan(1);
    const full = instantOf(rig, { depthM: 10, lungM3: rig.lungs.totalM3 });
    expect(steepnessAt(rig, { ...full, depthM: 9.9 }, true).shares.lungs).toBe(0);
    expect(steepnessAt(rig, { ...full, depthM: 10.1 }, true).shares.lungs).toBeGreaterThan(2);
    const empty = instantOf(rig, { depthM: 10, lungM3: rig.lungs.residualM3 });
    expect(steepnessAt(rig, { ...empty, depthM: 10.1 }, true).shares.lungs).toBe(0);
    expect(steepnessAt(rig, full).shares.lungs).toBe(0);
  });

  test('upright at the surface the head’s section holds with ρg·4.5 L/0.24 m; all out of the water nothing holds', () => {
    const rig = weighed(EXAMPLE);
    const rho = rig.column.segments[0]!.densityKgPerM3;
    const upright = { ...instantOf(rig, { depthM: 0.5 }), pitchCos: 0, pitchSin: 1 };
    expect(Math.abs(steepnessAt(rig, upright).shares.surface + (rho * 9.80665 * 4.5e-3) / 0.24)).toBeLessThan(1e-9);
    const out = steepnessAt(rig, { ...instantOf(rig, { depthM: 0 }), depthM: -0.5 });
    expect(out.kNPerM).toBe(0);
    expect([out.growthPerS, out.eFoldingS, out.doublingS, out.periodS]).toEqual([null, null, null, null]);
  });

  test('inertia is the ledger’s mass and the added mass of what it displaces, level and upright', () => {
    const rig = weighed(EXAMPLE, 2);
    for (const degrees of [0, 30, 90]) {
      const facing = direction(degrees);
      const at = { ...instantOf(rig, { depthM: 10 }), pitchCos: facing.cos, pitchSin: facing.sin };
      const parts = ledger(rig, at);
      const massKg = parts.reduce((kg, part) => kg + part.massKg, 0);
      const displacedKg = parts.reduce((n, part) => n + part.buoyancyN, 0) / 9.80665;
      const share = 0.87 + (0.07 - 0.87) * facing.sin ** 2;
      expect(Math.abs(steepnessAt(rig, at).inertiaKg - massKg - share * displacedKg)).toBeLessThan(1e-9);
    }
  });

  test('denser water below takes k under 0, and the offset comes back: a period, no growth', () => {
    const rig = weighed(layered(2));
    const { kNPerM, shares, inertiaKg, ...times } = steepnessAt(rig, instantOf(rig, { depthM: 10 }));
    expect(shares.water).toBeLessThan(0);
    expect(kNPerM).toBeLessThan(0);
    expect(times).toEqual({
      growthPerS: null,
      eFoldingS: null,
      doublingS: null,
      periodS: 2 * Math.PI * Math.sqrt(inertiaKg / -kNPerM),
    });
  });
});

describe('growth from an unstable neutral depth', () => {
  // Landmarks of the model's own page [derived]: neutral by the jacket at 5 m at mid-breath with 120 bar; ±0.1 s.
  test.each([
    ['5 mm', EXAMPLE, 0, 8.8],
    ['5 mm, 8 kg too much', EXAMPLE, 8, 5.5],
    ['7 mm two-piece', TWO_PIECE, 0, 6.6],
    ['7 mm two-piece, 8 kg too much', TWO_PIECE, 8, 4.9],
  ])('an offset at 5 m in %s grows by e in the landmark’s seconds', (_, setup, surplusKg, seconds) => {
    const rig = weighed(setup, surplusKg);
    const { eFoldingS, growthPerS, doublingS } = steepnessAt(rig, neutralAt(rig, 5));
    expect(Math.abs(eFoldingS! - seconds)).toBeLessThan(0.1);
    expect(growthPerS! * eFoldingS!).toBeCloseTo(1, 12);
    expect(doublingS! / eFoldingS!).toBeCloseTo(Math.LN2, 12);
  });

  test.each([
    ['5 mm', EXAMPLE, 0],
    ['5 mm, 8 kg too much', EXAMPLE, 8],
    ['7 mm two-piece', TWO_PIECE, 8],
  ])(
    'the step let go 1 mm off in %s follows cosh(λt) within 1 %% until the offset is tenfold',
    (_, setup, surplusKg) => {
      const rig = weighed(setup, surplusKg);
      const at = neutralAt(rig, 10);
      const { growthPerS } = steepnessAt(rig, at);
      for (const offM of [1e-3, -1e-3]) {
        const state: DiveState = restingAt(rig, { ...at, depthM: 10 + offM });
        // Three e-foldings are a tenfold offset; beyond that drag begins to show.
        for (let second = 1; second * growthPerS! < 3; second++) {
          advance(rig, state, { ...restingControls(320), breath: 1 }, 120, undefined, true);
          const ratio = (state.depthM - 10) / (offM * Math.cosh(growthPerS! * second));
          expect(Math.abs(ratio - 1), `${offM} m off, after ${second} s`).toBeLessThan(0.01);
        }
        expect(Math.abs(state.depthM - 10)).toBeGreaterThan(7e-3);
      }
    },
  );

  test.each([
    ['5 mm', 0, 1.8],
    ['5 mm, 8 kg too much', 8, 8.9],
  ])('the jacket at 10 m in %s holds the landmark’s litres', (_, surplusKg, litres) => {
    const rig = weighed(EXAMPLE, surplusKg);
    const jacketM3 = (neutralAt(rig, 10).jacketMol * rig.gasJPerMol) / pressurePa(rig.column, 10);
    // As printed on the model's own page [derived].
    expect(Math.abs(jacketM3 * 1e3 - litres)).toBeLessThan(0.05);
  });

  test('lead alone changes inertia and not steepness; the gas that it asks for does', () => {
    const at = instantOf(withLeadKg(EXAMPLE, 2), { depthM: 10, jacketM3: 3e-3 });
    const [light, heavy] = [2, 6].map((kg) => steepnessAt(withLeadKg(EXAMPLE, kg), at));
    expect(heavy!.kNPerM).toBe(light!.kNPerM);
    expect(heavy!.inertiaKg).toBeGreaterThan(light!.inertiaKg + 4);
  });
});
