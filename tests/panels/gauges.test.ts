import { expect, test } from 'vitest';
import { spoken, type Readings } from '../../src/panels/readings.ts';

const RISING: Readings = {
  depthM: 8.2,
  speedMps: -4 / 60,
  midNetN: 3,
  place: 'under',
  lungM3: 3.5e-3,
  levelM3: 3.5e-3,
  totalLungM3: 6e-3,
  judged: 'mid-breath',
  gasScaleM3: 10e-3,
  gas: [],
  up: [],
  down: [],
};

test('what is said aloud has what the lesson shows: all, the rate, or where the water shows the diver', () => {
  expect(spoken(RISING, 'metric')).toBe('8.2 m, rising 4 m/min, 0.3 kg light');
  expect(spoken(RISING, 'metric', 'rate')).toBe('8.2 m, rising 4 m/min');
  expect(spoken(RISING, 'metric', 'none')).toBe('8.2 m, rising');
  expect(spoken(RISING, 'metric', 'all', false)).toBe('8.2 m, rising 4 m/min');
});
