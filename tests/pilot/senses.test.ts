import { expect, test } from 'vitest';
import { breathingOf } from '../../src/pilot/breathing.ts';
import { eyeOf, type EyeTraits } from '../../src/pilot/eye.ts';
import { chanceOf, divePosture } from '../../src/pilot/index.ts';
import { nextTargetM, type TargetTraits } from '../../src/pilot/target.ts';
import { firstDiveRig as rig } from '../fixtures/lessons/first-dive.ts';

const sharp: EyeTraits = { delayS: 0, noticesMps: 0, noiseM: 0, dropsPerS: 0, dropS: 0 };

test('eyeOf() sees what was there its delay ago', () => {
  const see = eyeOf({ ...sharp, delayS: 0.35 }, chanceOf(1));
  const seen = Array.from({ length: 30 }, (_, i) => see(i, i).depthM);
  expect(seen.slice(7)).toEqual(Array.from({ length: 23 }, (_, i) => i));
});

test('eyeOf() reads speeds below its threshold as 0', () => {
  const see = eyeOf({ ...sharp, noticesMps: 0.05 }, chanceOf(1));
  expect([0.049, -0.049, 0.051, -0.051].map((speed) => see(5, speed).speedMps)).toEqual([0, 0, 0.051, -0.051]);
});

test('eyeOf() adds first-order noise: its deviation, and e^-1 of it after half a second', () => {
  const see = eyeOf({ ...sharp, noiseM: 0.1 }, chanceOf(5));
  const noise = Array.from({ length: 60_000 }, () => see(0, 0).depthM);
  const mean = (of: (x: number, i: number) => number, count: number) =>
    noise.slice(0, count).reduce((sum, x, i) => sum + of(x, i), 0) / count;
  const variance = mean((x) => x * x, noise.length);
  expect(Math.sqrt(variance)).toBeCloseTo(0.1, 2);
  const lagged = mean((x, i) => x * noise[i + 10]!, noise.length - 10);
  expect(lagged / variance).toBeCloseTo(Math.exp(-1), 1);
});

test('eyeOf() freezes about as often and as long as its drops say', () => {
  const see = eyeOf({ ...sharp, dropsPerS: 0.08, dropS: 1.5 }, chanceOf(3));
  let before = -1;
  let frozen = 0;
  const count = 200_000;
  for (let i = 0; i < count; i++) {
    const { depthM } = see(i, 0);
    if (depthM === before) frozen++;
    before = depthM;
  }
  // A drop of 1.5 s follows 12.5 s of sight on average.
  expect(frozen / count).toBeGreaterThan(0.08);
  expect(frozen / count).toBeLessThan(0.14);
});

test('nextTargetM() moves at its speed, slows to 35 % at the end, and stops on the depth', () => {
  const traits: TargetTraits = { upMps: 0.1, downMps: 0.2, slowM: 2, leadM: 100, paceShare: 0 };
  expect(nextTargetM(traits, 0, 8, 0)).toBeCloseTo(0.01, 12);
  expect(nextTargetM(traits, 8, 2, 8)).toBeCloseTo(7.995, 12);
  expect(nextTargetM(traits, 7, 8, 7) - 7).toBeCloseTo(0.01 * (0.35 + 0.65 * 0.5), 12);
  expect(nextTargetM(traits, 7.999, 8, 8)).toBe(8);
});

test('nextTargetM() waits when it is its lead ahead, and never comes back', () => {
  const traits: TargetTraits = { upMps: 0.1, downMps: 0.2, slowM: 0, leadM: 0.5, paceShare: 0 };
  expect(nextTargetM(traits, 3, 8, 2.5)).toBe(3);
  expect(nextTargetM(traits, 3, 8, 1)).toBe(3);
  expect(nextTargetM(traits, 3, 8, 2.6)).toBeGreaterThan(3);
  expect(nextTargetM(traits, 3, 0, 3.5)).toBe(3);
});

test('breathingOf() breathes one tidal volume in its period about the level, which moves at 0.6 L/s at most', () => {
  const breathe = breathingOf(rig, 8);
  const first = Array.from({ length: 160 }, () => breathe(0));
  expect(Math.max(...first) - Math.min(...first)).toBe(100);
  expect(Math.max(...first) + Math.min(...first)).toBe(640);
  const second = Array.from({ length: 160 }, () => breathe(0));
  second.forEach((value, i) => expect(Math.abs(value - first[i]!)).toBeLessThanOrEqual(1));
  const raised = Array.from({ length: 20 }, () => breathe(1e-3));
  expect(raised[19]! - first[19]!).toBeLessThanOrEqual(61);
  expect(raised[19]! - first[19]!).toBeGreaterThanOrEqual(59);
});

test('breathingOf() keeps within residual volume and capacity', () => {
  const breathe = breathingOf(rig, 6);
  for (const bias of [-9e-3, 9e-3])
    for (let i = 0; i < 400; i++) {
      const cl = breathe(bias);
      expect(cl >= 150 && cl <= 630).toBe(true);
    }
});

test('divePosture() hangs upright above, lies level below, and keeps what it was between', () => {
  expect([divePosture(0.3, 0), divePosture(2, 90)]).toEqual([90, 0]);
  expect([divePosture(1, 0), divePosture(1, 90)]).toEqual([0, 90]);
});
