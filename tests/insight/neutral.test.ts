import { describe, expect, test } from 'vitest';
import { advance, restingControls } from '../../src/dive/index.ts';
import { instantOf, netForceN, rigOf, type Instant, type Rig } from '../../src/diver/index.ts';
import { neutralDepths, neutralLeadKg } from '../../src/insight/index.ts';
import { EXAMPLE, changed, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';
import { chances, deep, halved, layered, neutralAt, restingAt } from './hovering.ts';

/** Net force at another depth, all gas kept. */
const netAt = (rig: Rig, at: Instant, lungM3 = at.lungM3) => {
  const moved = { ...at, lungM3 };
  return (depthM: number) => {
    moved.depthM = depthM;
    return netForceN(rig, moved);
  };
};

/** Every change of sign on a raster of a millimetre, made finer by halving. */
function scanned(rig: Rig, net: (depthM: number) => number): number[] {
  const found: number[] = [];
  const steps = Math.ceil((rig.bottomM + 0.6) * 1000);
  const depth = (i: number) => Math.min(-0.6 + i / 1000, rig.bottomM);
  let before = net(-0.6);
  for (let i = 1; i <= steps; i++) {
    const now = net(depth(i));
    if (before >= 0 !== now >= 0) found.push(halved(depth(i - 1), depth(i), net));
    before = now;
  }
  return found;
}

describe('neutralDepths()', () => {
  test('are the changes of sign of a scan by the millimetre, to 1e-6 m, over 240 chance rigs, moments and lungs', () => {
    let roots = 0;
    let pairs = 0;
    let most = 0;
    let turn = 0;
    for (const [rig, at] of chances(240, 11)) {
      const lungM3 = rig.lungs.open ? [at.lungM3, at.lungM3, 1.8e-3, 5.8e-3][turn++ % 4]! : 0;
      const net = netAt(rig, at, lungM3);
      const expected = scanned(rig, net);
      const found = neutralDepths(rig, at, lungM3);
      // A pair within one millimetre is beyond the scan: then both lie in one of its steps.
      const seen = found.filter(({ depthM }, i) => {
        const partner = [found[i - 1], found[i + 1]].some((other) => other && Math.abs(other.depthM - depthM) < 1e-3);
        if (partner) pairs++;
        return !partner;
      });
      expect(seen.length, `${rig.name}: ${expected} / ${found.map(({ depthM }) => depthM)}`).toBe(expected.length);
      seen.forEach(({ depthM, stable }, i) => {
        expect(Math.abs(depthM - expected[i]!)).toBeLessThan(1e-6);
        expect(net(depthM - 1e-4) > net(depthM + 1e-4)).toBe(!stable);
      });
      roots += seen.length;
      most = Math.max(most, found.length);
    }
    expect(roots).toBeGreaterThan(320);
    expect(most).toBeGreaterThan(3);
    expect(pairs).toBeLessThan(6);
  });

  test('stable and unstable alternate, and the first is the floating one where the diver floats', () => {
    for (const [rig, at] of chances(60, 5)) {
      const found = neutralDepths(rig, at);
      found.slice(1).forEach(({ stable }, i) => expect(stable).toBe(!found[i]!.stable));
      if (found[0] && found[0].depthM < 0.65) expect(found[0].stable).toBe(true);
    }
  });

  test('a pair a fifth of a millimetre apart in a mixing zone is found, and none where the force stays just above nothing', () => {
    const rig = rigOf({ ...layered(4, 13, 33), lead: [] });
    const about = { ...instantOf(rig, { depthM: 9, jacketM3: 6e-3 }) };
    const net = netAt(rig, about);
    // The lowest point in the zone, by thirds: the force has one there, since salt takes over from squeezed gas.
    let [low, high] = [8.1, 11.9];
    while (high - low > 1e-9) {
      const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
      if (net(a) < net(b)) high = b;
      else low = a;
    }
    expect(low).toBeGreaterThan(8.2);
    expect(low).toBeLessThan(11.8);
    const h = 1e-3;
    const curve = (net(low + h) - 2 * net(low) + net(low - h)) / (h * h);
    const gapM = 2e-4;
    const belowN = (curve * (gapM / 2) ** 2) / 2;
    expect(belowN).toBeGreaterThan(1e-10);
    const weighing = (restN: number) => {
      const heavier = (net(low) - restN) / rig.column.gravityMps2;
      return { ...rig, bareKg: rig.bareKg + heavier };
    };
    const near = (depths: readonly { depthM: number }[]) =>
      depths.map(({ depthM }) => depthM).filter((depthM) => Math.abs(depthM - low) < 0.5);
    const pair = near(neutralDepths(weighing(-belowN), about));
    expect(pair).toHaveLength(2);
    expect(pair[1]! - pair[0]!).toBeGreaterThan(0.9 * gapM);
    expect(pair[1]! - pair[0]!).toBeLessThan(1.1 * gapM);
    expect(near(neutralDepths(weighing(belowN), about))).toHaveLength(0);
  });

  test('in a halocline the period of a small oscillation is that of the step, let go 1 mm off, to 1 %', () => {
    const setup = layered(2);
    const rig = weighed(setup, 0, { depthM: 10, reserveBar: 120 });
    const at = instantOf(rig, { depthM: 10, cylinderBar: 120 });
    const [hollow] = neutralDepths(rig, at).filter(({ depthM }) => Math.abs(depthM - 10) < 0.9);
    expect(hollow!.stable).toBe(true);
    expect(hollow!.eFoldingS).toBeNull();
    expect(Math.abs(hollow!.depthM - 10)).toBeLessThan(1e-6);
    const state = restingAt(rig, { ...at, depthM: hollow!.depthM + 1e-3 });
    const controls = { ...restingControls(320), breath: 1 };
    const passesS: number[] = [];
    for (let tick = 1; tick <= 120 * 120 && passesS.length < 5; tick++) {
      const before = state.depthM - hollow!.depthM;
      advance(rig, state, controls, 1, undefined, true);
      const now = state.depthM - hollow!.depthM;
      if (before > 0 !== now > 0) passesS.push((tick - now / (now - before)) / 120);
    }
    expect(passesS).toHaveLength(5);
    const periodS = (passesS[4]! - passesS[0]!) / 2;
    expect(Math.abs(periodS / hollow!.periodS! - 1)).toBeLessThan(0.01);
  });

  test('a sharp edge of fresh over salt water holds a diver who is heavy above and light below; small periods have no limit', () => {
    const rig = weighed(layered(0), 0, { depthM: 10, reserveBar: 120 });
    const lighter = { ...rig, bareKg: rig.bareKg - 1 };
    const at = instantOf(lighter, { depthM: 6, cylinderBar: 120 });
    const held = neutralDepths(lighter, at).find(({ depthM, stable }) => depthM > 1 && stable);
    expect(held).toEqual({ depthM: 10, stable: true, eFoldingS: null, periodS: null });
  });

  test('without jacket, suit and layers there is one neutral depth below the surface at most, and gut gas makes it unstable', () => {
    const bare = weighed(setupOf('\nsuit: { kind: none }'), 0, { depthM: 12, reserveBar: 200 });
    const found = neutralDepths(bare, instantOf(bare, { depthM: 12 })).filter(({ depthM }) => depthM > 0.65);
    expect(found).toHaveLength(1);
    expect(Math.abs(found[0]!.depthM - 12)).toBeLessThan(1e-6);
    expect(found[0]!.stable).toBe(false);
  });

  test('on the loop the lungs are nothing: any volume has the same neutral depths', () => {
    const rig = weighed(setupOf('\napparatus: loop'), 2);
    const at = instantOf(rig, { depthM: 8, loopM3: 5e-3, jacketM3: 2e-3 });
    expect(neutralDepths(rig, at, 5e-3)).toEqual(neutralDepths(rig, at));
    expect(neutralDepths(rig, at).length).toBeGreaterThan(0);
  });

  test('from sea to fresh water, gas volumes held, M(1 − ρ₂/ρ₁)/(1 − ρ₂/ρ_lead) less lead is neutral at the same depth', () => {
    const [sea, fresh] = [1025, 1000];
    const rig = weighed(changed(EXAMPLE, { water: { densityKgPerM3: sea } }));
    const reserve = { depthM: 5, cylinderBar: 50 };
    const at = instantOf(rig, reserve);
    const mol = at.lungMol + at.jacketMol + at.cylinderMol[0]!;
    const massKg = rig.bareKg + rig.lead[0]!.massKg + mol * rig.kgPerMol;
    // The fresh column begins with the pressure that makes 5 m equal in both: volumes of suit, gut and lungs are held.
    const pa = 101325 + (sea - fresh) * 9.80665 * 5;
    const freshSetup = changed(EXAMPLE, { water: { densityKgPerM3: fresh, surfacePressureBar: pa / 1e5 } });
    const lessKg = (massKg * (1 - fresh / sea)) / (1 - fresh / 11340);
    const freshRig = withLeadKg(freshSetup, neutralLeadKg(rig) - lessKg);
    const found = neutralDepths(freshRig, instantOf(freshRig, reserve)).filter(({ depthM }) => depthM > 0.65);
    expect(found.map(({ stable }) => stable)).toEqual([false]);
    expect(Math.abs(found[0]!.depthM - 5)).toBeLessThan(1e-6);
  });

  test('throws on lungs that cannot be, and leaves the moment as it was', () => {
    const rig = deep(weighed(EXAMPLE, 2));
    const at = neutralAt(rig, 10);
    const before = JSON.stringify(at);
    const found = neutralDepths(rig, at);
    expect(neutralDepths(rig, at)).toEqual(found);
    expect(JSON.stringify(at)).toBe(before);
    for (const lungM3 of [-1e-3, NaN, Infinity]) expect(() => neutralDepths(rig, at, lungM3)).toThrow(RangeError);
  });
});
