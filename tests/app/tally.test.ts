import { expect, test } from 'vitest';
import { Tally } from '../../src/app/tally.ts';

const options = ['up', 'down', 'stays', 'back'].map((id) => ({ id, words: id }));
const ask = (id: string) => ({ kind: 'choice', id, question: '?', options }) as const;

test('Tally says what most hands said, and nothing where two are even or nobody counted', () => {
  const tally = new Tally();
  const prompt = ask('one');
  tally.asked(prompt);
  expect(tally.said(prompt)).toBeNull();
  tally.count(1);
  tally.count(2);
  expect(tally.said(prompt)).toBeNull();
  tally.count(2);
  expect([tally.counts, tally.said(prompt)]).toEqual([[0, 1, 2, 0], 'stays']);
});

test('Tally counts no hand for a letter that stands for no answer, and counts it again where it stands for one', () => {
  const tally = new Tally();
  tally.asked({ ...ask('three'), options: options.slice(0, 3) });
  for (const at of [2, 3, 3]) tally.count(at);
  expect(tally.counts).toEqual([0, 0, 1, 0]);
  tally.asked(ask('four'));
  tally.count(3);
  expect(tally.counts).toEqual([0, 0, 0, 1]);
});

test('Tally counts anew for another question, keeps counting for the same, and chooses no option that is not there', () => {
  const tally = new Tally();
  tally.asked(ask('one'));
  tally.count(3);
  tally.asked(ask('one'));
  tally.asked(null);
  expect(tally.counts).toEqual([0, 0, 0, 1]);
  expect(tally.said({ ...ask('one'), options: options.slice(0, 2) })).toBeNull();
  tally.asked(ask('two'));
  expect(tally.counts).toEqual([0, 0, 0, 0]);
});

test('Tally brings hands back for the question they were counted for, and for no other', () => {
  const [one, two] = [ask('one'), ask('two')];
  const counted = new Tally();
  counted.asked(one);
  counted.count(2);
  for (const [prompt, counts] of [
    [one, [0, 0, 1, 0]],
    [two, [0, 0, 0, 0]],
  ] as const) {
    const tally = new Tally();
    tally.bringBack(counted.left);
    tally.asked(prompt);
    expect(tally.counts).toEqual(counts);
  }
});
