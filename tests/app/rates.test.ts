import { expect, test } from 'vitest';
import { DOWN_MPS, TOO_FAST_MPS, UP_MPS } from '../../src/app/rates.ts';
import { USUAL_LIMITS } from '../../src/lesson/index.ts';

test('free practice is judged by the rates that lessons usually ask for', () => {
  const { ascentMpmin, fastMpmin, descentMpmin } = USUAL_LIMITS;
  expect({ up: UP_MPS * 60, tooFast: TOO_FAST_MPS * 60, down: DOWN_MPS * 60 }).toEqual({
    up: ascentMpmin,
    tooFast: fastMpmin,
    down: descentMpmin,
  });
});
