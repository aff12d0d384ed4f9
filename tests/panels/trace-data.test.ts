import { beforeAll, describe, expect, test } from 'vitest';
import { Dive, restingControls, startState } from '../../src/dive/index.ts';
import { TraceData } from '../../src/panels/trace-data.ts';
import { traceKinds } from '../../src/panels/trace-kinds.ts';
import type { TracesView } from '../../src/panels/trace-view.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';
import { flownView } from './flown-traces.ts';

/** A column of all rows. */
const columnOf = (from: TraceData, name: Parameters<TraceData['at']>[0]) =>
  Array.from({ length: from.rows }, (_, row) => from.at(name, row));

let view: TracesView;
let data: TraceData;

beforeAll(() => {
  view = flownView();
  data = new TraceData();
  data.follow(view, 'metric');
});

test('rows stand a tenth of a second apart, from the start to the end of the dive', () => {
  expect(data.rows).toBe(view.recording.rows);
  expect(data.rows).toBeGreaterThan(1000);
  for (let row = 0; row < data.rows; row++) expect(data.secondsAt(row)).toBeCloseTo(row / 10, 9);
});

test('speed is the slope of depth: metres a minute, downward positive', () => {
  const [depth, speed] = [columnOf(data, 'depth') as number[], columnOf(data, 'speed') as number[]];
  for (let row = 5; row < data.rows - 5; row++) {
    const slope = ((depth[row + 5]! - depth[row - 5]!) / 1) * 60;
    const mean = speed.slice(row - 5, row + 6).reduce((sum, one) => sum + one, 0) / 11;
    expect(Math.abs(slope - mean), `at ${row / 10} s`).toBeLessThan(1);
  }
});

test('the depth of a steady diver lies in the green band of the stop for most of it, and there is none between places', () => {
  const rows = columnOf(data, 'bandTop').flatMap((top, row) => (top === null ? [] : [row]));
  const inside = rows.filter((row) => {
    const depth = data.at('depth', row)!;
    return depth >= data.at('bandTop', row)! && depth <= data.at('bandBottom', row)!;
  });
  expect(inside.length / rows.length).toBeGreaterThan(0.5);
  expect(rows.length).toBeLessThan(data.rows);
});

test('the line of depth is doubled exactly where the speed is beyond the limits of 9 up and 18 m/min down', () => {
  const wild = flownView('random', 3);
  const other = new TraceData();
  other.follow(wild, 'metric');
  const doubled = columnOf(other, 'tooFast').filter((depth) => depth !== null).length;
  const beyond = (columnOf(other, 'speed') as number[]).filter((mpmin) => mpmin > 18 || mpmin < -9).length;
  expect(beyond).toBeGreaterThan(0);
  expect(doubled).toBe(beyond);
});

test('imperial: a foot is 0.3048 m, a pound 0.4536 kg, a bar 14.504 psi', () => {
  const feet = new TraceData();
  feet.follow(view, 'imperial');
  for (let row = 0; row < data.rows; row += 97) {
    expect(feet.at('depth', row)! * 0.3048).toBeCloseTo(data.at('depth', row)!, 9);
    expect(feet.at('speed', row)! * 0.3048).toBeCloseTo(data.at('speed', row)!, 9);
    expect(feet.at('force', row)! * 0.4536).toBeCloseTo(data.at('force', row)!, 2);
    expect(feet.at('cylinder', row)! / data.at('cylinder', row)!).toBeCloseTo(14.504, 2);
    expect(feet.at('jacket', row)!).toBe(data.at('jacket', row)!);
  }
});

test('a full cylinder reads what it was filled to, in bar above the surroundings', () => {
  expect(data.at('cylinder', 0)!).toBeCloseTo(200, 1);
});

test('followed step by step it holds the same as taken at once, and begins anew where the dive went back', () => {
  const dive = new Dive(rig, startState(rig, { depthM: 6 }), restingControls(320));
  const flown = { ...view, recording: dive.recording, events: dive.events, kinds: traceKinds(rig) };
  const bySteps = new TraceData();
  for (let i = 0; i < 40; i++) {
    dive.advance(31);
    bySteps.follow(flown, 'metric');
  }
  const atOnce = () => {
    const fresh = new TraceData();
    fresh.follow(flown, 'metric');
    return fresh;
  };
  expect(bySteps.rows).toBe(atOnce().rows);
  expect(columnOf(bySteps, 'depth')).toEqual(columnOf(atOnce(), 'depth'));
  expect(bySteps.extremes('speed')).toEqual(atOnce().extremes('speed'));
  dive.recording.cutAfter(480);
  expect(bySteps.follow(flown, 'metric')).toBe(true);
  expect(bySteps.rows).toBe(41);
  expect(bySteps.extremes('depth')).toEqual(atOnce().extremes('depth'));
  expect(bySteps.follow(flown, 'metric')).toBe(false);
});

test('rowAt() is the nearest row, and never none while there is one', () => {
  expect([-5, 0, 0.04, 0.06, 3.2, 1e9].map((s) => data.rowAt(s))).toEqual([0, 0, 0, 1, 32, data.rows - 1]);
  expect(new TraceData().rowAt(3)).toBe(-1);
});

test('traceKinds() leaves out what the kit does not have', () => {
  const ids = (kit: Parameters<typeof traceKinds>[0]) => traceKinds(kit).map(({ id }) => id);
  expect(ids(rig)).toEqual(['depth', 'speed', 'force', 'lungs', 'jacket', 'cylinder']);
  const dry = { ...rig, drysuit: {} as NonNullable<typeof rig.drysuit> };
  expect(ids(dry)).toContain('suit');
  const closed = { ...rig, loop: {} as NonNullable<typeof rig.loop>, vessels: [] };
  expect(ids(closed)).toEqual(['depth', 'speed', 'force', 'loop', 'jacket']);
});

describe('TraceData with a second diver', () => {
  test('has his depth and speed row by row, and scales that hold both', () => {
    const view = flownView('steady');
    const { recording: second } = flownView('random');
    expect(second.rows).not.toBe(view.recording.rows);
    const data = new TraceData();
    data.follow({ ...view, second }, 'metric');
    const rows = Math.min(view.recording.rows, second.rows);
    expect(data.secondRows).toBe(rows);
    expect(data.at('secondDepth', rows - 1)!).toBe(second.at(rows - 1, 'depthM'));
    expect(data.at('secondSpeed', 40)!).toBeCloseTo(second.at(40, 'speedMps') * 60, 12);
    const deepestM = Math.max(...columnOf(data, 'depth').map(Number), ...columnOf(data, 'secondDepth').map(Number));
    expect(data.extremes('depth')[1]).toBe(deepestM);
  });

  test('forgets him where he is gone', () => {
    const view = flownView('steady');
    const data = new TraceData();
    data.follow({ ...view, second: view.recording }, 'metric');
    expect(data.follow(view, 'metric')).toBe(true);
    expect(data.secondRows).toBe(0);
    expect(data.at('secondDepth', 3)).toBeNull();
  });
});
