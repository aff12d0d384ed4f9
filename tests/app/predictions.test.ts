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

  test('is not drawn where its answers are speeds, or whose diver comes first', async () => {
    for (const id of ['two-kilograms', 'runaway-descent']) {
      const showing = await Showing.begin(demonstration(id), fetch);
      toQuestion(showing);
      expect([showing.prompt === null, showing.foreseen]).toEqual([false, null]);
    }
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
