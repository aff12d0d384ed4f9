import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { replay } from '../../src/dive/index.ts';
import { NEW_CLOCK, passTime } from '../../src/app/clock.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
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
