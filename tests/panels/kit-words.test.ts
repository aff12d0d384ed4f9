import { describe, expect, test } from 'vitest';
import {
  deltaText,
  growthChange,
  growthText,
  hoverSentence,
  leadSentence,
  plainDepth,
  reachSentence,
  reachText,
  surplusText,
} from '../../src/panels/kit-words.ts';
import { diver, fresh, hover } from './kit-views.ts';

describe('leadSentence()', () => {
  test.each([
    ['fresh water instead of sea water', -2.3, 'With fresh water instead of sea water you need 2.3 kg less.'],
    [
      'at 2000 m of altitude instead of at sea level',
      0.6,
      'At 2000 m of altitude instead of at sea level you need 0.6 kg more.',
    ],
    ['suit 1 mm thicker: 6 mm', 0.7, 'With a suit 1 mm thicker (6 mm) you need 0.7 kg more.'],
    [
      'membrane drysuit instead of 5 mm one-piece',
      0.02,
      'With a membrane drysuit instead of 5 mm one-piece you need the same lead.',
    ],
  ])('of "%s" by %d kg', (change, deltaKg, words) =>
    expect(leadSentence(fresh({ change, deltaKg }), 'metric')).toBe(words),
  );

  test('of lead itself says that what is needed stays', () =>
    expect(leadSentence(fresh({ change: '2 kg more lead than now', deltaKg: 2, ofLead: true }), 'metric')).toBe(
      'You carry 2.0 kg more; what makes neutral stays the same.',
    ));

  test('in pounds: 2.3 kg ÷ 0.45359237', () =>
    expect(leadSentence(fresh(), 'imperial')).toBe('With fresh water instead of sea water you need 5.1 lb less.'));
});

test('hoverSentence() says between which volumes larger lungs are breathed', () => {
  const larger = hover({ reachM: [6.1, 27.3], lungs: { leastM3: 2.16e-3, mostM3: 6.96e-3 } });
  expect(hoverSentence(hover(), larger, 'metric')).toBe(
    'Breath alone, then of 2.2 to 7.0 L, keeps you neutral from 6.1 to 27.3 m, before from 6.8 to 20.7 m.',
  );
});

describe('words of a hover', () => {
  test('reachText() names both depths, the surface and the bottom', () => {
    expect(reachText(hover(), 'metric')).toBe('6.8 to 20.7 m');
    expect(reachText(hover({ reachM: [4.8, 40] }), 'metric')).toBe('4.8 m to the bottom');
    expect(reachText(hover({ reachM: [-0.2, 12] }), 'metric')).toBe('the surface to 12.0 m');
    expect(reachText(hover({ reachM: null }), 'metric')).toBe('nowhere');
    // 6.83 m and 20.71 m ÷ 0.3048
    expect(reachText(hover(), 'imperial')).toBe('22 to 68 ft');
  });

  test('growthText() and growthChange() give seconds, or say what there is instead', () => {
    expect(growthText(hover({ doublingS: null }))).toBe('comes back');
    expect(growthText(hover({ leftN: 9 }))).toBe('too light');
    expect(growthText(hover({ leftN: -9 }))).toBe('too heavy');
    expect(growthChange(hover({ leftN: 9 }), hover({ leftN: 3 }))).toBe('too light');
    expect(growthChange(hover(), hover({ doublingS: 9.04 }))).toBe('7.6, then 9.0 s');
    expect(growthChange(hover({ doublingS: null }), hover())).toBe('comes back, then 7.6 s');
  });

  test('hoverSentence() and reachSentence() say what breath does, or that it does nothing', () => {
    expect(hoverSentence(hover(), hover({ reachM: [7, 19.84] }), 'metric')).toBe(
      'Breath alone then keeps you neutral from 7.0 to 19.8 m, before from 6.8 to 20.7 m.',
    );
    expect(hoverSentence(hover(), hover(), 'metric')).toContain('as before');
    expect(reachSentence(hover({ openLungs: false, reachM: null }), 'metric')).toContain('lifts nothing');
    expect(hoverSentence(hover(), hover({ leftN: 9 }), 'metric')).toBe(
      'At 10 m this diver is too light even with no gas to spare. Breath alone keeps neutral from 6.8 to 20.7 m.',
    );
    expect(reachSentence(hover({ leftN: -9, reachM: null }), 'metric')).toBe(
      'At 10 m this diver is too heavy even with the jacket full.',
    );
  });
});

test('deltaText(), surplusText() and plainDepth() write differences and chosen depths', () => {
  expect(deltaText(-2.34, 'metric')).toBe('−2.3 kg');
  expect(deltaText(1.5, 'metric')).toBe('+1.5 kg');
  expect(deltaText(0.04, 'metric')).toBe('no change');
  expect(surplusText(diver(), 'metric')).toBe('0.5 kg too much: 0.5 kg of pull in water');
  // What pulls less what lifts: 3.5 − 3.95 kg
  const light = diver({ carriedKg: 3.2, up: [{ name: 'suit', kg: 3.95, isGas: true, saidKg: 3.9 }] });
  expect(surplusText(light, 'metric')).toBe('0.5 kg too little: 0.5 kg of pull in water');
  expect(surplusText(diver({ carriedKg: 3.72 }), 'metric')).toBe('just enough');
  expect(plainDepth(10, 'metric')).toBe('10 m');
  expect(plainDepth(2.5, 'metric')).toBe('2.5 m');
});
