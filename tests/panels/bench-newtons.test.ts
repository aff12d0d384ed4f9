import { expect, test } from 'vitest';
import { TankDesk } from '../../src/bench/index.ts';
import { newtonsOf } from '../../src/panels/bench-newtons.ts';
import { tankSentence } from '../../src/panels/bench-words.ts';

/** The newtons of a sentence, with their digits. */
const newtonsIn = (sentence: string) => [...sentence.matchAll(/(\d+\.\d+) N/g)].map((found) => Number(found[1]));

function sunk(...asks: readonly Parameters<TankDesk['hear']>[0][]) {
  const desk = new TankDesk();
  for (const ask of asks) desk.hear(ask);
  desk.hear({ do: 'let-go' });
  for (let i = 0; i < 300; i++) desk.pass(1 / 30);
  return desk.view();
}

test('tankSentence() of the lump that has sunk: weight less water, as they are written, is what it is heavy by', () => {
  const view = sunk();
  const sentence = tankSentence(view);
  expect(sentence).toContain('lies on the bottom');
  const [heavy, weighs, water] = newtonsIn(sentence);
  expect(weighs! - water!).toBeCloseTo(heavy!, 9);
  // Rounded to one digit they would not add up, so two are needed here.
  const one = view.things[0]!;
  const tenth = (newtons: number) => Math.round(newtons * 10);
  expect(tenth(one.weightN) - tenth(one.buoyantN)).not.toBe(tenth(one.weightN - one.buoyantN));
});

test('newtonsOf(): of every stone and stuff that has come to rest under water the written forces add up, and none is naught', () => {
  const told: string[] = [];
  for (const set of ['stones', 'stuffs'] as const)
    for (const one of sunk({ do: 'set', set }).things) {
      if (one.freeboardM > 2e-3) continue;
      const { weight, water, left } = newtonsOf(one);
      if (Math.abs(one.buoyantN - one.weightN) < 2e-3 * one.weightN) continue;
      const [w, b, l] = [weight, water, left].map(parseFloat);
      expect(Math.abs(w! - b!), `${one.name}: ${weight} less ${water}`).toBeCloseTo(l!, 9);
      expect(l).toBeGreaterThan(0);
      told.push(one.name);
    }
  expect(told.length).toBeGreaterThan(4);
});

test('tankSentence() of what hangs under water: what balance and water carry comes to its weight as the three are written; the glass says what the water does', () => {
  for (const kg of [0.4, 0.5, 0.6, 0.7]) {
    const desk = new TankDesk();
    const mass = { do: 'dial', id: 'mass', value: kg } as const;
    for (const ask of [mass, { do: 'spout' }, { do: 'balance' }, { do: 'hook', byM: 0.22 }] as const) desk.hear(ask);
    let told = 0;
    for (let i = 0; i < 600; i++) {
      desk.pass(1 / 60);
      const view = desk.view();
      const sentence = tankSentence(view);
      if (!sentence.includes('which carries')) continue;
      const [pulls, weighs, lifts] = newtonsIn(sentence);
      expect(pulls! + lifts!, sentence).toBeCloseTo(weighs!, 9);
      const one = view.things[0]!;
      // Half of a tenth where tenths add up; else one hundredth.
      expect(Math.abs(pulls! - (one.weightN - one.buoyantN)), sentence).toBeLessThan(0.0501);
      expect(newtonsOf(one).beside(one.buoyantN * 1.0001)).toBe(newtonsOf(one).water);
      told++;
    }
    expect(told).toBeGreaterThan(100);
  }
});
