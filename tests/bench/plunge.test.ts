import { describe, expect, test } from 'vitest';
import { ballDragM2, gasNeutralAtJ, hillJ, netAtN, plunge, type GasBody, type Shaft } from '../../src/bench/index.ts';

const SEA = { densityKgPerM3: 1026, gravityMps2: 9.80665, surfacePa: 101_325 };
const made = { massKg: 1, firmM3: 1e-4, mostM3: 4e-3 };
const bag: GasBody = { ...made, gasJ: gasNeutralAtJ(made, SEA, 5) };
const ball: GasBody = { massKg: 1, firmM3: 1 / 1026, gasJ: 0, mostM3: 0 };
const shaft: Shaft = { under: SEA, bottomM: 40, dragM2: ballDragM2(1 / 1026) };

describe('plunge()', () => {
  test('both neutral at 5 m: taken to 20 m and let go the bag sinks, the rigid ball stays', () => {
    expect(plunge(ball, shaft, { depthM: 20, speedMps: 0 }, 60).depthM).toBeCloseTo(20, 6);
    expect(plunge(bag, shaft, { depthM: 20, speedMps: 0 }, 60)).toEqual({ depthM: 40, speedMps: 0 });
    expect(plunge(bag, shaft, { depthM: 4.9, speedMps: 0 }, 60)).toEqual({ depthM: 0, speedMps: 0 });
  });

  test('close to the hilltop the offset grows as cosh(λt), λ² = k/(m + half of the displaced water)', () => {
    const k = -(netAtN(bag, SEA, 5.0005) - netAtN(bag, SEA, 4.9995)) / 1e-3;
    const growth = Math.sqrt(k / (1 + 0.5 * 1));
    const after = plunge(bag, { ...shaft, dragM2: 0 }, { depthM: 5.001, speedMps: 0 }, 3).depthM - 5;
    expect(after / (1e-3 * Math.cosh(growth * 3))).toBeCloseTo(1, 2);
  });

  test('without drag energy stays: ½(m + ½ρV)v² of a rigid ball a little heavy', () => {
    const heavy = { ...ball, massKg: 1.05 };
    const { depthM, speedMps } = plunge(heavy, { ...shaft, dragM2: 0 }, { depthM: 1, speedMps: 0 }, 5);
    const gained = -(hillJ(heavy, SEA, depthM) - hillJ(heavy, SEA, 1));
    expect(0.5 * (1.05 + 0.5) * speedMps ** 2).toBeCloseTo(gained, 6);
  });

  test('a heavy ball falls at √(2F/ρCdA) in the end', () => {
    const heavy = { ...ball, massKg: 1.2 };
    const { speedMps } = plunge(heavy, { ...shaft, bottomM: 400 }, { depthM: 1, speedMps: 0 }, 30);
    const force = -netAtN(heavy, SEA, 10);
    expect(speedMps).toBeCloseTo(Math.sqrt((2 * force) / (1026 * shaft.dragM2)), 6);
  });

  test('halving the seconds of a call changes nothing that can be seen', () => {
    let parts = { depthM: 7, speedMps: 0 };
    for (let i = 0; i < 40; i++) parts = plunge(bag, shaft, parts, 0.25);
    const whole = plunge(bag, shaft, { depthM: 7, speedMps: 0 }, 10);
    expect(parts.depthM).toBeCloseTo(whole.depthM, 6);
  });
});
