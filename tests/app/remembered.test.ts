import { describe, expect, test } from 'vitest';
import { remember, remembered, type Shelf } from '../../src/app/remembered.ts';
import { USUAL_SETTINGS } from '../../src/panels/settings.ts';

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

describe('remembered()', () => {
  test('gives back what remember() kept', () => {
    const place = shelf(null);
    const chosen = {
      ...USUAL_SETTINGS,
      theme: 'dark',
      units: 'imperial',
      cautionRead: true,
      keys: { KeyI: 'KeyQ' },
      pads: { 'button 8': 'button 9 and button 6' },
      sound: true,
      soundVolume: 0.3,
      captions: true,
    } as const;
    expect(remember(place, chosen)).toBe(true);
    expect(remembered(place)).toEqual(chosen);
  });

  test.each([
    null,
    'not json',
    '3',
    '[]',
    '{"theme":"pink","units":7,"toggles":"yes","keys":{"KeyI":"no key"},"pads":{"button 8":"<b>"},"soundVolume":7}',
    '{"keys":"KeyI"}',
  ])('takes the usual settings for %s', (text) => expect(remembered(shelf(text))).toEqual(USUAL_SETTINGS));

  test('lives without storage, and with one that refuses', () => {
    const refusing: Shelf = {
      getItem: () => {
        throw new Error('refused');
      },
      setItem: () => {
        throw new Error('refused');
      },
    };
    expect(remembered(null)).toEqual(USUAL_SETTINGS);
    expect(remembered(refusing)).toEqual(USUAL_SETTINGS);
    expect(remember(refusing, USUAL_SETTINGS)).toBe(false);
    expect(remember(null, USUAL_SETTINGS)).toBe(false);
  });
});
