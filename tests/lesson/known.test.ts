import { describe, expect, test } from 'vitest';
import { knownOf, nextOf, type Known, type KnownFlight } from '../../src/lesson/index.ts';

const flight = (verdict: KnownFlight['verdict'], scores: readonly number[] = [], under = 'one'): KnownFlight => ({
  lessonId: 'hover',
  under,
  verdict,
  marks: scores.map((score, i) => ({ id: `mark-${i}`, score })),
  predictions: { right: 1, of: 2 },
});
const word = (...flights: KnownFlight[]) => knownOf(flights)?.word ?? null;

describe('knownOf()', () => {
  test('knows nothing of a lesson that was not flown', () => expect(knownOf([])).toBeNull());

  test.each<[string, readonly KnownFlight[], Known['word']]>([
    ['one secure flight', [flight('pass', [95])], 'secure'],
    ['a failed one', [flight('fail', [95])], 'not yet'],
    ['the weakest mark counts', [flight('pass', [95, 20])], 'not yet'],
    ['the median of three, one bad', [flight('pass', [95]), flight('fail', [10]), flight('pass', [96])], 'secure'],
    ['passed before, not now', [flight('pass', [95]), flight('pass', [95]), flight('fail', [95])], 'nearly'],
    ['without marks: each passed', [flight('pass'), flight('pass')], 'secure'],
    ['without marks: one of two', [flight('fail'), flight('pass')], 'nearly'],
    ['without marks: none', [flight('fail'), flight('fail')], 'not yet'],
    ['older than three are gone', [flight('fail'), flight('pass'), flight('pass'), flight('pass')], 'secure'],
  ])('%s: the word follows', (_, flights, expected) => expect(word(...flights)).toBe(expected));

  test('flights under another setup are not put together, and say nothing', () => {
    expect(knownOf([flight('fail', [5], 'other'), flight('pass', [95])])).toEqual({
      word: 'secure',
      of: 1,
      predictions: { right: 1, of: 2 },
    });
  });
});

describe('nextOf()', () => {
  const way = [{ id: 'a' }, { id: 'b' }, { id: 'c' }];
  const known = (words: Record<string, Known['word']>) => (id: string) =>
    words[id] ? { word: words[id], of: 1, predictions: { right: 0, of: 0 } } : null;

  test('is the first that is not yet known and may be begun, then what is nearly secure, and nothing once all are', () => {
    expect(nextOf(way, known({}), () => true)?.id).toBe('a');
    expect(nextOf(way, known({ a: 'nearly' }), () => true)?.id).toBe('b');
    expect(nextOf(way, known({ a: 'not yet', b: 'secure' }), () => true)?.id).toBe('a');
    expect(nextOf(way, known({ a: 'secure', b: 'nearly', c: 'secure' }), () => true)?.id).toBe('b');
    expect(nextOf(way, known({ a: 'secure' }), (id) => id !== 'b')?.id).toBe('c');
    expect(nextOf(way, known({ a: 'secure', b: 'secure', c: 'secure' }), () => true)).toBeNull();
  });
});
