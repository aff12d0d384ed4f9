import { expect, test } from 'vitest';
import { Dive, pieceAtHand, replay, restingControls, startState } from '../../src/dive/index.ts';
import { ledger } from '../../src/diver/index.ts';
import { readyRig } from './run-file-fixture.ts';

// 2, 1 kg on the belt; 1.73 kg on the back, which is never let go.
const rig = readyRig('first-dive');
const still = { ...restingControls(320), pitchDeg: 90 };
const afloat = () => new Dive(rig, startState(rig, { depthM: 0.3, jacketM3: 9e-3, pitchDeg: 90 }), still);
/** One change of the hands, a twentieth of a second. */
function hand(dive: Dive, handLead: number, more = {}): Dive {
  dive.steer({ ...still, ...more, handLead });
  dive.advance(6);
  dive.steer({ ...still, ...more });
  dive.advance(6);
  return dive;
}
const wornKg = (dive: Dive) => dive.recording.at(dive.recording.rows - 1, 'leadKg');

test('lead taken off at the surface is told and weighs nothing from then on; put back on, the sums are as they were to the bit', () => {
  const dive = afloat();
  const before = { ...dive.state };
  hand(dive, 1);
  expect(wornKg(dive)).toBeCloseTo(2.73, 9);
  expect(ledger(rig, dive.state).some(({ part }) => part === 'lead-1')).toBe(false);
  hand(dive, -1);
  expect(wornKg(dive)).toBeCloseTo(4.73, 9);
  expect(dive.state.solidKg).toBe(before.solidKg);
  expect(dive.state.massHeadward).toBe(before.massHeadward);
  expect(dive.events.filter(({ kind }) => kind.startsWith('lead'))).toMatchObject([
    { kind: 'lead-taken-off', piece: 1, massKg: 2, tick: 0 },
    { kind: 'lead-put-on', piece: 1, massKg: 2, tick: 12 },
  ]);
  expect(replay(dive.run()).hash()).toBe(dive.hash());
});

test('no hand reaches lead under water, lead that is fixed, or lead that was let go', () => {
  const under = new Dive(rig, startState(rig, { depthM: 2, jacketM3: 2e-3 }), still);
  expect(wornKg(hand(under, 1))).toBeCloseTo(4.73, 9);
  expect(wornKg(hand(afloat(), 3))).toBeCloseTo(4.73, 9);
  const gone = hand(afloat(), 0, { releaseMask: 1 });
  expect(wornKg(hand(gone, -1, { releaseMask: 1 }))).toBeCloseTo(2.73, 9);
  expect(gone.events.filter(({ kind }) => kind.startsWith('lead'))).toHaveLength(1);
});

test('pieceAtHand() is the lightest that can come off, or go back on; 0 where there is none', () => {
  expect(pieceAtHand(rig, 0, 0, 1)).toBe(2);
  expect(pieceAtHand(rig, 0b10, 0, 1)).toBe(1);
  expect(pieceAtHand(rig, 0b11, 0, 1)).toBe(0);
  expect(pieceAtHand(rig, 0, 0, -1)).toBe(0);
  expect(pieceAtHand(rig, 0b11, 0, -1)).toBe(-2);
  expect(pieceAtHand(rig, 0b11, 0b10, -1)).toBe(-1);
});
