import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { replay, withMishaps } from '../../src/dive/index.ts';
import { NEW_CLOCK, passTime } from '../../src/app/clock.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import { pressed } from '../../src/app/hands.ts';
import type { Act } from '../../src/panels/index.ts';

const rig = rigOf(firstDive as Setup);
/** A dive whose presses are tied to its own time: vent and breathe out for six seconds, later two puffs. */
function acts(flight: Flight): Set<Act> {
  const s = flight.dive.tick / 120;
  if (s < 6) return new Set<Act>(['vent', 'out']);
  return s > 12 && s < 13 ? new Set<Act>(['add']) : new Set<Act>();
}

function flown(hertz: number, seconds: number): Flight {
  const flight = new Flight(rig, afloatStart(rig));
  let clock = NEW_CLOCK;
  for (let frame = 0; frame < hertz * seconds; frame++) {
    const passed = passTime(clock, 1 / hertz, 1);
    clock = passed.clock;
    flight.run(
      passed.ticks,
      () => acts(flight),
      () => true,
    );
  }
  return flight;
}

describe('Flight', () => {
  test('afloatStart() floats with the head clear for ten seconds if nothing is done', () => {
    const flight = new Flight(rig, afloatStart(rig));
    for (const depthM of flight.forecastM()) expect(depthM).toBeLessThan(0.55);
  });

  test('ends on the same bits at 30, 60 and 144 frames a second', () => {
    const [slow, usual, fast] = [30, 60, 144].map((hertz) => flown(hertz, 20));
    expect(usual!.dive.hash()).toBe(slow!.dive.hash());
    expect(fast!.dive.hash()).toBe(slow!.dive.hash());
    expect(slow!.dive.state.depthM).toBeGreaterThan(2);
  });

  test('a press and its end count from the next tick on, whichever that is, and nothing else changes between twentieths', () => {
    const still = () => new Flight(rig, { depthM: 8, jacketM3: 2e-3, pitchDeg: 0 });
    for (let from = 120; from < 132; from++)
      for (const lasts of [1, 2, 5, 6, 7, 40]) {
        const flight = still();
        const pressed = ({ tick } = flight.dive) => tick >= from && tick < from + lasts;
        flight.run(
          240,
          () => new Set<Act>(pressed() ? ['add'] : []),
          () => true,
        );
        const puffs = flight.dive.changes.slice(1).map(({ tick, controls }) => [tick, controls.jacketAdd]);
        expect(puffs).toEqual([
          [from, 1],
          [from + lasts, 0],
        ]);
      }
  });

  test('the breath is moved by 0.6 L a second of holding to a tick, whenever that begins', () => {
    for (let from = 120; from < 126; from++)
      for (const lasts of [1, 3, 6, 20, 77]) {
        const flight = new Flight(rig, { depthM: 8, jacketM3: 2e-3, pitchDeg: 0 });
        const { levelCl } = flight.hands;
        flight.run(
          360,
          () => new Set<Act>(flight.dive.tick >= from && flight.dive.tick < from + lasts ? ['in'] : []),
          () => true,
        );
        expect(flight.hands.levelCl - levelCl).toBeCloseTo((60 * lasts) / 120, 9);
        expect(flight.dive.changes[1]!.tick).toBe(from);
      }
  });

  test('what is done once counts from the next tick on', () => {
    const flight = new Flight(rig, { depthM: 8, jacketM3: 2e-3, pitchDeg: 0 });
    const on = (ticks: number) =>
      flight.run(
        ticks,
        () => new Set(),
        () => true,
      );
    on(21);
    flight.hands = pressed(flight.hands, 'head-up', rig);
    on(2);
    expect(flight.dive.changes.slice(1).map(({ tick, controls }) => [tick, controls.pitchDeg])).toEqual([[21, 45]]);
  });

  test('a bump is as hard whenever something is pressed meanwhile', () => {
    const flown = [null, 65, 70, 94, 95].map((pressTick) => {
      const flight = new Flight(rig, { depthM: 8, jacketM3: 2e-3, pitchDeg: 0 });
      flight.meddle = (wanted, state) => withMishaps(wanted, [{ kind: 'nudge', atS: 63 / 120, upNs: 20 }], state);
      flight.run(
        180,
        () => new Set<Act>(pressTick !== null && flight.dive.tick >= pressTick ? ['suit-vent', 'blow'] : []),
        () => true,
      );
      const { changes } = flight.dive;
      const pushed = changes.map(({ tick, controls }, i) => ((changes[i + 1]?.tick ?? 180) - tick) * controls.nudgeUpN);
      return pushed.reduce((sum, one) => sum + one, 0);
    });
    expect(new Set(flown)).toEqual(new Set([20 * 120]));
  });

  test('back() is the same dive ten seconds earlier, and can be flown on', () => {
    const flight = flown(60, 20);
    const before = replay(flight.dive.run(), 1200);
    flight.back(10);
    expect(flight.dive.hash()).toBe(before.hash());
    flight.run(
      120,
      () => new Set(),
      () => true,
    );
    expect(flight.dive.tick).toBe(1320);
  });

  test('run() stops where it is told to', () => {
    const flight = new Flight(rig, afloatStart(rig));
    const ran = flight.run(
      60,
      () => new Set(),
      () => flight.dive.tick < 12,
    );
    expect(ran).toBe(12);
  });

  test('between() lies between the last two ticks', () => {
    const flight = flown(60, 10);
    const old = flight.between(0);
    const now = flight.between(1);
    expect(now.depthM).toBe(flight.dive.state.depthM);
    expect(now.nowS - old.nowS).toBeCloseTo(1 / 120, 12);
    expect(flight.between(0.5).depthM).toBeCloseTo((old.depthM + now.depthM) / 2, 12);
  });
});
