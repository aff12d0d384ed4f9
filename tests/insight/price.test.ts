import { expect, test } from 'vitest';
import { stopping } from '../../src/insight/index.ts';
import { Chance } from '../reference/chance.ts';
import { fly } from './full-stepping.ts';
import { chanceMoment } from './stopping-moments.ts';

const MOMENTS = 150;

test('pricePerSecondM: what two full-model dives a second apart, by the gentlest means that stops, differ by, to 5 cm; null where none is needed or a second later it is not enough', () => {
  const chance = new Chance(31);
  const off: string[] = [];
  let priced = 0;
  for (let i = 0; i < MOMENTS; i++) {
    const { id, rig, state, controls, ask } = chanceMoment(chance);
    const { way, rows, pricePerSecondM } = stopping(rig, state, controls, ask);
    const means = rows.find(({ stops }) => stops)?.means ?? 'none';
    if (means === 'none') {
      if (pricePerSecondM !== null) off.push(`${i} ${id}: a price of nothing`);
      continue;
    }
    const soon = fly(rig, state, controls, ask, means, way);
    const late = fly(rig, state, controls, { ...ask, reactionS: ask.reactionS + 1 }, means, way);
    // A floor given as a speed has no depth that a second could cost.
    if ([soon, late].some(({ end, leftM }) => end === 'slow enough' || leftM < 0.05)) continue;
    if (!soon.stops || !late.stops) {
      if (pricePerSecondM !== null) off.push(`${i} ${id}: said ${pricePerSecondM}, flown ${soon.end}, ${late.end}`);
      continue;
    }
    priced++;
    const costM = way * (late.depthM! - soon.depthM!);
    if (pricePerSecondM === null || Math.abs(pricePerSecondM - costM) > 0.05)
      off.push(`${i} ${id}: said ${pricePerSecondM}, flown ${costM}`);
  }
  expect(off).toEqual([]);
  expect(priced).toBeGreaterThan(50);
});
