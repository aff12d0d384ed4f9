import { expect, test } from 'vitest';
import { Dive, TICKS_PER_CHANGE, startState } from '../../src/dive/index.ts';
import { pilotOf, type PilotName, type Task } from '../../src/pilot/index.ts';
import { readyRig } from '../dive/run-file-fixture.ts';

const rig = readyRig('drysuit-membrane');
/** What was in the suit on the way between two depths, litres. */
function suitL(name: PilotName, fromM: number, toM: number): { least: number; most: number } {
  const dive = new Dive(rig, startState(rig, { depthM: fromM, jacketM3: 2e-3, suitGasM3: 8e-3 }));
  const pilot = pilotOf(name, rig, 3);
  for (let i = 0; i < 20 * 120; i++) {
    dive.steer(pilot.decide(dive.state, { kind: 'travel', depthM: toM }));
    dive.advance(TICKS_PER_CHANGE);
  }
  const litres = dive.recording.column('suitGasM3').map((m3) => m3 * 1e3);
  return { least: Math.min(...litres), most: Math.max(...litres) };
}

test('suit-feeder keeps what is in the suit within a litre, down and up; steady lets it be squeezed', () => {
  for (const [fromM, toM] of [
    [4, 12],
    [12, 5],
  ] as const) {
    const { least, most } = suitL('suit-feeder', fromM, toM);
    expect(least).toBeGreaterThan(7);
    expect(most).toBeLessThan(9);
  }
  // What is shut in follows Boyle: 8 L at 4 m are 8 · 1.4 ⁄ 2.2 ≈ 5.1 L at 12 m.
  expect(suitL('steady', 4, 12).least).toBeLessThan(5.5);
});

test('suit-keeper feeds it and lets nothing out: on the way up it swells', () => {
  expect(suitL('suit-keeper', 4, 12).least).toBeGreaterThan(7);
  expect(suitL('suit-keeper', 12, 5).most).toBeGreaterThan(10);
});

test('who has a hand for a suit takes the attitude that is asked for, and others do not', () => {
  const task: Task = { kind: 'hold', depthM: 8, pitchDeg: -40 };
  const state = startState(rig, { depthM: 8 });
  expect(pilotOf('suit-feeder', rig, 1).decide(state, task).pitchDeg).toBe(-40);
  expect(pilotOf('steady', rig, 1).decide(state, task).pitchDeg).toBe(0);
});
