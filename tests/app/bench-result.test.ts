import { expect, test } from 'vitest';
import { benchResultOf } from '../../src/app/bench-result.ts';
import { BENCH_LESSONS, BenchInHand, benchPrompt, tryingNow, showingHands } from '../../src/lesson/bench.ts';
import { isResult } from '../../src/store/result.ts';

/** A lesson gone through: questions passed over, everything tried by the hands that its proof knows, looked at so often a second. */
function wentThrough(id: string, looksPerS = 30): BenchInHand {
  const hand = new BenchInHand(BENCH_LESSONS.find((one) => one.id === id)!);
  for (let steps = 0; steps < 50; steps++) {
    const now = tryingNow(hand.lesson, hand.run);
    if (benchPrompt(hand.lesson, hand.run)) hand.answer(null);
    else if (now) {
      const hands = showingHands(hand, now.step.id)!;
      while (tryingNow(hand.lesson, hand.run)?.step.id === now.step.id && !hands.gaveUp) {
        hands.work();
        hand.pass(1 / looksPerS);
      }
    } else return hand;
  }
  throw new Error(`${id} does not end`);
}

const resultOf = (hand: BenchInHand, at = '2026-01-02T03:04:05.000Z') =>
  benchResultOf(hand.lesson, hand.run, hand.result(), at);

test.each(BENCH_LESSONS.map(({ id }) => id))(
  'benchResultOf() %s is a result as the store takes it: all tried, nothing predicted',
  (id) => {
    const result = resultOf(wentThrough(id));
    expect(isResult({ ...result, id: 1 })).toBe(true);
    const hasDemand = BENCH_LESSONS.find((one) => one.id === id)!.rightAtLeast !== null;
    expect(result.predictions.right).toBe(0);
    expect(result.predictions.of).toBeGreaterThan(0);
    expect(result.demands.of - result.demands.met, 'predictions alone are not met').toBe(hasDemand ? 1 : 0);
    expect(result.verdict).toBe(hasDemand ? 'fail' : 'pass');
  },
);

test('benchResultOf() is of the same try when it is read again, and of another when seconds or answers differ', () => {
  const once = wentThrough('five-stones');
  const { flight, under } = resultOf(once);
  expect(resultOf(new BenchInHand(once.lesson, once.run), '2026-05-05T00:00:00.000Z').flight).toBe(flight);
  const again = resultOf(wentThrough('five-stones', 17));
  expect(again.flight).not.toBe(flight);
  expect(again.under).toBe(under);
  expect(resultOf(wentThrough('two-waters')).under).not.toBe(under);
});

test('benchResultOf() words and questions of a lesson do not change what is compared; its things and its aims do', () => {
  const hand = wentThrough('lump-and-tray');
  const { lesson, run } = hand;
  const underOf = (change: object) => benchResultOf({ ...lesson, ...change }, run, hand.result(), '2026-01-02').under;
  expect(
    underOf({ title: 'Another', waterAdds: 'Another', steps: lesson.steps.filter(({ kind }) => kind === 'try') }),
  ).toBe(underOf({}));
  expect(underOf({ bench: { ...lesson.bench, water: 'salt' } })).not.toBe(underOf({}));
  expect(underOf({ steps: [] })).not.toBe(underOf({}));
});
