// @vitest-environment happy-dom
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { restingControls, ventFor, type ControlChange } from '../../src/dive/index.ts';
import { bubblesAt } from '../../src/stage/bubbles.ts';
import { ACROSS_M } from '../../src/stage/diver-gas.ts';
import { calmed, depthAtM, stretchesOf } from '../../src/stage/line.ts';
import { pressVolumeM3, pressesOf } from '../../src/stage/press-shape.ts';
import { sheetOf } from '../../src/stage/run-sheet-layout.ts';
import { waterAt } from '../../src/water/index.ts';
import { diveAt, rig, viewOf } from './views.ts';

const limits = () => ({ upMps: 0.15, downMps: 0.3 });

test('stretchesOf() doubles exactly where the line is steeper than allowed', () => {
  const depths = [5, 5.2, 5.4, 5.9, 6.4, 6.3, 6.1];
  const stretches = stretchesOf([0, 1, 2, 3, 4, 5, 6], depths, limits);
  expect(stretches.map(({ doubled }) => doubled)).toEqual([false, true, false, true]);
  expect(stretches[1]!.points).toEqual([2, 5.4, 3, 5.9, 4, 6.4]);
});

test('stretchesOf() asks for the limits of the time', () => {
  const before = (s: number) => ({ upMps: null, downMps: s < 1.5 ? null : 0.1 });
  expect(stretchesOf([0, 1, 2], [0, 1, 2], before).map(({ doubled }) => doubled)).toEqual([false, true]);
});

test('stretchesOf() and calmed() lose no point of the line and leave no gap', () => {
  fc.assert(
    fc.property(fc.array(fc.float({ min: 0, max: 30, noNaN: true }), { minLength: 2, maxLength: 40 }), (depths) => {
      const seconds = depths.map((_, i) => i / 10);
      const whole = seconds.flatMap((s, i) => [s, depths[i]!]);
      for (const stretches of [
        stretchesOf(seconds, depths, limits),
        calmed(stretchesOf(seconds, depths, limits), 0.45),
      ]) {
        const line = stretches.flatMap(({ points }, i) => (i === 0 ? points : points.slice(2)));
        expect(line).toEqual(whole);
      }
    }),
  );
});

test('calmed() keeps no inner stretch shorter than asked', () => {
  const seconds = Array.from({ length: 60 }, (_, i) => i / 10);
  const depths = seconds.map((s) => 8 - 0.15 * s + 0.002 * Math.sin(s * 30));
  const calm = calmed(stretchesOf(seconds, depths, limits), 0.45);
  for (const { points } of calm.slice(1, -1))
    expect(points[points.length - 2]! - points[0]!).toBeGreaterThanOrEqual(0.45 - 1e-9);
});

test('pressesOf() finds gas added and gas vented, and the press still held', () => {
  const rest = restingControls(300);
  const changes: ControlChange[] = [
    { tick: 0, controls: rest },
    { tick: 60, controls: { ...rest, jacketAdd: 1 } },
    { tick: 90, controls: { ...rest, jacketAdd: 1, finsN: 20 } },
    { tick: 120, controls: rest },
    { tick: 240, controls: { ...rest, jacketVent: 2 } },
  ];
  expect(pressesOf(changes)).toEqual([
    { way: 1, fromTick: 60, toTick: 120 },
    { way: -1, fromTick: 240, toTick: null },
  ]);
});

test('pressVolumeM3() is what the jacket gained or lost', () => {
  const dive = diveAt(8, 3e-3);
  const rest = dive.controls;
  const jacket = () => dive.recording.at(dive.recording.rows - 1, 'jacketM3');
  dive.advance(120);
  const before = jacket();
  dive.steer({ ...rest, jacketAdd: 1 });
  dive.advance(60);
  dive.steer(rest);
  const gained = jacket() - before;
  dive.advance(120);
  const held = jacket();
  dive.steer({ ...rest, jacketVent: ventFor(0) });
  dive.advance(60);
  dive.steer(rest);
  const lost = held - jacket();
  dive.advance(60);
  const [add, vent] = pressesOf(dive.changes);
  // The diver moves a little meanwhile, and his gas with him.
  expect(pressVolumeM3(dive.recording, add!, add!.toTick!) / gained).toBeCloseTo(1, 1);
  expect(pressVolumeM3(dive.recording, vent!, vent!.toTick!) / lost).toBeCloseTo(1, 1);
});

test('bubblesAt() keeps the gas: areas times pressure at all depths are what went out, to the scale of lungs', () => {
  const dive = diveAt(9, 6e-3);
  dive.advance(12);
  dive.steer({ ...restingControls(320), breath: 1, jacketVent: ventFor(0), pitchDeg: 0 });
  dive.advance(36);
  dive.steer({ ...restingControls(320), breath: 1, pitchDeg: 0 });
  dive.advance(48);
  const { recording } = dive;
  const pressurePa = (depthM: number) => waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 }).pressurePa;
  // Groups of three rows count as one: what is asked is the whole of what left by the vent while the lungs took in.
  const out = recording.at(recording.rows - 1, 'letOutM3') * pressurePa(9);
  const vented = bubblesAt(rig, recording, 0.8).filter(({ besideM }) => besideM < 0.2);
  const shown = vented.reduce(
    (sum, { radiusM, depthM }) => sum + Math.PI * radiusM ** 2 * ACROSS_M * pressurePa(depthM),
    0,
  );
  expect(vented.length).toBeGreaterThan(2);
  expect(shown / out).toBeGreaterThan(0.9);
  expect(shown / out).toBeLessThan(1.02);
});

test('bubblesAt() follows from the recording alone: a longer one shows the same past, and bubbles only rise', () => {
  const dive = diveAt(8, 3e-3);
  dive.advance(120 * 9);
  const then = bubblesAt(rig, dive.recording, 9);
  expect(then.length).toBeGreaterThan(3);
  dive.advance(120 * 20);
  expect(bubblesAt(rig, dive.recording, 9)).toEqual(then);
  const shallowest = (s: number) => Math.min(...bubblesAt(rig, dive.recording, s).map(({ depthM }) => depthM));
  expect(shallowest(9.05)).toBeLessThan(shallowest(9));
  for (const { depthM, radiusM } of then) {
    expect(depthM).toBeGreaterThanOrEqual(0);
    expect(radiusM).toBeGreaterThan(0);
  }
});

test('depthAtM() lies on the recording, and between its rows in proportion', () => {
  const dive = diveAt(8, 0.5e-3);
  dive.advance(120);
  expect(depthAtM(dive.recording, 0.5)).toBe(dive.recording.at(5, 'depthM'));
  const middle = (dive.recording.at(5, 'depthM') + dive.recording.at(6, 'depthM')) / 2;
  expect(depthAtM(dive.recording, 0.55)).toBeCloseTo(middle, 12);
});

test('sheetOf() wraps a long run into rows and never squeezes it: 9 m/min stays 45°', () => {
  const dive = diveAt(8, 2e-3);
  dive.advance(120 * 200);
  const view = viewOf({ recording: dive.recording });
  const narrow = sheetOf(view, { widthPx: 360, rowPx: 160, pixelRatio: 1, textPx: 16 });
  const wide = sheetOf(view, { widthPx: 5000, rowPx: 160, pixelRatio: 1, textPx: 16 });
  expect(narrow.rows).toBeGreaterThan(1);
  expect(wide.rows).toBe(1);
  for (const sheet of [narrow, wide]) {
    expect(60 * sheet.pxPerS).toBeCloseTo(9 * sheet.pxPerM, 9);
    for (const atS of [0, 50, 120, 199.9]) {
      const { x, y } = sheet.place(atS);
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(sheet.rowS * sheet.pxPerS + 1e-9);
      expect(y).toBeLessThan(sheet.heightPx);
    }
  }
  expect(narrow.place(narrow.rowS + 1).x).toBeCloseTo(narrow.pxPerS, 9);
});
