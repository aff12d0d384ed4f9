import { describe, expect, test } from 'vitest';
import {
  FLAG,
  REAR_BELOW_SIN,
  SHOULDER_ABOVE_SIN,
  advance,
  restingControls,
  startState,
  supplyPa,
  totalMol,
  ventFor,
  type Controls,
  type DiveEvent,
  type Start,
} from '../../src/dive/index.ts';
import { jacketM3, ledger, netOf, rigOf, suitGasM3, type Rig } from '../../src/diver/index.ts';
import { vesselPressurePa } from '../../src/gas/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { EXAMPLE, changed, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';

const RIG = weighed(EXAMPLE, 4);
const DRY = withLeadKg(setupOf('\nsuit: { kind: drysuit }'), 8);
const STILL: Controls = { ...restingControls(320), breath: 1 };

/** Before and after a time of one press, locked in an attitude. */
function during(rig: Rig, start: Start, press: Partial<Controls>, ticks: number) {
  const state = startState(rig, start);
  const before = { ...state, cylinderMol: [...state.cylinderMol] };
  const events: DiveEvent[] = [];
  advance(rig, state, { ...STILL, ...press }, ticks, events, true);
  return { before, after: state, events };
}

describe('power inflator', () => {
  /** Litres at the depth that two seconds bring, held in place by taking the rate of the first tick. */
  const litresPerS = (depthM: number) => {
    const { before, after } = during(RIG, { depthM, lungM3: 3.2e-3 }, { jacketAdd: 1 }, 1);
    const p = pressurePa(RIG.column, depthM);
    return (jacketM3(RIG, after.jacketMol, p) - jacketM3(RIG, before.jacketMol, p)) * 1e3 * 120;
  };

  test('fills 2.5 L/s at the surface', () => {
    expect(litresPerS(0.7)).toBeCloseTo(
      (2.5 * 101325 * (9.5e5 + pressurePa(RIG.column, 0.7))) / (9.5e5 + 101325) / pressurePa(RIG.column, 0.7),
      3,
    );
  });

  test('is choked: at 30 m the volume rate is 0.32 of that at the surface', () => {
    // (9.5 + p)/(9.5 + 1.013)·(1.013/p), p = 4.03 bar [derived]
    expect(litresPerS(30) / 2.5).toBeCloseTo(0.32, 2);
  });

  test('is dead when the cylinder cannot feed it, and says so', () => {
    const { before, after, events } = during(RIG, { depthM: 20, cylinderBar: 2.9 }, { jacketAdd: 1 }, 60);
    expect(after.jacketMol).toBe(before.jacketMol);
    expect(after.flags & FLAG.inflatorDead).not.toBe(0);
    expect(events.map(({ kind }) => kind)).toContain('inflator-dead');
  });
});

describe('jacket vents', () => {
  const left = (pitchDeg: number, jacketVent: number) => {
    const { before, after } = during(
      RIG,
      { depthM: 10, jacketM3: 8e-3, pitchDeg, lungM3: 3.2e-3 },
      { jacketVent, pitchDeg },
      60,
    );
    return before.jacketMol - after.jacketMol;
  };

  test('the rear vent passes nothing head-up, the shoulder vent nothing head-down', () => {
    expect(left(90, 2)).toBe(0);
    expect(left(-90, 1)).toBe(0);
  });

  test('the shoulder vent works head-up, the rear vent level and head-down', () => {
    for (const [pitchDeg, vent] of [
      [90, 1],
      [0, 2],
      [-90, 2],
    ] as const)
      expect(left(pitchDeg, vent)).toBeGreaterThan(0);
  });

  test('the shoulder vent stops working where the body is flatter than its limit, the rear vent where it is steeper', () => {
    const degrees = (sine: number) => (Math.asin(sine) * 180) / Math.PI;
    for (const [limit, vent] of [
      [SHOULDER_ABOVE_SIN, 1],
      [REAR_BELOW_SIN, 2],
    ] as const) {
      const inside = vent === 1 ? Math.ceil(degrees(limit)) : Math.floor(degrees(limit) - 1e-9);
      const outside = vent === 1 ? inside - 1 : inside + 2;
      expect(left(inside, vent)).toBeGreaterThan(0);
      expect(left(outside, vent)).toBe(0);
    }
  });

  test('ventFor() names a vent that works in every attitude', () => {
    for (let pitchDeg = -180; pitchDeg <= 180; pitchDeg += 5)
      expect(left(pitchDeg, ventFor(Math.sin((pitchDeg * Math.PI) / 180))), `${pitchDeg}°`).toBeGreaterThan(0);
  });

  test('with 10 L and more under it a vent passes its rated flow, thinned by √(p₀/p)', () => {
    const { before, after } = during(RIG, { depthM: 10, jacketM3: 14e-3, lungM3: 3.2e-3 }, { jacketVent: 2 }, 1);
    const p = pressurePa(RIG.column, 10);
    const litres = ((before.jacketMol - after.jacketMol) * RIG.gasJPerMol * 1e3 * 120) / p;
    expect(litres).toBeCloseTo(3 * Math.sqrt(101325 / p), 3);
  });

  test('venting never goes below the residual volume', () => {
    const rig = withLeadKg(changed(EXAMPLE, { jacket: { residualL: 0.5 } }), 2);
    const { after } = during(rig, { depthM: 10, jacketM3: 2e-3 }, { jacketVent: 2 }, 240);
    expect(jacketM3(rig, after.jacketMol, pressurePa(rig.column, after.depthM)) * 1e3).toBeGreaterThan(0.499);
  });

  test('a full jacket rising passes its relief valve at 14 kPa over ambient', () => {
    const events: DiveEvent[] = [];
    const state = startState(RIG, { depthM: 20, jacketM3: 18e-3 });
    advance(RIG, state, STILL, 120 * 8, events, true);
    expect(events.map(({ kind }) => kind)).toContain('relief-open');
    const over = (state.jacketMol * RIG.gasJPerMol) / 18e-3 - pressurePa(RIG.column, Math.max(0, state.depthM));
    expect(over).toBeLessThanOrEqual(14e3 + 1e-6);
    expect(state.bubbleMol).toBeGreaterThan(0);
  });
});

describe('drysuit', () => {
  test('head-down nothing vents, pressed or not', () => {
    for (const press of [{}, { suitVent: 1 }, { suitValveHPa: 0 }]) {
      const { before, after } = during(
        DRY,
        { depthM: 12, suitGasM3: 20e-3, pitchDeg: -90 },
        { ...press, pitchDeg: -90 },
        120,
      );
      expect(after.suitMol).toBe(before.suitMol);
    }
  });

  test('head-up a full suit vents by itself, and stops at what its crack pressure holds', () => {
    const { before, after } = during(DRY, { depthM: 12, suitGasM3: 20e-3, pitchDeg: 90 }, { pitchDeg: 90 }, 120 * 5);
    expect(after.suitMol).toBeLessThan(before.suitMol);
    expect(suitGasM3(DRY, after.suitMol, pressurePa(DRY.column, after.depthM))).toBeGreaterThan(DRY.drysuit!.minimumM3);
  });

  test('sinking without adding gas squeezes it, and the squeeze is said once', () => {
    const { events, after } = during(DRY, { depthM: 5, suitGasM3: 4e-3 }, {}, 120 * 20);
    expect(events.filter(({ kind }) => kind === 'suit-squeeze')).toHaveLength(1);
    expect(after.depthM).toBeGreaterThan(8);
  });
});

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
