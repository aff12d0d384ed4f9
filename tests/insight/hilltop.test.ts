import { describe, expect, test } from 'vitest';
import { direction } from '../../src/dive/index.ts';
import { instantOf, netForceN, type Instant, type Rig } from '../../src/diver/index.ts';
import { hilltop, neutralDepths } from '../../src/insight/index.ts';
import { EXAMPLE, weighed } from '../reference/rigs.ts';
import { chances, deep, layered, neutralAt } from './hovering.ts';

const netAt = (rig: Rig, at: Instant, lungM3: number) => {
  const moved = { ...at, lungM3 };
  return (depthM: number) => {
    moved.depthM = depthM;
    return netForceN(rig, moved);
  };
};

/** ∫F dz by Simpson's rule, cut at the edges of the water and of the diver's outline; a corner between costs 1e-4 J. */
function workJ(rig: Rig, net: (depthM: number) => number, fromM: number, toM: number): number {
  if (toM < fromM) return -workJ(rig, net, toM, fromM);
  const edges = [0, 0.25, 0.41, 0.65, ...rig.column.segments.map((segment) => segment.fromM)];
  const cuts = [fromM, ...edges.filter((z) => z > fromM && z < toM).sort((a, b) => a - b), toM];
  let sum = 0;
  for (let i = 1; i < cuts.length; i++) {
    // A hair inside, so that either side of an edge keeps its own water.
    const top = cuts[i - 1]! + 1e-10;
    const bottom = cuts[i]! - 1e-10;
    const pieces = Math.max(4, Math.ceil((bottom - top) / (bottom > 0.66 ? 1e-2 : 5e-4)));
    const h = (bottom - top) / pieces;
    for (let j = 0; j < pieces; j++) {
      const z = top + j * h;
      sum += (net(z) + 4 * net(z + h / 2) + net(z + h)) * (h / 6);
    }
  }
  return sum;
}

describe('hilltop()', () => {
  test('energy is the integral of the force from the diver, and the force that of the ledger, over 200 chance moments', () => {
    for (const [rig, at] of chances(200, 51)) {
      const net = netAt(rig, at, at.lungM3);
      const { depthsM, forcesN, energyJ } = hilltop(rig, at, at.lungM3, -0.6, rig.bottomM, 9);
      let workDoneJ = -workJ(rig, net, -0.6, at.depthM);
      depthsM.forEach((depthM, i) => {
        workDoneJ += workJ(rig, net, i === 0 ? -0.6 : depthsM[i - 1]!, depthM);
        expect(Math.abs(forcesN[i]! - net(depthM))).toBeLessThan(1e-9);
        expect(Math.abs(energyJ[i]! - workDoneJ)).toBeLessThan(1e-3);
      });
    }
  });

  test('free of corners the closed form and Simpson’s rule agree to 1e-8 J', () => {
    const rig = deep(weighed(EXAMPLE, 4), 60);
    const at = neutralAt(rig, 10);
    const net = netAt(rig, at, 3.2e-3);
    const { depthsM, energyJ } = hilltop(rig, at, 3.2e-3, 3, 55, 14);
    depthsM.forEach((depthM, i) => expect(Math.abs(energyJ[i]! - workJ(rig, net, 10, depthM))).toBeLessThan(1e-8));
    expect(energyJ[0]).toBeLessThan(-50);
  });

  test('in a mixing zone and where softer foam has a hyperbola of its own too', () => {
    const setup = layered(6, 8, 30);
    for (const softness of [1, 0.6, 0]) {
      const rig = weighed({ ...setup, suit: { ...setup.suit, softness } as typeof setup.suit }, 3);
      const at = neutralAt(rig, 9);
      const net = netAt(rig, at, 3.2e-3);
      const { depthsM, forcesN, energyJ } = hilltop(rig, at, 3.2e-3, 7.5, 12.5, 11);
      depthsM.forEach((depthM, i) => {
        expect(Math.abs(forcesN[i]! - net(depthM))).toBeLessThan(1e-9);
        expect(Math.abs(energyJ[i]! - workJ(rig, net, 9, depthM))).toBeLessThan(1e-8);
      });
    }
  });

  test('the energy is 0 at the diver and greatest at the unstable neutral depth', () => {
    const rig = deep(weighed(EXAMPLE, 6), 40);
    const neutral = neutralAt(rig, 12);
    const at = { ...neutral, depthM: 14 };
    const { depthsM, energyJ, topM } = hilltop(rig, at, 3.2e-3, 2, 26, 2401);
    expect(Math.abs(topM! - 12)).toBeLessThan(1e-6);
    const top = energyJ.indexOf(Math.max(...energyJ));
    expect(Math.abs(depthsM[top]! - 12)).toBeLessThan(1e-9);
    expect(energyJ[depthsM.findIndex((depthM) => Math.abs(depthM - 14) < 1e-9)]).toBeCloseTo(0, 9);
    expect(energyJ[top]).toBeGreaterThan(0.1);
    // Downhill both ways from the top.
    energyJ.slice(1).forEach((j, i) => expect(j > energyJ[i]!).toBe(i < top));
  });

  test('a hollow between hills where denser water lies below: the least energy about it is at the stable neutral depth', () => {
    const rig = weighed(layered(2), 0, { depthM: 10, reserveBar: 120 });
    const at = instantOf(rig, { depthM: 10, cylinderBar: 120 });
    const { depthsM, energyJ } = hilltop(rig, at, 3.2e-3, 9, 11, 201);
    expect(depthsM[energyJ.indexOf(Math.min(...energyJ))]).toBeCloseTo(10, 9);
  });

  test('the flat is where the net force is less than 0.1 kgf about the unstable neutral depth nearest to the diver', () => {
    let flats = 0;
    for (const [rig, at] of chances(200, 53)) {
      const lungM3 = rig.lungs.open ? 3.2e-3 : 0;
      const { flatM, topM } = hilltop(rig, at, lungM3, 0, 40, 2);
      const tops = neutralDepths(rig, at, lungM3).filter(({ stable }) => !stable);
      const away = ({ depthM }: { readonly depthM: number }) => Math.abs(depthM - at.depthM);
      expect(topM).toBe(tops.sort((a, b) => away(a) - away(b))[0]?.depthM ?? null);
      if (topM === null) {
        expect(flatM).toBeNull();
        continue;
      }
      const net = netAt(rig, at, lungM3);
      const [from, to] = flatM!;
      expect(from).toBeLessThanOrEqual(topM);
      expect(to).toBeGreaterThanOrEqual(topM);
      for (let i = 1; i < 50; i++) expect(Math.abs(net(from + ((to - from) * i) / 50))).toBeLessThan(0.980665 + 1e-6);
      for (const [end, outward] of [
        [from, -1e-6],
        [to, 1e-6],
      ] as const)
        if (end !== -0.6 && end !== rig.bottomM) expect(Math.abs(net(end + outward))).toBeGreaterThan(0.980665 - 1e-9);
      flats++;
    }
    expect(flats).toBeGreaterThan(80);
  });

  test('more surplus lead makes the flat narrower', () => {
    const widths = [0, 2, 4, 8].map((surplusKg) => {
      const rig = deep(weighed(EXAMPLE, surplusKg), 60);
      const [from, to] = hilltop(rig, neutralAt(rig, 10), 3.2e-3, 0, 40).flatM!;
      return to - from;
    });
    widths.slice(1).forEach((width, i) => expect(width).toBeLessThan(widths[i]! - 0.01));
  });

  test('high out of the water the force is the weight, and the energy falls by it', () => {
    const rig = weighed(EXAMPLE);
    const at = instantOf(rig, { depthM: 0 });
    const facing = direction(0);
    const { forcesN, energyJ } = hilltop(rig, { ...at, pitchSin: facing.sin }, at.lungM3, -0.6, -0.5, 2);
    expect(forcesN[0]).toBe(forcesN[1]);
    expect(forcesN[0]).toBeLessThan(-900);
    expect(energyJ[1]! - energyJ[0]!).toBeCloseTo(forcesN[0]! * 0.1, 9);
  });

  test('has 81 equally spaced depths unless said, both ends included', () => {
    const rig = weighed(EXAMPLE, 2);
    const at = neutralAt(rig, 10);
    const { depthsM, forcesN, energyJ } = hilltop(rig, at, 3.2e-3, 3, 27);
    expect([depthsM.length, forcesN.length, energyJ.length]).toEqual([81, 81, 81]);
    expect([depthsM[0], depthsM[40], depthsM[80]]).toEqual([3, 15, 27]);
    expect(hilltop(rig, at, 3.2e-3, 20, 30, 2).depthsM).toEqual([20, 30]);
  });

  test('throws on a stretch without length, a half point and lungs that cannot be', () => {
    const rig = weighed(EXAMPLE);
    const at = instantOf(rig, { depthM: 10 });
    expect(() => hilltop(rig, at, 3e-3, 10, 10)).toThrow(RangeError);
    expect(() => hilltop(rig, at, 3e-3, 0, Infinity)).toThrow(RangeError);
    expect(() => hilltop(rig, at, 3e-3, 0, 10, 2.5)).toThrow(RangeError);
    expect(() => hilltop(rig, at, 3e-3, 0, 10, 1)).toThrow(RangeError);
    expect(() => hilltop(rig, at, -1, 0, 10)).toThrow(RangeError);
  });
});
