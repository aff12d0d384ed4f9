import { expect, test } from 'vitest';
import {
  CONTROL_NAMES,
  CONTROL_RANGES,
  Dive,
  floatingDepthM,
  startState,
  ventFor,
  type Controls,
} from '../../src/dive/index.ts';
import { PILOTS, PILOT_NAMES, pilotOf, type PilotName, type Task } from '../../src/pilot/index.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';

/** Dives a minute at a depth under a pilot and hands every decision, as the pilot made it, to `look`. */
function minute(
  name: PilotName,
  seed: number,
  task: Task,
  look: (dive: Dive, raw: Controls) => void = () => undefined,
): Dive {
  const pilot = pilotOf(name, rig, seed);
  const dive = new Dive(rig, startState(rig, { depthM: 6, jacketM3: 2e-3 }));
  for (let i = 0; i < 20 * 60; i++) {
    const raw = pilot.decide(dive.state, task);
    dive.steer(raw);
    look(dive, raw);
    dive.advance(6);
  }
  return dive;
}

test('pilotOf() gives controls that are whole numbers in range, from every pilot', () => {
  for (const name of PILOT_NAMES)
    minute(name, 1, { kind: 'hold', depthM: 8 }, ({ state, controls }, raw) => {
      const strange = CONTROL_NAMES.filter((control) => {
        const [least, most] = CONTROL_RANGES[control];
        return !(Number.isInteger(raw[control]) && raw[control] >= least && raw[control] <= most);
      });
      if (strange.length > 0) expect.fail(`${name}: ${strange.join(', ')}`);
      if (controls.jacketVent !== 0) expect(controls.jacketVent).toBe(ventFor(state.pitchSin));
    });
});

test('pilotOf() does the same for the same seed, to the bit, and chance differs with the seed', () => {
  const task: Task = { kind: 'travel', depthM: 8 };
  for (const name of PILOT_NAMES) {
    const hash = minute(name, 4, task).hash();
    expect(minute(name, 4, task).hash(), name).toBe(hash);
    if (name !== 'idler') expect(minute(name, 5, task).hash(), name).not.toBe(hash);
  }
});

test('every pilot is told of in one sentence of its own', () => {
  const sentences = PILOT_NAMES.map((name) => PILOTS[name].does);
  for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z][^.]{10,90}\.$/);
  expect(new Set(sentences).size).toBe(PILOT_NAMES.length);
});

test('pilotOf() refuses a name that nobody has', () => {
  expect(() => pilotOf('perfect' as PilotName, rig, 1)).toThrow(
    /pilotOf: name must be one of steady, sparing, rescuer, able/,
  );
});

test('idler presses nothing, and steady never fins', () => {
  const idle = minute('idler', 1, { kind: 'hold', depthM: 8 });
  expect(idle.changes.every(({ controls }) => controls.jacketAdd + controls.jacketVent === 0)).toBe(true);
  const steady = minute('steady', 1, { kind: 'hold', depthM: 8 });
  expect(steady.state.finsUpNs + steady.state.finsDownNs).toBe(0);
  expect(steady.state.depthM).toBeCloseTo(8, 0);
});

test('kicker turns head-up before he kicks', () => {
  let kicked = 0;
  minute('kicker', 1, { kind: 'hold', depthM: 5 }, ({ state, controls }) => {
    if (controls.finsN === 0) return;
    kicked++;
    expect(controls).toMatchObject({ pitchDeg: 60, finsN: 25 });
    expect(state.pitchSin).toBeGreaterThan(0.5);
  });
  expect(kicked).toBeGreaterThan(100);
});

test('rescuer answers a fast rate with one press that lasts, which steady answers with short ones', () => {
  const longest = (name: PilotName) => {
    const pilot = pilotOf(name, rig, 1);
    const dive = new Dive(rig, startState(rig, { depthM: 6, jacketM3: 0, speedMps: 0.3 }));
    let [now, most] = [0, 0];
    for (let i = 0; i < 20 * 20; i++) {
      const raw = pilot.decide(dive.state, { kind: 'hold', depthM: 6 });
      now = raw.jacketAdd > 0 ? now + 1 : 0;
      most = Math.max(most, now);
      dive.steer(raw);
      dive.advance(6);
    }
    return most / 20;
  };
  expect(longest('rescuer')).toBeGreaterThan(1);
  expect(longest('steady')).toBeLessThan(0.3);
});

test('breath-holder closes a full airway while he rises', () => {
  let held = 0;
  minute('breath-holder', 1, { kind: 'travel', depthM: 3 }, ({ state, controls }) => {
    if (controls.breath !== 2) return;
    held++;
    expect(state.lungM3).toBeGreaterThan(5.5e-3);
  });
  expect(held).toBeGreaterThan(100);
});

test('steady fills the jacket while afloat only when his head stays wet', () => {
  const afloat = (jacketM3: number) => {
    const pilot = pilotOf('steady', rig, 1);
    const dive = new Dive(rig, startState(rig, { depthM: floatingDepthM(rig, jacketM3), jacketM3, pitchDeg: 90 }));
    for (let i = 0; i < 20 * 20; i++) {
      dive.steer(pilot.decide(dive.state, { kind: 'float' }));
      dive.advance(6);
    }
    return dive.state;
  };
  expect(afloat(4e-3).letInM3).toBeGreaterThan(1e-3);
  expect(afloat(4e-3).depthM).toBeLessThan(0.41);
  expect(afloat(9e-3).letInM3).toBe(0);
});
