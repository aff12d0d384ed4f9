import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { PairChosen, choiceOf, keptOf } from '../../src/app/pair-chosen.ts';
import { differencesFor, isDifference } from '../../src/app/pair-difference.ts';
import { USUAL_PAIR, rememberPair, rememberedPair, type PairChoice } from '../../src/app/pair-memory.ts';
import type { KeptPair } from '../../src/store/index.ts';

/** A tab's storage. */
function shelf(): Storage {
  const kept = new Map<string, string>();
  const tab = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
  return tab as Storage;
}

const setup = firstDive as Setup;
const two: PairChoice = { on: true, difference: 'lead:4', by: 'idler', own: null, words: '' };
const LEAD: KeptPair = { difference: 'lead:4', by: 'idler', own: null, words: '' };
const FORMER: KeptPair = { difference: 'former', by: 'hands', own: setup, words: '2 kg less lead' };
/** A program's dives, as far as they say who dives beside. */
const dives = (pair?: KeptPair | null) => ({ pair: pair as KeptPair | null | undefined });

describe('PairChosen', () => {
  test('tells the dive whom the tab remembers, and of every other choice', () => {
    const tab = shelf();
    rememberPair(tab, two);
    const of = dives();
    const chosen = new PairChosen(of, tab);
    expect(of.pair).toEqual(LEAD);
    chosen.choose({ difference: 'former', own: setup, words: '2 kg less lead', by: 'hands' });
    expect(of.pair).toEqual(FORMER);
    expect(rememberedPair(tab)).toMatchObject({ on: true, difference: 'former' });
    chosen.choose({ on: false });
    expect(of.pair).toBeNull();
  });

  test('takes whom a dive brings back, in a tab that knows of nobody, and nothing is new about him', () => {
    const tab = shelf();
    const of = dives(FORMER);
    const chosen = new PairChosen(of, tab);
    expect(chosen.broughtBack()).toBe('');
    expect(chosen.choice).toEqual({ on: true, ...FORMER });
    expect(of.pair).toBe(FORMER);
    expect(chosen.broughtBack()).toBeNull();
    expect(rememberedPair(tab)).toEqual({ on: true, ...FORMER });
  });

  test('a dive that was flown alone comes back alone, though the tab has a second diver', () => {
    const tab = shelf();
    rememberPair(tab, two);
    const of = dives();
    const chosen = new PairChosen(of, tab);
    of.pair = null;
    expect(chosen.broughtBack()).toBe('');
    expect(chosen.choice).toEqual({ ...two, on: false });
    expect(rememberedPair(tab).on).toBe(false);
  });

  test('where nobody was chosen and nobody comes back, nothing is written', () => {
    const tab = shelf();
    const chosen = new PairChosen(dives(null), tab);
    expect(chosen.broughtBack()).toBeNull();
    expect(chosen.choice).toEqual(USUAL_PAIR);
    expect(tab.getItem('midwater-pair')).toBeNull();
  });

  test.each([
    ['a stranger who flies', { ...LEAD, by: 'a stranger' }],
    ['a difference of nothing we know', { ...LEAD, difference: 'fins:2' }],
    ['lead beyond what is offered', { ...LEAD, difference: 'lead:4000' }],
    ['the one before, without his setup', { ...FORMER, own: null }],
  ])('%s is said, and the dive is alone, in its record too', (_, pair) => {
    const of = dives(pair);
    const chosen = new PairChosen(of, shelf());
    expect(chosen.broughtBack()).toMatch(/is not known here: it came back alone\.$/);
    expect(chosen.choice.on).toBe(false);
    expect(of.pair).toBeNull();
  });
});

describe('keptOf() and choiceOf()', () => {
  test('say the same both ways, and a setup of one’s own that is not in use stays with the tab', () => {
    const before = { ...two, own: setup };
    expect(keptOf(before)).toEqual(LEAD);
    expect(choiceOf(LEAD, before)).toEqual(before);
    expect(choiceOf(FORMER, USUAL_PAIR)).toEqual({ on: true, ...FORMER });
  });

  test('nobody is kept who could not be had again', () => {
    expect(keptOf({ ...two, on: false })).toBeNull();
    expect(keptOf({ ...two, difference: 'former' })).toBeNull();
  });
});

test('isDifference() knows every difference that is offered', () => {
  const offered = differencesFor({ rig: rigOf(setup), setup }, setup).flatMap(({ options }) => options);
  expect(offered.length).toBeGreaterThan(20);
  for (const { id } of offered) expect(isDifference(id), id).toBe(true);
  for (const id of ['', 'lead', 'lead:', 'lead:0', 'jacket:9', 'ready:nobody', 'change:', 'own:2'])
    expect(isDifference(id), id).toBe(false);
});
