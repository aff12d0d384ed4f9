import { describe, expect, test } from 'vitest';
import { instantOf, ledger, midBreathM3, netForceN, type Rig } from '../../src/diver/index.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';

const TWO_PIECE = changed(EXAMPLE, { suit: { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as never });

/** A root of the net force between two depths or volumes, by halving; the force falls from `low` to `high`. */
function root(low: number, high: number, net: (x: number) => number): number {
  const rising = net(high) > net(low);
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i++) {
    const middle = (a + b) / 2;
    if (net(middle) > 0 === rising) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

/** The jacket volume that is neutral at a depth at mid-breath with 120 bar, m³. */
function neutralJacketM3(rig: Rig, depthM: number): number {
  return root(0, 18e-3, (jacketM3) => netForceN(rig, instantOf(rig, { depthM, jacketM3, cylinderBar: 120 })));
}

/** The moment that is neutral at a depth; its gas then stays what it is. */
const neutralAt = (rig: Rig, depthM: number) =>
  instantOf(rig, { depthM, jacketM3: neutralJacketM3(rig, depthM), cylinderBar: 120 });

/** Seconds in which a small offset grows by e: √((m + m_a)/k), k by numeric derivative of the net force. */
function eFoldingS(rig: Rig, depthM: number): number {
  const at = neutralAt(rig, depthM);
  const net = (offM: number) => netForceN(rig, { ...at, depthM: depthM + offM });
  const k = -(net(1e-3) - net(-1e-3)) / 2e-3;
  const massKg = ledger(rig, at).reduce((kg, part) => kg + part.massKg, 0);
  const displacedKg = massKg;
  return Math.sqrt((massKg + rig.addedMassLevel * displacedKg) / k);
}

/**
 * Depths between which lungs alone, 1.8 to 5.8 L, balance the diver who is neutral at 10 m at mid-breath.
 * The jacket keeps its gas, the cylinder stands at 120 bar throughout, the lungs hold gas of the depth.
 */
function breathReachM(rig: Rig): readonly [number, number] {
  const at = neutralAt(rig, 10);
  const balance = (lungM3: number) =>
    root(0.7, 120, (depthM) =>
      netForceN(rig, { ...instantOf(rig, { depthM, lungM3, cylinderBar: 120 }), jacketMol: at.jacketMol }),
    );
  expect(midBreathM3(rig)).toBeCloseTo(3.2e-3, 12);
  return [balance(1.8e-3), balance(5.8e-3)];
}

// Landmarks of the model's own page [derived]: ±0.1 s, ±0.1 m, printed whole metres ±0.5 m, ±0.05 L.
describe('landmarks at mid-breath, 120 bar, neutral with the jacket', () => {
  test.each([
    ['5 mm', EXAMPLE, 0, 8.8],
    ['5 mm, 8 kg too much', EXAMPLE, 8, 5.5],
    ['7 mm two-piece', TWO_PIECE, 0, 6.6],
    ['7 mm two-piece, 8 kg too much', TWO_PIECE, 8, 4.9],
  ])('an offset at 5 m in %s grows by e in the landmark’s seconds', (_, setup, surplusKg, seconds) => {
    expect(Math.abs(eFoldingS(weighed(setup, surplusKg), 5) - seconds)).toBeLessThan(0.1);
  });

  test.each([
    ['5 mm', EXAMPLE, 0, 4.8, 46, 0.5],
    ['5 mm, 8 kg too much', EXAMPLE, 8, 7.7, 16.1, 0.1],
    ['7 mm two-piece', TWO_PIECE, 0, 6.8, 20.7, 0.1],
    ['7 mm two-piece, 8 kg too much', TWO_PIECE, 8, 8.2, 14.3, 0.1],
  ])('breath around 10 m in %s reaches the landmark’s depths', (_, setup, surplusKg, from, to, tolerance) => {
    const [shallow, deep] = breathReachM(weighed(setup, surplusKg));
    expect(Math.abs(shallow - from)).toBeLessThan(0.1);
    expect(Math.abs(deep - to)).toBeLessThan(tolerance);
  });

  test.each([
    ['5 mm', 0, 1.8],
    ['5 mm, 8 kg too much', 8, 8.9],
  ])('the jacket at 10 m in %s holds the landmark’s litres', (_, surplusKg, litres) => {
    expect(Math.abs(neutralJacketM3(weighed(EXAMPLE, surplusKg), 10) * 1e3 - litres)).toBeLessThan(0.05);
  });
});
