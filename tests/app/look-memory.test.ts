import { describe, expect, test } from 'vitest';
import { rememberLooks, rememberedLooks } from '../../src/app/look-memory.ts';
import type { Shelf } from '../../src/app/remembered.ts';
import { USUAL_LOOKS, type LookChoice } from '../../src/panels/looks.ts';

function shelf(text: string | null): Shelf & { text: string | null } {
  return {
    text,
    getItem() {
      return this.text;
    },
    setItem(_key, value) {
      this.text = value;
    },
  };
}

describe('rememberedLooks()', () => {
  test('gives back what rememberLooks() kept', () => {
    const place = shelf(null);
    const chosen: LookChoice = {
      reach: true,
      look: 'map',
      whole: true,
      bands: false,
      ahead: false,
      across: 'lead',
      reactionS: 2.5,
      leastL: 2,
      mostL: 5,
      below: 18,
      above: 'rate',
    };
    rememberLooks(place, chosen);
    expect(rememberedLooks(place, USUAL_LOOKS)).toEqual(chosen);
  });

  test.each([
    null,
    'not json',
    '7',
    '{"look":"colours","across":"wind","reactionS":-1,"leastL":"2","mostL":99,"below":-3,"above":"never"}',
    '{"leastL":5,"mostL":5.2}',
  ])('takes the usual for %s', (text) => expect(rememberedLooks(shelf(text), USUAL_LOOKS)).toEqual(USUAL_LOOKS));

  test('lives with storage that refuses', () => {
    const refuse = () => {
      throw new Error('refused');
    };
    const refusing: Shelf = { getItem: refuse, setItem: refuse };
    expect(rememberedLooks(refusing, USUAL_LOOKS)).toEqual(USUAL_LOOKS);
    expect(() => rememberLooks(refusing, USUAL_LOOKS)).not.toThrow();
    expect(() => rememberLooks(null, USUAL_LOOKS)).not.toThrow();
  });
});
