import { expect, test } from 'vitest';
import type { Act } from '../../src/pilot/act.ts';
import { handsOf, type Hands } from '../../src/pilot/hands.ts';
import type { BreathLaw } from '../../src/pilot/traits.ts';

const law: BreathLaw = {
  ...{ kind: 'breath', rangeL: 1, perML: 0.8, perMpsL: 8 },
  ...{ pressS: 0.25, bandL: 0.25, waitS: 2.5, oneWayL: 0.2 },
};
const times = (count: number, hands: Hands, ...args: Parameters<Hands>): Act[] =>
  Array.from({ length: count }, () => hands(...args));
/** Lengths of the presses in decisions, each with its sign. */
function presses(acts: readonly Act[]): number[] {
  const found: number[] = [];
  acts.forEach(({ gas }, i) => {
    if (gas === 0) return;
    if (i > 0 && acts[i - 1]!.gas === gas) found[found.length - 1]! += gas;
    else found.push(gas);
  });
  return found;
}

test('breath hands lean by error and speed, and never further than their range', () => {
  const bias = (errorM: number, speedMps: number) => handsOf(law)(errorM, speedMps, 0).biasL;
  expect(bias(0.5, 0)).toBeCloseTo(0.4, 12);
  expect(bias(0, 0.05)).toBeCloseTo(0.4, 12);
  expect([bias(5, 0), bias(-5, 0)]).toEqual([1, -1]);
});

test('breath hands press once for 0.25 s when the mean passes the band, and then wait 2.5 s', () => {
  const acts = times(20 * 12, handsOf(law), 1, 0, 0);
  const first = acts.findIndex(({ gas }) => gas !== 0);
  // A mean of 4 s toward 0.8 L passes 0.25 L after 4 s · ln(0.8/0.55).
  expect(first / 20).toBeCloseTo(4 * Math.log(0.8 / 0.55), 0);
  expect(
    presses(acts)
      .slice(0, -1)
      .every((length) => length === 5),
  ).toBe(true);
  const second = acts.findIndex(({ gas }, i) => gas !== 0 && i > first + 5);
  expect(second - first).toBeGreaterThanOrEqual(5 + 50);
});

test('breath hands add less readily on the way up, and vent less readily on the way down', () => {
  const count = (errorM: number, way: -1 | 0 | 1) => presses(times(200, handsOf(law), errorM, 0, way)).length;
  // 0.8 L/m × 0.5 m = 0.4 L: over the band of 0.25, under 0.45.
  expect([count(0.5, 0), count(0.5, 1), count(0.5, -1)].map((n) => n > 0)).toEqual([true, true, false]);
  expect([count(-0.5, 0), count(-0.5, -1), count(-0.5, 1)].map((n) => n > 0)).toEqual([true, true, false]);
});

test('pulse hands press for 0.4 s, two seconds from press to press, and never breathe', () => {
  const hands = handsOf({ kind: 'pulse', pressS: 0.4, overM: 0.6, leadS: 6, fromPressToPressS: 2 });
  const acts = times(100, hands, 1, 0, 0);
  expect(presses(acts).slice(0, 2)).toEqual([8, 8]);
  expect(acts.every(({ biasL }) => biasL === 0)).toBe(true);
  expect(presses(times(100, hands, 0, -0.11, 0))[0]).toBe(-8);
});

test('until-still hands hold the button until what they see stands still, three seconds at most', () => {
  const traits = { kind: 'until-still', overM: 0.7, overMps: 0.15, stillMps: 0.02, longestS: 3, waitS: 1.5 } as const;
  const hands = handsOf(traits);
  const sinking = times(30, hands, 0, 0.3, 0);
  expect(sinking.every(({ gas }) => gas === 1)).toBe(true);
  expect(times(20, hands, 0, 0.01, 0).every(({ gas }) => gas === 0)).toBe(true);
  expect(presses(times(110, handsOf(traits), 0, 0.3, 0))[0]).toBe(60);
});

test('kick hands leave the gas alone and kick when too deep', () => {
  const hands = handsOf({ kind: 'kick', finsN: 25, overM: 0.4 });
  expect(hands(0.5, 0, 0)).toEqual({ gas: 0, biasL: 0, finsUpN: 25 });
  expect(hands(0.3, 0, 0).finsUpN).toBe(0);
});
