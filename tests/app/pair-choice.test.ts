import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import type { Setup } from '../../src/diver/index.ts';
import { USUAL_PAIR, rememberPair, rememberedPair, type PairChoice } from '../../src/app/pair-memory.ts';
import { shownFor } from '../../src/app/pair-zoom.ts';

/** A tab's storage. */
function shelf() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
}

describe('rememberedPair()', () => {
  const choice: PairChoice = {
    on: true,
    difference: 'former',
    by: 'steady',
    own: firstDive as Setup,
    words: '2 kg less lead',
  };

  test('is what was kept in this tab, its setup with it, until it is forgotten', () => {
    const tab = shelf();
    rememberPair(tab, choice);
    expect(rememberedPair(tab)).toEqual(choice);
    rememberPair(tab, null);
    expect(rememberedPair(tab)).toEqual(USUAL_PAIR);
  });

  test.each([
    ['nothing', null],
    ['no text of ours', '{"on'],
    ['nobody who flies', JSON.stringify({ ...choice, by: 'a stranger' })],
    ['a damaged setup', JSON.stringify({ ...choice, own: { format: 1 } })],
  ])('is the usual one where %s is kept', (_, text) => {
    const tab = shelf();
    if (text !== null) tab.setItem('midwater-pair', text);
    expect(rememberedPair(tab)).toEqual(USUAL_PAIR);
  });

  test('is the usual one where a browser keeps nothing', () => {
    expect(rememberedPair(null)).toEqual(USUAL_PAIR);
    expect(() => rememberPair(null, choice)).not.toThrow();
  });
});

describe('shownFor()', () => {
  test('has room for both as far as a picture goes, and never less', () => {
    for (let apartM = 0; apartM < 13.5; apartM += 0.25)
      for (const beforeM of [0, 7, 13, 17]) expect(shownFor(apartM, beforeM)).toBeGreaterThanOrEqual(apartM + 3.2);
  });

  test('rests while two divers drift about the edge of a step', () => {
    const changes = new Set<number>();
    let shownM = 7;
    for (let i = 0; i < 200; i++) {
      shownM = shownFor(3.8 + 0.3 * Math.sin(i), shownM);
      changes.add(shownM);
    }
    expect(changes.size).toBeLessThanOrEqual(2);
    const rested = shownM;
    for (let i = 0; i < 200; i++) expect(shownFor(3.8 + 0.3 * Math.sin(i), rested)).toBe(rested);
  });

  test('comes closer again once they are together', () => {
    expect(shownFor(0.2, 17)).toBe(7);
    expect(shownFor(30, 7)).toBe(17);
  });
});
