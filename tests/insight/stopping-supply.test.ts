import { expect, test } from 'vitest';
import { stopping } from '../../src/insight/index.ts';
import { Chance } from '../reference/chance.ts';
import { fly } from './full-stepping.ts';
import { chanceMoment } from './stopping-moments.ts';

const MOMENTS = 300;

test('stops: nobody is stopped by a breath or a press for which the cylinder has no gas, in 300 moments with 1 to 9 bar left', () => {
  const chance = new Chance(12);
  const wrong: string[] = [];
  let rows = 0;
  for (let i = 0; i < MOMENTS; i++) {
    const { id, rig, state, controls, ask } = chanceMoment(chance, undefined, [1, 9]);
    const { way, rows: said } = stopping(rig, state, controls, ask);
    for (const { means, stops, depthM } of said) {
      rows++;
      const flown = (share: number) => {
        const from = { ...state, cylinderMol: state.cylinderMol.map((mol) => mol * share) };
        return fly(rig, from, controls, ask, means, way);
      };
      if (flown(1).stops === stops || flown(1).leftM < 0.05) continue;
      // Where a fiftieth of the gas more or less decides, either may be said.
      if (flown(0.98).stops === stops || flown(1.02).stops === stops) continue;
      wrong.push(
        `${i} ${id} ${means} from ${state.depthM.toFixed(2)} m: said ${stops} ${depthM}, flown ${flown(1).end}`,
      );
    }
  }
  expect(wrong).toEqual([]);
  expect(rows).toBeGreaterThan(1500);
});
