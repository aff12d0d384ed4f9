import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instantOf, lungMol, netForceN, type Instant, type Rig } from '../../src/diver/index.ts';
import { USUAL_LUNGS, breathReach, breathReachAt } from '../../src/insight/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { EXAMPLE, setupOf, weighed } from '../reference/rigs.ts';
import { TWO_PIECE, chances, deep, halved, layered, neutralAt } from './hovering.ts';

/** Net force with such lungs at a depth: they hold gas of the depth, all other gas stays. */
const netWith = (rig: Rig, at: Instant, lungM3: number) => {
  const moved = { ...at, lungM3 };
  return (depthM: number) => {
    moved.depthM = depthM;
    moved.lungMol = lungMol(rig, lungM3, pressurePa(rig.column, Math.max(depthM, 0)));
    return netForceN(rig, moved);
  };
};

describe('breathReach()', () => {
  // Landmarks of the model's own page [derived]: neutral by the jacket at 10 m at mid-breath, 120 bar; ±0.1 m, whole metres ±0.5 m.
  test.each([
    ['5 mm', EXAMPLE, 0, 4.8, 46, 0.5],
    ['5 mm, 8 kg too much', EXAMPLE, 8, 7.7, 16.1, 0.1],
    ['7 mm two-piece', TWO_PIECE, 0, 6.8, 20.7, 0.1],
    ['7 mm two-piece, 8 kg too much', TWO_PIECE, 8, 8.2, 14.3, 0.1],
  ])('around 10 m in %s is the landmark’s', (_, setup, surplusKg, from, to, tolerance) => {
    const rig = deep(weighed(setup, surplusKg));
    const reach = breathReachAt(rig, neutralAt(rig, 10), USUAL_LUNGS)!;
    expect(Math.abs(reach[0] - from)).toBeLessThan(0.1);
    expect(Math.abs(reach[1] - to)).toBeLessThan(tolerance);
  });

  test('holds exactly the depths of a scan by the centimetre at which some lung volume balances, over 300 chance moments', () => {
    let within = 0;
    let split = 0;
    for (const [rig, at] of chances(300, 41)) {
      const reach = breathReach(rig, at, USUAL_LUNGS);
      const [full, empty] = [USUAL_LUNGS.mostM3, USUAL_LUNGS.leastM3].map((lungM3) => netWith(rig, at, lungM3));
      if (reach.length > 1) split++;
      for (let depthM = -0.595; depthM < rig.bottomM; depthM += 0.01) {
        const balances = rig.lungs.open && full!(depthM) >= 0 && empty!(depthM) <= 0;
        const told = reach.some(([from, to]) => from <= depthM && depthM <= to);
        if (told !== balances) {
          const away = Math.min(...reach.flat().map((end) => Math.abs(end - depthM)));
          expect(away, `${depthM} m of ${JSON.stringify(reach)}`).toBeLessThan(1e-6);
        }
        if (balances) within++;
      }
    }
    expect(within).toBeGreaterThan(20_000);
    expect(split).toBeGreaterThan(30);
  });

  test('ends where full or nearly empty lungs balance, to 1e-6 m, or at an end of the column', () => {
    let ends = 0;
    for (const [rig, at] of chances(150, 43)) {
      const nets = [USUAL_LUNGS.leastM3, USUAL_LUNGS.mostM3].map((lungM3) => netWith(rig, at, lungM3));
      for (const end of breathReach(rig, at, USUAL_LUNGS).flat()) {
        if (end === rig.bottomM || end === -0.6) continue;
        const passes = nets.some((net) => net(end - 1e-6) >= 0 !== net(end + 1e-6) >= 0);
        expect(passes, `${end} m`).toBe(true);
        ends++;
      }
    }
    expect(ends).toBeGreaterThan(150);
  });

  test('more lead, made neutral again by the jacket at the same depth and lungs, never widens it at either end', () => {
    const litres = fc.double({ min: 2.2, max: 5, noNaN: true });
    const kg = fc.double({ min: 0, max: 4, noNaN: true });
    const depths = fc.double({ min: 4, max: 30, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(EXAMPLE, TWO_PIECE),
        kg,
        kg,
        depths,
        litres,
        (setup, surplusKg, moreKg, depthM, litre) => {
          const [light, heavy] = [surplusKg, surplusKg + moreKg].map((surplus) => {
            const rig = deep(weighed(setup, 1.5 + surplus), 60);
            const at = neutralAt(rig, depthM, litre * 1e-3);
            expect(Math.abs(netForceN(rig, at))).toBeLessThan(1e-6);
            return breathReachAt(rig, at, USUAL_LUNGS)!;
          });
          expect(heavy![0]).toBeGreaterThan(light![0] - 1e-6);
          expect(heavy![1]).toBeLessThan(light![1] + 1e-6);
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });

  test('a wider range of lungs never reaches less', () => {
    for (const [rig, at] of chances(60, 47)) {
      const wide = breathReach(rig, at, { leastM3: 1.5e-3, mostM3: 6.2e-3 });
      for (const [from, to] of breathReach(rig, at, USUAL_LUNGS))
        expect(wide.some(([top, bottom]) => top <= from + 1e-6 && bottom >= to - 1e-6)).toBe(true);
    }
  });

  test('no chest reaches beyond its own: a small one asked for 5.8 L reaches as far as asked for what it holds', () => {
    const rig = weighed(setupOf('\ndiver: { massKg: 60, sex: female, ageYears: 40, heightCm: 160 }'), 4);
    const { residualM3, totalM3 } = rig.lungs;
    expect(totalM3).toBeLessThan(USUAL_LUNGS.mostM3);
    const at = instantOf(rig, { depthM: 10, jacketM3: 4e-3 });
    const own = breathReach(rig, at, { leastM3: Math.max(residualM3, USUAL_LUNGS.leastM3), mostM3: totalM3 });
    expect(own.length).toBeGreaterThan(0);
    expect(breathReach(rig, at, USUAL_LUNGS)).toEqual(own);
  });

  test('on the loop there is none: breathing lifts nothing', () => {
    const rig = weighed(setupOf('\napparatus: loop'), 2);
    const at = instantOf(rig, { depthM: 8 });
    expect(breathReach(rig, at, USUAL_LUNGS)).toEqual([]);
    expect(breathReachAt(rig, at, USUAL_LUNGS)).toBeNull();
  });

  test('one lung volume alone reaches its neutral depths; a sharp edge that holds at any breath is a stretch of no length', () => {
    const rig = weighed(EXAMPLE, 4);
    const at = neutralAt(rig, 10);
    const only = { leastM3: 3.2e-3, mostM3: 3.2e-3 };
    const below = breathReach(rig, at, only).filter(([from]) => from > 0.65);
    expect(below).toHaveLength(1);
    for (const end of below[0]!) expect(Math.abs(end - 10)).toBeLessThan(1e-6);
    const edge = weighed(layered(0, 0, 38), 0, { depthM: 10, reserveBar: 120, lungM3: 1.7e-3 });
    const moderate = { leastM3: 2e-3, mostM3: 2.4e-3 };
    const resting = instantOf(edge, { depthM: 10, cylinderBar: 120 });
    expect(breathReach(edge, resting, moderate)).toContainEqual([10, 10]);
  });

  test('breathReachAt() is the stretch that holds the diver, or the nearest', () => {
    const rig = weighed(EXAMPLE, 6);
    const at = neutralAt(rig, 12);
    const all = breathReach(rig, at, USUAL_LUNGS);
    // Afloat with gas in the jacket, and about 12 m; nothing between.
    expect(all).toHaveLength(2);
    expect(breathReachAt(rig, at, USUAL_LUNGS)).toEqual(all[1]);
    expect(breathReachAt(rig, { ...at, depthM: 30 }, USUAL_LUNGS)).toEqual(all[1]);
    expect(breathReachAt(rig, { ...at, depthM: 0.8 }, USUAL_LUNGS)).toEqual(all[0]);
  });

  test('a balance by halving at each end: nearly empty lungs above, full ones below', () => {
    const rig = deep(weighed(TWO_PIECE, 4));
    const at = neutralAt(rig, 10);
    const [from, to] = breathReachAt(rig, at, USUAL_LUNGS)!;
    expect(Math.abs(from - halved(1, 10, netWith(rig, at, 1.8e-3)))).toBeLessThan(1e-6);
    expect(Math.abs(to - halved(10, 100, netWith(rig, at, 5.8e-3)))).toBeLessThan(1e-6);
  });

  test('throws on lungs that cannot be', () => {
    const rig = weighed(EXAMPLE);
    const at = instantOf(rig, { depthM: 10 });
    for (const [leastM3, mostM3] of [
      [3e-3, 2e-3],
      [-1e-3, 2e-3],
      [1e-3, Infinity],
      [NaN, 3e-3],
    ] as const)
      expect(() => breathReach(rig, at, { leastM3, mostM3 })).toThrow(RangeError);
  });
});
