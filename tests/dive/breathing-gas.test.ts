import { describe, expect, test } from 'vitest';
import { advance, restingControls, startState, supplyPa, totalMol } from '../../src/dive/index.ts';
import { jacketM3, ledger, netOf, rigOf } from '../../src/diver/index.ts';
import { vesselPressurePa } from '../../src/gas/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { during, STILL } from './press.ts';
import { EXAMPLE, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';

const RIG = weighed(EXAMPLE, 4);

describe('cylinders', () => {
  const twin = withLeadKg(
    {
      ...EXAMPLE,
      cylinders: [
        { ...EXAMPLE.cylinders[0]!, fillBar: 200 },
        { ...EXAMPLE.cylinders[0]!, fillBar: 80 },
      ],
    },
    0,
  );
  const over = (mol: number, p: number) => vesselPressurePa(mol, 0.012, twin.waterTemperatureK) - p;

  test('several are drawn in proportion to their pressure over ambient', () => {
    const { before, after } = during(twin, { depthM: 10 }, { jacketAdd: 1 }, 1);
    const p = pressurePa(twin.column, after.depthM);
    const drawn = before.cylinderMol.map((mol, i) => mol - after.cylinderMol[i]!);
    expect(drawn[0]! / drawn[1]!).toBeCloseTo(over(before.cylinderMol[0]!, p) / over(before.cylinderMol[1]!, p), 5);
  });

  test('a regulator gives nothing at 1 bar over ambient or less, and gives at a little more', () => {
    const lungsAfter = (cylinderBar: number) => {
      // 10 m of this water are 1.006 bar: gauge 2.006 is 1 bar over ambient.
      const { after, before } = during(RIG, { depthM: 10, cylinderBar, lungM3: 2e-3 }, { lungCl: 400 }, 1);
      return after.lungMol - before.lungMol;
    };
    const oneOver = (pressurePa(RIG.column, 10) + 1e5 - 101325) / 1e5;
    expect(lungsAfter(oneOver - 0.001)).toBeLessThanOrEqual(0);
    expect(lungsAfter(oneOver + 0.01)).toBeGreaterThan(0);
  });

  test('an empty one stops the breath: the lungs do not fill, and it is said', () => {
    const { before, after, events } = during(RIG, { depthM: 10, cylinderBar: 1, lungM3: 2e-3 }, { lungCl: 500 }, 240);
    expect(after.cylinderMol).toEqual(before.cylinderMol);
    expect(after.lungM3).toBeLessThanOrEqual(before.lungM3 + 1e-12);
    expect(events.map(({ kind }) => kind)).toContain('regulator-empty');
  });

  test('there is no metabolism: a breath at one depth leaves what it took, and nothing goes missing', () => {
    const rig = rigOf({ ...EXAMPLE, lead: [] });
    const state = startState({ ...rig, bottomM: 10.25 }, { depthM: 10 });
    const pinned = { ...rig, bottomM: 10.25, lead: withLeadKg(EXAMPLE, 20).lead };
    const heavy = startState(pinned, { depthM: 10 });
    const total = totalMol(heavy);
    advance(pinned, heavy, restingControls(320), 720 * 10);
    const breathed = state.cylinderMol[0]! - heavy.cylinderMol[0]!;
    const perBreath = ((pressurePa(rig.column, 10) - 6270) * 1e-3) / (8.314462618 * 310.15);
    expect(breathed).toBeCloseTo(10 * perBreath, 6);
    expect(heavy.bubbleMol).toBeCloseTo(10 * perBreath, 6);
    expect(Math.abs(totalMol(heavy) / total - 1)).toBeLessThan(1e-14);
  });

  test('supplyPa() is the pressure of the fullest', () => {
    const { before } = during(twin, { depthM: 5 }, {}, 1);
    expect(supplyPa(twin, before.cylinderMol)).toBeCloseTo(200e5 + 101325, 0);
  });
});

describe('by mouth', () => {
  test('oral inflation leaves all moles where they can be counted and lifts nothing until the next breath', () => {
    const blow = during(RIG, { depthM: 8, lungM3: 5e-3 }, { oral: 1, lungCl: 500 }, 6);
    const { before, after } = blow;
    expect(after.jacketMol + after.lungMol).toBeCloseTo(before.jacketMol + before.lungMol, 12);
    expect(after.bubbleMol).toBe(0);
    expect(after.cylinderMol).toEqual(before.cylinderMol);
    const net = (depthM: number, at: typeof after) => {
      const p = pressurePa(RIG.column, depthM);
      const lungM3 = (at.lungMol * 8.314462618 * 310.15) / (p - 6270);
      return netOf(ledger(RIG, { ...at, depthM, lungM3 }));
    };
    // Judged at one depth: the volume that left warm and wet lungs is a tenth less in the jacket.
    const change = net(8, after) - net(8, before);
    expect(change).toBeLessThanOrEqual(0);
    const movedM3 = before.lungM3 - after.lungM3;
    const jacketGrewM3 = jacketM3(RIG, after.jacketMol, pressurePa(RIG.column, after.depthM));
    expect(movedM3).toBeGreaterThan(0.01e-3);
    expect(jacketGrewM3 / movedM3).toBeGreaterThan(0.88);
    expect(jacketGrewM3 / movedM3).toBeLessThan(0.91);
  });

  test('the breath after it lifts: lungs fill again from the cylinder', () => {
    const { after } = during(RIG, { depthM: 8, lungM3: 5e-3 }, { oral: 1, lungCl: 500 }, 120);
    const before = netOf(ledger(RIG, { ...after, depthM: 8 }));
    advance(RIG, after, { ...STILL, lungCl: 500 }, 60, undefined, true);
    expect(netOf(ledger(RIG, { ...after, depthM: 8 }))).toBeGreaterThan(before);
  });
});

describe('closed loop', () => {
  const loop = withLeadKg(setupOf('\napparatus: loop'), 6);

  test('breathing does not change buoyancy: any breath control gives the same bits', () => {
    const depths = [restingControls(320), restingControls(450), { ...STILL, lungCl: 600 }].map((controls) => {
      const state = startState(loop, { depthM: 8 });
      advance(loop, state, controls, 600, undefined, true);
      return state.depthM;
    });
    expect(new Set(depths).size).toBe(1);
  });

  test('below its least volume diluent flows by itself, and it is said when it is short', () => {
    const state = startState(loop, { depthM: 2 });
    const cylinder = state.cylinderMol[0]!;
    advance(loop, state, STILL, 120 * 40, [], true);
    expect(state.depthM).toBeGreaterThan(10);
    expect(state.cylinderMol[0]!).toBeLessThan(cylinder);
    expect((state.loopMol * loop.gasJPerMol) / pressurePa(loop.column, state.depthM)).toBeGreaterThan(
      0.99 * loop.loop!.minimumM3,
    );
  });

  test('the nose vent lets gas out and the over-pressure valve what exceeds capacity', () => {
    const { before, after } = during(loop, { depthM: 10 }, { noseVent: 1 }, 60);
    expect(after.loopMol).toBeLessThan(before.loopMol);
    const floats = withLeadKg(setupOf('\napparatus: loop'), 0);
    const rising = startState(floats, { depthM: 20, jacketM3: 12e-3 });
    advance(floats, rising, STILL, 120 * 15, [], true);
    expect(
      (rising.loopMol * floats.gasJPerMol) / pressurePa(floats.column, Math.max(0, rising.depthM)),
    ).toBeLessThanOrEqual(8e-3 * (1 + 1e-12));
    expect(rising.bubbleMol).toBeGreaterThan(0);
  });
});
