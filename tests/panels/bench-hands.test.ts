import { describe, expect, test } from 'vitest';
import { DeepDesk, TankDesk, type BenchAsk } from '../../src/bench/index.ts';
import { BENCH_LESSONS, BenchInHand, benchDone, benchPrompt, tryingNow } from '../../src/lesson/bench.ts';
import { HOOK_M, SHAPES, SQUEEZE_PA, carriedBy, columnBy, handAsk, type Way } from '../../src/panels/bench-hands.ts';

type Press = (hand: BenchInHand) => BenchAsk | null;

const enter: Press = (hand) => handAsk(hand.seen());
const arrow =
  (way: Way, coarse = false): Press =>
  (hand) =>
    carriedBy(hand.seen(), way, coarse);
const squeeze =
  (by: number): Press =>
  (hand) => ({ do: 'squeeze', pa: hand.seen().deep!.squeezePa + by * SQUEEZE_PA });
const press =
  (ask: BenchAsk): Press =>
  () =>
    ask;
const times = (count: number, one: Press) => Array.from({ length: count }, () => one);
const wait = 'wait';

/** What is pressed for each step to try: keys and buttons as the sheet has them, and nothing else. */
const PRESSES: Readonly<Record<string, Readonly<Record<string, readonly (Press | typeof wait)[]>>>> = {
  'lump-and-tray': {
    ball: [press({ do: 'balance' }), ...times(11, press({ do: 'hook', byM: HOOK_M }))],
    tray: [press({ do: 'balance' }), press({ do: 'shape', shape: SHAPES[1]!.shape }), enter, enter],
  },
  'five-stones': { 'let-go': [enter] },
  'weighing-in-water': {
    air: [press({ do: 'balance' })],
    under: times(20, arrow('down')),
    glass: [press({ do: 'balance' }), enter, press({ do: 'spout' }), wait, enter],
  },
  'two-waters': { fresh: [enter], salt: [press({ do: 'water', water: 'salt' })] },
  'rigid-and-flexible': {
    deeper: [...times(3, arrow('down', true)), wait, enter],
    shallower: [enter, ...times(3, arrow('up')), enter],
  },
  'bottle-diver': {
    down: [enter, ...times(6, squeeze(1)), wait, ...times(6, squeeze(-1))],
    lost: [enter, ...times(15, arrow('down')), wait, arrow('down', true), enter],
  },
};

describe('hands of the page', () => {
  test.each(BENCH_LESSONS.map((lesson) => [lesson.id, lesson] as const))(
    '%s: all that it asks for is set by keys and buttons',
    { timeout: 20_000 },
    (id, lesson) => {
      const hand = new BenchInHand(lesson);
      const pass = (seconds: number) => {
        for (let i = 0; i < seconds * 30; i++) hand.pass(1 / 30);
      };
      for (let turn = 0; turn < lesson.steps.length && !benchDone(lesson, hand.run); turn++) {
        if (benchPrompt(lesson, hand.run)) {
          hand.answer(null);
          continue;
        }
        const now = tryingNow(lesson, hand.run)!;
        for (const one of PRESSES[id]![now.step.id]!) {
          const ask = one === wait ? null : one(hand);
          if (ask) hand.hear(ask);
          pass(one === wait ? 2.5 : 0.1);
        }
        for (let s = 0; s < 40 && tryingNow(lesson, hand.run)?.step.id === now.step.id; s++) pass(1);
        expect(hand.run.tries.find((one) => one.id === now.step.id)?.done, now.step.id).toBe(true);
      }
      expect(benchDone(lesson, hand.run)).toBe(true);
    },
  );

  test('columnBy() comes to whole centimetres and metres, wherever the body was, and stays in the water', () => {
    const flask = new DeepDesk('bottle');
    flask.hear({ do: 'depth', depthM: 0.1372 });
    expect(columnBy(flask.view(), 1)).toEqual({ do: 'depth', depthM: expect.closeTo(0.15, 12) });
    expect(columnBy(flask.view(), -99)).toEqual({ do: 'depth', depthM: 0 });
    expect(columnBy(flask.view(), 99)).toEqual({ do: 'depth', depthM: 0.4 });
    expect(columnBy(new DeepDesk('deep').view(), 3)).toEqual({ do: 'depth', depthM: 8 });
  });

  test('handAsk() lets go what is held and takes what is not; carriedBy() goes five times as far with shift', () => {
    const desk = new TankDesk();
    const seen = () => ({ tank: desk.view(), deep: null });
    expect(handAsk(seen())).toEqual({ do: 'let-go' });
    desk.hear({ do: 'let-go' });
    expect(handAsk(seen())).toEqual({ do: 'take' });
    expect(carriedBy(seen(), 'left', false)).toEqual({ do: 'carry', byXM: -0.01, byYM: 0 });
    expect(carriedBy(seen(), 'down', true)).toEqual({ do: 'carry', byXM: 0, byYM: 0.05 });
    expect(carriedBy({ tank: null, deep: new DeepDesk('deep').view() }, 'left', false)).toBeNull();
  });
});
