import { describe, expect, test } from 'vitest';
import { rigOf } from '../../src/diver/index.ts';
import {
  Dive,
  advance,
  copyState,
  restingControls,
  startState,
  withMishaps,
  type Mishap,
} from '../../src/dive/index.ts';
import { FORECAST_S, Forecast, USUAL_ASK, handsOff, recoveryMap, stopping } from '../../src/insight/index.ts';
import { Chance } from '../reference/chance.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';
import { fly, needed } from './full-stepping.ts';
import { chanceMoment } from './stopping-moments.ts';

const RIG = weighed(EXAMPLE);
const REST = restingControls(320);

describe('hands off in a current', () => {
  test('handsOff() leaves the water as fast as it is, and goes on with no bump, no gain of speed and no loss of gas', () => {
    const wrong = { ...REST, nudgeUpN: 160, waterDownMmps: 200, waterDownMmps2: 200, gasLeftBar: 40 };
    expect(handsOff(wrong)).toEqual({ ...REST, waterDownMmps: 200 });
  });

  test('depthsM(): once the current has set in, the ten seconds ahead are those that come while it lasts', () => {
    const mishap: Mishap = { kind: 'current', atS: 1, downMps: 0.2, forS: 20 };
    const dive = new Dive(RIG, startState(RIG, { depthM: 8, jacketM3: 1.5e-3 }), REST);
    const fly = (seconds: number) => {
      for (let slot = 0; slot < seconds * 20; slot++) {
        dive.steer(withMishaps(REST, [mishap], dive.state));
        dive.advance(6);
      }
    };
    fly(3);
    const depths = new Forecast(RIG).depthsM(dive.state, dive.controls);
    const still = new Forecast(RIG).depthsM(dive.state, { ...dive.controls, waterDownMmps: 0 });
    fly(FORECAST_S);
    expect(depths.at(-1)).toBe(dive.state.depthM);
    expect(depths.at(-1)! - still.at(-1)!).toBeGreaterThan(1);
  });
});

describe('stopping() in a current, 120 moments by chance, every means', () => {
  const chance = new Chance(95);
  const rows = Array.from({ length: 120 }, (_, i) => {
    const { id, rig, state, controls: before, ask } = chanceMoment(chance);
    const controls = { ...before, waterDownMmps: chance.whole(60, 300) * chance.one([1, -1]) };
    const { way, rows: said } = stopping(rig, state, controls, ask);
    return said.map((row) => ({
      what: `${i} ${id} ${controls.waterDownMmps} mm/s ${row.means} ${way}`,
      said: row,
      flown: fly(rig, state, controls, ask, row.means, way),
    }));
  }).flat();

  test('stops, and where, as the full model flown in the same water; three knife edges at most', () => {
    const other = rows.filter(({ said, flown }) => said.stops !== flown.stops && flown.leftM > 0.05);
    expect(other.map(({ what }) => what).slice(3)).toEqual([]);
    const alike = rows.filter(({ said, flown }) => said.stops && flown.stops);
    const off = alike.filter(({ said, flown }) => Math.abs(said.depthM! - flown.depthM!) > 0.05);
    expect(off.map(({ what }) => what)).toEqual([]);
    expect(alike.length).toBeGreaterThan(150);
    expect(rows.filter(({ flown }) => !flown.stops).length).toBeGreaterThan(80);
  });

  test('who is stopped stays: in the ten seconds after, as he is then, he goes on nowhere near as fast as the water', () => {
    const rig = weighed(changed(EXAMPLE, { water: { bottomM: 60 } }));
    const state = startState(rig, { depthM: 10, jacketM3: 1.9e-3, cylinderBar: 50, speedMps: 0.2 });
    const controls = { ...REST, waterDownMmps: 200 };
    const { rows: said } = stopping(rig, state, controls, { ...USUAL_ASK, reactionS: 0 });
    // This water pulls with 12 N at who stands still in it; full lungs are 26 N lighter than the middle of a breath.
    expect(said.find(({ means }) => means === 'none')!.stops).toBe(false);
    const breath = said.find(({ means }) => means === 'breath')!;
    expect(breath.stops).toBe(true);
    const full = { ...controls, breath: 1, lungCl: 580 };
    const s = copyState(state);
    advance(rig, s, full, Math.round(breath.timeS! * 120) + 1200);
    expect(s.speedMps).toBeLessThan(0.02);
  });
});

test('recoveryMap() in a current: cells by chance as flown one by one, those near a boundary left out', () => {
  const chance = new Chance(96);
  const rig = rigOf(changed(EXAMPLE, { lead: [{ massKg: 5, place: 'belt', releasable: true }] as never }));
  const state = startState(rig, { depthM: 10, jacketM3: 2e-3 });
  const controls = { ...REST, waterDownMmps: 150 };
  const map = recoveryMap(rig, state, controls, USUAL_ASK, { across: 'gas' });
  const without = recoveryMap(rig, state, REST, USUAL_ASK, { across: 'gas' });
  let differs = 0;
  for (let i = 0; i < 60; i++) {
    const column = chance.whole(0, map.columns.length - 1);
    const depthM = chance.between(map.topM, map.bottomM);
    const bands = map.columns[column]!;
    if (bands.slice(1).some(({ fromM }) => Math.abs(fromM - depthM) < 0.15)) continue;
    const jacketMol = (map.across.values[column]! * 101325) / rig.gasJPerMol;
    const lungs = startState(rig, { depthM });
    const cell = { ...copyState(state), depthM, jacketMol, lungMol: lungs.lungMol, lungM3: lungs.lungM3, calmUntil: 0 };
    const at = (list: typeof bands) => list.find(({ fromM, toM }) => depthM >= fromM && depthM <= toM)!;
    const full = needed(rig, cell, controls, USUAL_ASK);
    expect({ means: at(bands).means, way: at(bands).way }, `${column} ${depthM}`).toEqual(full);
    if (at(without.columns[column]!).means !== full.means) differs++;
  }
  expect(differs).toBeGreaterThan(5);
}, 60_000);
