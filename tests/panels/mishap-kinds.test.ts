import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { MISHAP_RANGES, quantised, replay, withMishaps, type Mishap } from '../../src/dive/index.ts';
import { MISHAPS, offered, said } from '../../src/panels/mishap-kinds.ts';

const rig = rigOf(firstDive as Setup);
const ASKED = MISHAPS.map(([asked]) => asked);
const ranges: Readonly<Record<string, readonly [number, number]>> = MISHAP_RANGES;

describe('what can go wrong', () => {
  test.each(ASKED)('%o lies within what a mishap may be, and has a name of its own', (asked) => {
    for (const [key, value] of Object.entries(asked)) {
      if (key === 'kind') continue;
      expect(value).toBeGreaterThanOrEqual(ranges[key]![0]);
      expect(value).toBeLessThanOrEqual(ranges[key]![1]);
    }
    expect(ASKED.filter((other) => offered(other, 'metric') === offered(asked, 'metric'))).toHaveLength(1);
    expect(ASKED.filter((other) => said(other, 'metric') === said(asked, 'metric'))).toHaveLength(1);
  });

  test('speeds and pressures are in the units that were chosen', () => {
    expect(offered({ kind: 'current', downMps: 0.2, forS: 10 }, 'metric')).toBe('a down-current of 12 m/min for 10 s');
    expect(said({ kind: 'current', downMps: -0.2, forS: 10 }, 'imperial')).toContain('rises at 39 ft/min');
    expect(offered({ kind: 'gas-low', leftBar: 40 }, 'metric')).toBe('gas runs low: 40 bar left');
    expect(said({ kind: 'gas-low', leftBar: 40 }, 'imperial')).toBe('Gas is low: 580 psi left.');
  });
});

describe('a dive that is flown while things go wrong', () => {
  const goWrong = (flight: Flight, ...mishaps: Mishap[]) =>
    (flight.meddle = (wanted, state) => withMishaps(wanted, mishaps, state));
  const fly = (flight: Flight, seconds: number, ...acts: ('vent' | 'out' | 'add')[]) =>
    flight.run(
      seconds * 120,
      () => new Set(acts),
      () => true,
    );

  test.each(ASKED.filter(({ kind }) => kind !== 'lead-lost'))(
    '%o: other than by the hands alone, in the run, over in its time, and repeated by a replay',
    (asked) => {
      const [wrong, right] = [1, 2].map(() => new Flight(rig, afloatStart(rig))) as [Flight, Flight];
      for (const flight of [wrong, right]) {
        fly(flight, 12, 'vent', 'out');
        fly(flight, 2, 'add');
      }
      goWrong(wrong, { ...asked, atS: 14 } as Mishap);
      const hands = asked.kind === 'vent-shut' ? (['vent'] as const) : [];
      for (const flight of [wrong, right]) fly(flight, 1, ...hands);
      const suited = asked.kind === 'suit-inflator-open';
      if (!suited) expect(wrong.dive.hash()).not.toBe(right.dive.hash());
      fly(wrong, 16);
      const { suitAdd, ...end } = wrong.dive.controls;
      expect(suitAdd).toBe(0);
      expect(quantised({ ...end, suitAdd })).toMatchObject({
        jacketAdd: 0,
        jacketVent: 0,
        nudgeUpN: 0,
        waterDownMmps: 0,
      });
      expect(replay(wrong.dive.run()).hash()).toBe(wrong.dive.hash());
    },
  );
});
