import { describe, expect, test } from 'vitest';
import temperate from '../../src/diver/setups/temperate-sea.yaml';
import heavy from '../../src/diver/setups/two-piece-heavy.yaml';
import type { Setup } from '../../src/diver/index.ts';
import { TICKS_PER_S } from '../../src/dive/index.ts';
import { CountedMemory } from '../../src/app/counted-memory.ts';
import { DEMONSTRATIONS } from '../../src/app/demonstrations.ts';
import { Showing } from '../../src/app/showing.ts';

const SETUPS: Readonly<Record<string, unknown>> = { 'temperate-sea': temperate, 'two-piece-heavy': heavy };
const fetch = (id: string) => Promise.resolve(SETUPS[id] as Setup);
const demonstration = (id: string) => DEMONSTRATIONS.find((one) => one.id === id)!;

/** Walks on by next alone until something is asked. */
function toQuestion(showing: Showing): void {
  while (!showing.prompt)
    if (showing.runs) letRun(showing);
    else showing.next();
}

function letRun(showing: Showing): void {
  const { step } = showing;
  for (let s = 0; s < 120 && showing.step === step; s++)
    showing.flight.run(
      TICKS_PER_S,
      () => new Set(),
      () => showing.goOn(),
    );
}

describe('a question of a demonstration', () => {
  test('The hilltop, both ways: the line of the true letter ends where the run then comes to', async () => {
    const showing = await Showing.begin(demonstration('hilltop'), fetch);
    for (const right of ['C', 'D']) {
      toQuestion(showing);
      const { lines, overS, comesM } = showing.foreseen!;
      expect(lines.map(({ letter }) => letter)).toEqual(['A', 'B', 'C', 'D']);
      expect(overS).toBe(25);
      showing.next();
      letRun(showing);
      expect(showing.words).toMatch(new RegExp(`^${right}: `));
      const line = lines.find(({ letter }) => letter === right)!;
      expect(line.depthsM.at(-1)).toBeCloseTo(showing.flight.dive.state.depthM, 1);
      expect(comesM.at(-1)).toBe(line.depthsM.at(-1));
    }
  });

  test('Runaway descent: lines that leave with one slope; the straight one is at 20 m, the true one where the run passes by', async () => {
    const showing = await Showing.begin(demonstration('runaway-descent'), fetch);
    toQuestion(showing);
    const { lines, overS, comesM, fromM } = showing.foreseen!;
    const fromS = showing.flight.dive.tick / TICKS_PER_S;
    const { speedMps } = showing.flight.dive.state;
    expect(lines.map(({ letter, id }) => letter + id)).toEqual(['Afaster', 'Bsteady', 'Cslower', 'Dstops']);
    const [faster, steady, slower, stops] = lines.map(({ depthsM }) => depthsM);
    // All bend evenly from the speed of the moment: the second step says the bend, and the first less half of it the speed.
    for (const depthsM of [faster!, steady!, slower!, stops!]) {
      const [first, second] = [depthsM[1]! - depthsM[0]!, depthsM[2]! - depthsM[1]!];
      expect((first - (second - first) / 2) * (10 / overS)).toBeCloseTo(speedMps, 9);
    }
    expect(Math.abs(steady!.at(-1)! - 20)).toBeLessThan(speedMps / 2 + 1e-9);
    expect(stops!.at(-1)! - fromM).toBeCloseTo((steady!.at(-1)! - fromM) / 2, 9);
    // Who gets steeper goes as far beyond the straight line as who gets flatter stays behind it.
    expect(faster!.at(-1)! + slower!.at(-1)!).toBeCloseTo(2 * steady!.at(-1)!, 9);
    expect(faster!.at(-1)! - steady!.at(-1)!).toBeGreaterThan(0.35);
    showing.next();
    letRun(showing);
    expect(showing.words).toMatch(/^A: /);
    const { recording } = showing.flight.dive;
    const half = recording.at(Math.round((fromS + overS / 2) * 10), 'depthM');
    expect(comesM[5]!).toBeCloseTo(half, 1);
    expect(comesM.at(-1)).toBeCloseTo(faster!.at(-1)!, 9);
  });

  test('is not drawn where it is asked who of two comes first', async () => {
    const showing = await Showing.begin(demonstration('two-kilograms'), fetch);
    toQuestion(showing);
    expect([showing.prompt === null, showing.foreseen]).toEqual([false, null]);
  });

  test('keeps what a class said over its run and a reload, and forgets it a step back and with the next diver', async () => {
    const showing = await Showing.begin(demonstration('hilltop'), fetch);
    toQuestion(showing);
    const { lines } = showing.foreseen!;
    showing.lock('down', 14);
    showing.next();
    showing.flight.run(
      5 * TICKS_PER_S,
      () => new Set(),
      () => showing.goOn(),
    );
    expect([showing.said?.id, showing.said?.hands, showing.said?.tick]).toEqual(['down', 14, 0]);
    expect(showing.said!.foreseen.lines).toEqual(lines);
    const left = JSON.parse(JSON.stringify(showing.place)) as typeof showing.place;
    const again = await Showing.begin(demonstration('hilltop'), fetch, left);
    expect(again.said).toEqual(showing.said);
    letRun(showing);
    expect(showing.said?.id).toBe('down');
    showing.next();
    expect(showing.said).toBeNull();
    again.previous();
    expect([again.prompt === null, again.said]).toEqual([false, null]);
  });
});

describe('CountedMemory', () => {
  function tab(kept: string | null = null): Window {
    const sessionStorage = { getItem: () => kept, setItem: (_: string, value: string) => void (kept = value) };
    return { sessionStorage } as unknown as Window;
  }

  test('knows the hands of the last answer to each question, and none where somebody answered alone after that', () => {
    const view = tab();
    new CountedMemory(view).keep('hover', 'drift', 14);
    new CountedMemory(view).keep('hilltop', 'drift', 3);
    expect([new CountedMemory(view).hands('hover', 'drift'), new CountedMemory(view).hands('hover', 'breath')]).toEqual(
      [14, 0],
    );
    new CountedMemory(view).keep('hover', 'drift', 0);
    expect([
      new CountedMemory(view).hands('hover', 'drift'),
      new CountedMemory(view).hands('hilltop', 'drift'),
    ]).toEqual([0, 3]);
  });

  test.each(['', '{', 'null', '7', '{"hover/drift":"many"}', '{"hover/drift":-2}'])(
    'counts nothing where %j was left',
    (kept) => {
      expect(new CountedMemory(tab(kept)).hands('hover', 'drift')).toBe(0);
    },
  );
});
