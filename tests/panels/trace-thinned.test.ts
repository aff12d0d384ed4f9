import { beforeAll, describe, expect, test } from 'vitest';
import { Dive, restingControls, startState } from '../../src/dive/index.ts';
import { TraceData } from '../../src/panels/trace-data.ts';
import { traceKinds } from '../../src/panels/trace-kinds.ts';
import { TraceThinned } from '../../src/panels/trace-thinned.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { flownView } from './flown-traces.ts';

const NAMES = ['depth', 'speed', 'tooFast', 'bandTop', 'momentForce'] as const;

let data: TraceData;

beforeAll(() => {
  data = new TraceData();
  data.follow(flownView('random', 3), 'metric');
});

/** A dive of ten minutes that is followed as it happens. */
function growing() {
  const dive = new Dive(rig, startState(rig, { depthM: 6 }), restingControls(320));
  const view = { ...flownView(), recording: dive.recording, events: dive.events, kinds: traceKinds(rig) };
  return { dive, view, data: new TraceData() };
}

describe('of()', () => {
  test('a window of less than fifty seconds has every row in it, and one on either side', () => {
    const { timeS, column } = new TraceThinned().of(data, [20, 60]);
    expect(timeS).toHaveLength(403);
    expect([timeS[0], timeS.at(-1)]).toEqual([19.9, 60.1]);
    for (const name of NAMES) expect(column(name)).toEqual(timeS.map((_, i) => data.at(name, 199 + i)));
  });

  test('a whole dive has few points in the order of time, and keeps the least and the greatest value of each line', () => {
    expect(data.rows).toBeGreaterThan(1100);
    const { timeS, column } = new TraceThinned().of(data, [0, data.secondsAt(data.rows - 1)]);
    expect(timeS.length).toBeLessThanOrEqual(1030);
    timeS.slice(1).forEach((s, i) => expect(s).toBeGreaterThanOrEqual(timeS[i]!));
    for (const name of NAMES) {
      const all = Array.from({ length: data.rows }, (_, row) => data.at(name, row)).filter((one) => one !== null);
      const drawn = column(name).filter((one) => one !== null);
      expect(column(name)).toHaveLength(timeS.length);
      expect([Math.min(...drawn), Math.max(...drawn)]).toEqual([Math.min(...all), Math.max(...all)]);
    }
  });

  test('each pair is of its own part: no value stands further from its moment than the part is long', () => {
    const { timeS, column } = new TraceThinned().of(data, [0, data.secondsAt(data.rows - 1)]);
    const depth = column('depth');
    const rowsInPart = Math.round((timeS[2]! - timeS[0]!) * 10);
    for (let i = 0; i < timeS.length; i += 7) {
      const near = Array.from({ length: 2 * rowsInPart + 1 }, (_, off) =>
        data.at('depth', Math.min(Math.max(0, data.rowAt(timeS[i]!) + off - rowsInPart), data.rows - 1)),
      );
      expect(near).toContain(depth[i]);
    }
  });

  test('a dive followed as it grows is drawn as one taken at once, also by a window that follows its end, and where it went back', () => {
    const { dive, view, data } = growing();
    const kept = new TraceThinned();
    const same = (edges: readonly [number, number]) => {
      const [one, other] = [kept.of(data, edges), new TraceThinned().of(data, edges)];
      expect(one.timeS).toEqual(other.timeS);
      for (const name of NAMES) expect(one.column(name), name).toEqual(other.column(name));
    };
    for (let i = 0; i < 60; i++) {
      dive.advance(1201);
      data.follow(view, 'metric');
      const endS = data.secondsAt(data.rows - 1);
      same(i % 3 === 0 ? [Math.max(0, endS - 150), endS] : [0, endS]);
    }
    dive.recording.cutAfter(120 * 400);
    data.follow(view, 'metric');
    same([0, 400]);
  });

  test('before anything was recorded there is nothing', () => {
    const { timeS, column } = new TraceThinned().of(new TraceData(), [0, 30]);
    expect([timeS, column('depth')]).toEqual([[], []]);
  });
});
