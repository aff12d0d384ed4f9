import { expect, test } from 'vitest';
import { stuckWords } from '../../src/app/stuck-words.ts';

test('a valve that sticks is told where it begins and where it ends, in order; what the run itself tells is not', () => {
  expect(
    stuckWords([
      { kind: 'vent-shut', atS: 12, forS: 15 },
      { kind: 'inflator-open', atS: 10, forS: 8 },
      { kind: 'nudge', atS: 11, upNs: 40 },
      { kind: 'current', atS: 3, downMps: 0.2, forS: 10 },
    ]),
  ).toEqual([
    { atS: 10, words: 'inflator stuck open' },
    { atS: 12, words: 'vent stuck shut' },
    { atS: 18, words: 'inflator shut again' },
    { atS: 27, words: 'vent works again' },
  ]);
});
