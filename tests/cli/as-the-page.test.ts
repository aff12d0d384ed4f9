import { describe, expect, test } from 'vitest';
import { askOf } from '../../src/app/look-data.ts';
import { RATE_MPMIN } from '../../src/cli/insight-options.ts';
import { CAUTION as SAID } from '../../src/panels/cautions.ts';
import { USUAL_LOOKS } from '../../src/panels/looks.ts';
import { ran, resultOf } from './fixture.ts';

describe('the command says and means what the page does', () => {
  test.each([
    ['weigh', 'pool'],
    ['insight', 'pool', '--depth', '2'],
    ['map', 'pool', '--depth', '2', '--columns', '8'],
  ])('%s %s: CAUTION begins what is said with the answer', (...words) =>
    expect(resultOf<{ caution: string }>(...words).caution.startsWith(SAID.model)).toBe(true),
  );

  test('CAUTION is in the help of the whole', () => expect(ran('--help').out).toContain(SAID.model));

  test('--above rate: RATE_MPMIN is the ascent that is too fast for the looks over the water', () =>
    expect(askOf({ ...USUAL_LOOKS, above: 'rate' }).above).toEqual({ kind: 'rate', mps: RATE_MPMIN / 60 }));
});
