import { describe, expect, test } from 'vitest';
import {
  FLAG,
  REAR_BELOW_SIN,
  SHOULDER_ABOVE_SIN,
  advance,
  startState,
  ventFor,
  type DiveEvent,
} from '../../src/dive/index.ts';
import { jacketM3, suitGasM3 } from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { during, STILL } from './press.ts';
import { EXAMPLE, changed, setupOf, weighed, withLeadKg } from '../reference/rigs.ts';

const RIG = weighed(EXAMPLE, 4);
const DRY = withLeadKg(setupOf('\nsuit: { kind: drysuit }'), 8);

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

  test('level nothing passes by itself; a pressed valve, lifted to the highest gas, lets it out', () => {
    const from = { depthM: 12, suitGasM3: 10e-3 };
    const { before, after } = during(DRY, from, {}, 120);
    expect(after.suitMol).toBe(before.suitMol);
    const pressed = during(DRY, from, { suitVent: 1 }, 120);
    expect(pressed.after.suitMol).toBeLessThan(pressed.before.suitMol);
    expect(pressed.after.bubbleMol).toBeGreaterThan(pressed.before.bubbleMol);
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
