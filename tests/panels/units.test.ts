import { describe, expect, test } from 'vitest';
import { spoken, type Readings } from '../../src/panels/readings.ts';
import { depthText, litresText, massText, pullKg, rateParts, timeText, weightParts } from '../../src/panels/units.ts';

const moment: Readings = {
  depthM: 8.2,
  speedMps: -4 / 60,
  midNetN: 0.3 * 9.80665,
  place: 'under',
  lungM3: 3e-3,
  levelM3: 3e-3,
  totalLungM3: 6e-3,
  judged: 'mid-breath',
  gas: [],
  gasScaleM3: 16e-3,
  up: [],
  down: [],
};

describe('words of a moment', () => {
  test('spoken() says depth, speed and weight in one sentence', () => {
    expect(spoken(moment, 'metric')).toBe('8.2 m, rising 4 m/min, 0.3 kg light');
    // 8.2 m ÷ 0.3048; 4 m/min ÷ 0.3048; 0.3 kg ÷ 0.45359237: closed form
    expect(spoken(moment, 'imperial')).toBe('27 ft, rising 13 ft/min, 0.7 lb light');
  });

  test('spoken() says afloat and the bottom before any kilograms', () => {
    expect(spoken({ ...moment, speedMps: 0, place: 'afloat' }, 'metric')).toBe('8.2 m, still, afloat');
    expect(spoken({ ...moment, speedMps: 0, midNetN: -9.80665, place: 'on the bottom' }, 'metric')).toBe(
      '8.2 m, still, 1.0 kg heavy, on the bottom',
    );
  });

  test('depthText() never shows a depth above the surface', () => expect(depthText(-0.3, 'metric')).toBe('0.0 m'));

  test('rateParts() is still below half a metre a minute, else rising or sinking', () => {
    expect(rateParts(0.4 / 60, 'metric').word).toBe('still');
    expect(rateParts(9 / 60, 'metric')).toEqual({ word: 'sinking', number: '9', unit: 'm/min' });
    expect(rateParts((-30 * 0.3048) / 60, 'imperial')).toEqual({ word: 'rising', number: '30', unit: 'ft/min' });
  });

  test('weightParts() is neutral within a tenth of a kilogram', () => {
    expect(weightParts(0.099 * 9.80665, 'metric').word).toBe('neutral');
    expect(weightParts(-0.11 * 9.80665, 'metric')).toEqual({ word: 'heavy', amount: '0.1 kg' });
  });

  test('pullKg(), massText(), litresText() and timeText() write plain numbers', () => {
    expect(pullKg(9.80665)).toBe(1);
    expect(massText(1, 'imperial')).toBe('2.2 lb');
    expect(litresText(3.56e-3)).toBe('3.6 L');
    expect(timeText(65.9)).toBe('1:05');
  });
});
