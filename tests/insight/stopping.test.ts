import { describe, expect, test } from 'vitest';
import { HEAD_OUT_M } from '../../src/diver/index.ts';
import { advance, copyState, hashOf } from '../../src/dive/index.ts';
import { MEANS, actionOf, stopping, wayOf, type Stopping } from '../../src/insight/index.ts';
import { Chance } from '../reference/chance.ts';
import { fly, type Flown } from './full-stepping.ts';
import { READY, chanceMoment, type Moment } from './stopping-moments.ts';

const MOMENTS = 500;
/** So near to the floor, metres, where it ends is a matter of the last digits. */
const EDGE_M = 0.05;

/** Every means of every moment, as forecast and as flown with the full model. */
interface Pair {
  readonly what: string;
  readonly moment: Moment;
  readonly said: Stopping;
  readonly flown: Flown;
}

function pairsOf(seed: number, moments: number): Pair[] {
  const chance = new Chance(seed);
  const pairs: Pair[] = [];
  for (let i = 0; i < moments; i++) {
    const moment = chanceMoment(chance);
    const { id, rig, state, controls, ask } = moment;
    const { way, rows } = stopping(rig, state, controls, ask);
    for (const said of rows) {
      const flown = fly(rig, state, controls, ask, said.means, way);
      const [z, v] = [state.depthM.toFixed(2), state.speedMps.toFixed(2)];
      pairs.push({
        what: `${i} ${id} ${z} m ${v} m/s ${said.means}: said ${said.depthM} ${said.timeS}, flown ${flown.end} ${flown.depthM} ${flown.timeS}`,
        moment,
        said,
        flown,
      });
    }
  }
  return pairs;
}

describe('stopping() against the full model, 500 moments by chance, every means', () => {
  const pairs = pairsOf(2, MOMENTS);
  const isEdge = ({ said, flown }: Pair) =>
    flown.leftM < EDGE_M ||
    (flown.end === 'floor' && said.depthM !== null && Math.abs(said.depthM - flown.state.depthM) < EDGE_M);
  const alike = pairs.filter(({ said, flown }) => said.stops === flown.stops);
  const stopped = alike.filter(({ said }) => said.stops);

  test('the moments are of all kinds: both ways, every setup, stopped and not by every means', () => {
    expect(new Set(pairs.map(({ moment }) => moment.id))).toEqual(new Set(READY.keys()));
    for (const means of MEANS) {
      const ends = pairs.filter(({ said }) => said.means === means).map(({ flown }) => flown.stops);
      expect(ends.filter((stops) => stops).length, means).toBeGreaterThan(100);
      expect(ends.filter((stops) => !stops).length, means).toBeGreaterThan(10);
    }
  });

  test('stops: says so exactly when the dive does, but for knife edges, five of all rows at most', () => {
    const other = pairs.filter(({ said, flown }) => said.stops !== flown.stops);
    process.stdout.write(
      `\nStopping: ${pairs.length} rows flown, ${stopped.length} stop; ${other.length} said otherwise; ${stopped.filter(isEdge).length} of those that stop come within 5 cm of the floor.\n`,
    );
    expect(other.filter((pair) => !isEdge(pair)).map(({ what }) => what)).toEqual([]);
    expect(other.length).toBeLessThanOrEqual(5);
  });

  test('depthM: within 5 cm of where the dive turns', () => {
    const off = stopped.filter(({ said, flown }) => Math.abs(said.depthM! - flown.depthM!) > 0.05);
    expect(off.map(({ what }) => what)).toEqual([]);
  });

  test('timeS: within 0.3 s of when the dive turns, the knife edges left out', () => {
    const off = stopped.filter((pair) => !isEdge(pair) && Math.abs(pair.said.timeS! - pair.flown.timeS!) > 0.3);
    expect(off.map(({ what }) => what)).toEqual([]);
  });

  test('peakMps: within 2 % of the dive’s, or half a millimetre a second', () => {
    const off = stopped.filter(({ said, flown }) => {
      return Math.abs(said.peakMps - flown.peakMps) > Math.max(0.02 * flown.peakMps, 5e-4);
    });
    expect(off.map(({ what }) => what)).toEqual([]);
  });

  test('peakMps: of who comes to the floor as well, within 2 % of how fast he does', () => {
    // Who has the head out already is at the floor before anything moves.
    const fell = alike.filter(({ flown, moment }) => flown.end === 'floor' && moment.state.depthM > HEAD_OUT_M);
    const off = fell.filter(({ said, flown }) => {
      return Math.abs(said.peakMps - flown.peakMps) > Math.max(0.02 * flown.peakMps, 5e-4);
    });
    expect(fell.length).toBeGreaterThan(300);
    expect(off.map(({ what, said, flown }) => `${what}: ${said.peakMps} ${flown.peakMps}`)).toEqual([]);
  });

  test('stops: who is arrested stays so for 20 s: no more than a quarter of a metre on, and 99 of 100 no more than 5 cm', () => {
    const arrested = stopped.filter(({ flown }) => flown.end === 'arrested');
    const further = arrested.map(({ moment, said, flown }) => {
      const { rig, controls, ask } = moment;
      const way = wayOf(rig, moment.state, controls);
      const action = actionOf(said.means, way, rig, controls, ask.lungs);
      const s = copyState(flown.state);
      let onM = 0;
      for (let i = 0; i < 400; i++) {
        advance(rig, s, action(s), 6);
        onM = Math.max(onM, way * (s.depthM - flown.depthM!));
      }
      return onM;
    });
    expect(Math.max(...further)).toBeLessThan(0.25);
    expect(further.filter((onM) => onM > 0.05).length).toBeLessThan(0.01 * arrested.length);
  }, 60_000);
});

test('stopping() changes nothing, and asked twice it answers the same', () => {
  const { rig, state, controls, ask } = chanceMoment(new Chance(77));
  const before = hashOf(state);
  const first = stopping(rig, state, controls, ask);
  stopping(rig, { ...state, depthM: 9 }, controls, ask);
  expect(stopping(rig, state, controls, ask)).toEqual(first);
  expect(hashOf(state)).toBe(before);
});
