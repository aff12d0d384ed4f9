import { describe, expect, test } from 'vitest';
import {
  AIR_M,
  Bench,
  PUTTY_BALL,
  PUTTY_TRAY,
  STEPS_PER_S,
  floatingAt,
  type Tank,
  type ThingSpec,
} from '../../src/bench/index.ts';
import { chanceOf } from '../../src/pilot/index.ts';

const TANK: Tank = { widthM: 1.2, heightM: 0.5, spoutYM: null, waterM2: 1.2 * 0.4, glassM2: 0 };
const FRESH = { densityKgPerM3: 998, gravityMps2: 9.80665 };
const THINGS: readonly ThingSpec[] = [
  { kind: 'putty', massKg: 0.35, shape: PUTTY_BALL },
  { kind: 'putty', massKg: 0.35, shape: PUTTY_TRAY },
  { kind: 'stone', massKg: 0.3, volumeM3: 5e-4 },
  { kind: 'stone', massKg: 0.52, volumeM3: 5e-4 },
  { kind: 'stone', massKg: 1.3, volumeM3: 5e-4 },
  { kind: 'odd-stone', material: 'granite', massKg: 0.8 },
  { kind: 'block', material: 'pine', widthM: 0.16, heightM: 0.05 },
  { kind: 'block', material: 'ice', widthM: 0.08, heightM: 0.08 },
  { kind: 'can', widthM: 0.08, heightM: 0.12, wallM: 0.001 },
  { kind: 'can', widthM: 0.08, heightM: 0.12, wallM: 0.006 },
];

function afterS(bench: Bench, seconds: number) {
  bench.step(seconds * STEPS_PER_S);
  return bench.view();
}

describe('Bench: one thing let go', () => {
  test.each(THINGS.map((spec, i) => [i, spec] as const))(
    '%i %o comes to rest as closed forms say, without jitter',
    (_, spec) => {
      const bench = new Bench(TANK, FRESH);
      bench.add(spec, { xM: 0.6, yM: 0.1 });
      afterS(bench, 20);
      for (let i = 0; i < 120; i++) {
        bench.step(2);
        expect(bench.view()[0]!.speedMps).toBeLessThan(1e-3);
      }
      const [one] = bench.view();
      const { thing, weightN, buoyantN, angleRad } = one!;
      const floating = floatingAt({ hull: thing.hull, lengthM: 0.1, massKg: thing.massKg }, angleRad, 998);
      if (floating) {
        expect(buoyantN / weightN).toBeCloseTo(1, 3);
        expect(one!.draughtM).toBeCloseTo(floating.draughtM, 4);
      } else {
        expect(buoyantN).toBeLessThan(weightN);
        expect(Math.max(...one!.solid.map(({ yM }) => yM))).toBeCloseTo(0.5, 2);
      }
    },
  );

  test('free fall in air: g within the two centimetres a second that the engine is off', () => {
    const bench = new Bench({ ...TANK, waterM2: 0 }, FRESH);
    bench.add({ kind: 'stone', massKg: 2, volumeM3: 2e-4 }, { xM: 0.6, yM: -0.3 });
    const from = bench.view()[0]!.at;
    const to = afterS(bench, 0.25)[0]!.at;
    const fallenM = to.yM - from.yM;
    expect(Math.abs(fallenM - (9.80665 * 0.25 ** 2) / 2)).toBeLessThan(0.25 * 0.02 + 0.003);
  });

  test('a tray held under by hand swamps and stays down; let go above, it floats', () => {
    const bench = new Bench(TANK, FRESH);
    const tray = bench.add({ kind: 'putty', massKg: 0.35, shape: PUTTY_TRAY }, { xM: 0.6, yM: 0.05 });
    expect(afterS(bench, 8)[0]!.freeboardM).toBeGreaterThan(0.003);
    bench.pull(tray, { xM: 0.6, yM: 0.3 });
    afterS(bench, 4);
    bench.pull(tray, null);
    const [sunk] = afterS(bench, 8);
    expect(sunk!.soaked.length).toBeGreaterThan(0);
    expect(sunk!.at.yM).toBeGreaterThan(0.4);
    bench.place(tray, { xM: 0.6, yM: 0.05 });
    expect(afterS(bench, 8)[0]!.freeboardM).toBeGreaterThan(0.003);
  });

  test('on the balance: the reading is (m − ρV)g in air, half in and wholly in', () => {
    const bench = new Bench(TANK, FRESH);
    const stone = bench.add({ kind: 'odd-stone', material: 'granite', massKg: 0.8 }, { xM: 0.6, yM: -0.2 });
    for (const hookYM of [-0.25, 0.06, 0.2]) {
      bench.hang(stone, hookYM);
      const [one] = afterS(bench, 25);
      expect(one!.balanceN / (one!.weightN - one!.buoyantN)).toBeCloseTo(1, 3);
    }
    const [under] = bench.view();
    expect(under!.balanceN / ((0.8 - 998 * (0.8 / 2650)) * 9.80665)).toBeCloseTo(1, 3);
  });

  test('the spout fills the glass with just what floats in weight', () => {
    const bench = new Bench(TANK, FRESH);
    bench.spout(0.1);
    bench.add({ kind: 'block', material: 'pine', widthM: 0.16, heightM: 0.05 }, { xM: 0.6, yM: 0.08 });
    const [block] = afterS(bench, 40);
    // A block that bobs spills a little more than it needs in the end: never less.
    const spiltKg = bench.tank.glassM2 * 0.1 * 998;
    expect(spiltKg).toBeGreaterThan(block!.thing.massKg * 0.999);
    expect(spiltKg).toBeLessThan(block!.thing.massKg * 1.1);
  });
});

describe('Bench: ten things', () => {
  const full = () => {
    const bench = new Bench(TANK, FRESH);
    const ids = THINGS.map((spec, i) => bench.add(spec, { xM: 0.08 + i * 0.115, yM: i % 2 === 0 ? 0 : 0.25 }));
    return { bench, ids };
  };

  test('energy never grows while no hand is in', () => {
    const { bench } = full();
    // Things that begin in each other are pushed apart first.
    bench.step(60);
    const first = bench.energyJ();
    let before = first;
    for (let i = 0; i < 1200; i++) {
      bench.step(4);
      const now = bench.energyJ();
      // Of the seven joules that go a quarter of a thousandth comes back for a moment.
      expect(now - before).toBeLessThan(1e-3);
      before = Math.min(before, now);
    }
    expect(first - before).toBeGreaterThan(5);
  });

  test('a thousand throws and pulls: nothing gets out, nothing bursts, no number is lost', () => {
    const { bench, ids } = full();
    const chance = chanceOf(7);
    for (let i = 0; i < 1000; i++) {
      const id = ids[Math.floor(chance.uniform() * ids.length)]!;
      bench.pull(id, { xM: -1 + 3.2 * chance.uniform(), yM: -1.5 + 3 * chance.uniform() });
      bench.step(8);
      if (chance.uniform() < 0.7) bench.pull(id, null);
      const things = bench.view();
      expect(things.map((one) => one.id)).toEqual(ids);
      // Nothing ran over, and no spout is open: the water is what it was.
      expect(bench.tank.waterM2).toBe(TANK.waterM2);
      for (const { at, solid, speedMps } of things) {
        // No corner is further in a wall than the engine lets bodies overlap in a hard knock: nothing is on its way through.
        const farM = Math.max(...solid.map(({ xM, yM }) => Math.max(-xM, xM - 1.2, yM - 0.5, -AIR_M - yM)));
        expect(farM).toBeLessThan(0.01);
        expect(at.xM).toBeGreaterThan(0);
        expect(at.xM).toBeLessThan(1.2);
        expect(at.yM).toBeGreaterThan(-AIR_M);
        expect(at.yM).toBeLessThan(0.5);
        expect(speedMps).toBeLessThan(6);
      }
    }
    for (const id of ids) bench.pull(id, null);
    for (const { speedMps } of afterS(bench, 20)) expect(speedMps).toBeLessThan(5e-3);
  });
});
