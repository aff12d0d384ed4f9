import { describe, expect, test } from 'vitest';
import { instantOf, ledger, netForceN, netOf, rigOf } from '../../src/diver/index.ts';
import { EXAMPLE, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';

const GRAVITY = 9.80665;

describe('force ledger', () => {
  test('ledger() lists the parts in their fixed order', () => {
    const rig = rigOf(
      setupOf(`
suit: { kind: drysuit }
cylinders: [{}, {}]
lead: [{ massKg: 2 }, { massKg: 1, place: ankle }]
other: [{ name: torch, massKg: 1, volumeL: 0.5 }]`),
    );
    const parts = ledger(rig, instantOf(rig, { depthM: 0.1 })).map(({ part }) => part);
    const order =
      'tissue gut lungs suit suit-gas jacket jacket-gas cylinder-1 cylinder-2 torch lead-1 lead-2 above-water';
    expect(parts).toEqual(order.split(' '));
  });

  test('ledger() gives every part that displaces and weighs a force >= 0, and the volume above water a negative one', () => {
    const rig = withLeadKg(EXAMPLE, 4);
    for (const part of ledger(rig, instantOf(rig, { depthM: 0.1 }))) {
      expect(part.weightN).toBe(part.massKg * GRAVITY);
      if (part.part === 'above-water') expect(part.buoyancyN).toBeLessThan(0);
      else expect(Math.min(part.buoyancyN, part.weightN)).toBeGreaterThanOrEqual(0);
    }
  });

  test('a part of the density of water pulls nothing', () => {
    const rho = rigOf(EXAMPLE).column.segments[0]!.densityKgPerM3;
    const litres = 7;
    const gear = { name: 'bag of water', massKg: litres * 1e-3 * rho, volumeL: litres, headwardM: 0, backwardM: 0 };
    const plain = withLeadKg(EXAMPLE, 4);
    const more = withLeadKg({ ...EXAMPLE, other: [...EXAMPLE.other, gear] }, 4);
    const net = (rig: typeof plain) => netForceN(rig, instantOf(rig, { depthM: 9 }));
    expect(Math.abs(net(more) - net(plain))).toBeLessThan(1e-9);
  });

  test('a released piece of lead is gone from ledger and net force alike', () => {
    const rig = withLeadKg(EXAMPLE, 4);
    const at = instantOf(rig, { depthM: 12 });
    const gone = { ...at, releasedMask: 1 };
    expect(ledger(rig, gone).map(({ part }) => part)).not.toContain('lead-1');
    const lead = ledger(rig, at).find(({ part }) => part === 'lead-1')!;
    expect(netForceN(rig, gone) - netForceN(rig, at)).toBeCloseTo(lead.weightN - lead.buoyancyN, 9);
    expect(netOf(ledger(rig, gone))).toBeCloseTo(netForceN(rig, gone), 9);
  });

  test('breathing moves nothing on a closed loop: any share of it in the lungs is the same net force', () => {
    const rig = rigOf(setupOf('\napparatus: loop'));
    const net = (lungM3: number) => netForceN(rig, instantOf(rig, { depthM: 10, lungM3 }));
    expect(net(1.5e-3)).toBe(net(6e-3));
  });
});

describe('what a litre and a kilogram are worth', () => {
  // physics notes §6 and the model's landmarks [derived].
  test('one litre of breath is 1.026 kgf in sea water', () => {
    const rig = rigOf(EXAMPLE);
    const net = (lungM3: number) => netForceN(rig, { ...instantOf(rig, { depthM: 10, lungM3: 3e-3 }), lungM3 });
    expect((net(4e-3) - net(3e-3)) / GRAVITY).toBeCloseTo(1.026, 3);
  });

  test('each surplus kilogram of lead wants 0.89 L in the jacket', () => {
    const rig = weighed(EXAMPLE, 1);
    const at = instantOf(rig, { depthM: 5, cylinderBar: 50 });
    const litresN = netForceN(rig, { ...at, jacketMol: instantOf(rig, { depthM: 5, jacketM3: 1e-3 }).jacketMol });
    const perLitreN = litresN - netForceN(rig, at);
    expect(-netForceN(rig, at) / perLitreN).toBeCloseTo(0.89, 2);
  });

  test('a 12 L cylinder loses 2.10 kg from 200 to 50 bar', () => {
    const rig = rigOf(EXAMPLE);
    const net = (cylinderBar: number) => netForceN(rig, instantOf(rig, { depthM: 5, cylinderBar }));
    expect(Math.abs((net(50) - net(200)) / GRAVITY - 2.1)).toBeLessThan(0.01);
  });
});
