import { describe, expect, test } from 'vitest';
import { addressOf, goesTo, hashOf, shownAddress, type Address } from '../../src/app/address.ts';
import { FIRST_VIEW, type PageView } from '../../src/app/page-view.ts';

describe('addresses', () => {
  test('goesTo(): a link goes to its own lesson or demonstration, and to none whose id only begins like it', () => {
    expect(['#/lessons/hover', '#/watch/hover--steady', '#/show/hover'].map((hash) => goesTo(hash, 'hover'))).toEqual([
      ...[true, true, true],
    ]);
    for (const hash of ['#/lessons/hover-deep', '#/watch/hover-deep--steady', '#/lessons', '#/column', ''])
      expect(goesTo(hash, 'hover')).toBe(false);
  });

  test.each<[string, Address]>([
    ['#/', { place: 'start' }],
    ['#/column', { place: 'column' }],
    ['#/lessons', { place: 'lessons' }],
    ['#/lessons/first-dive', { place: 'lesson', id: 'first-dive' }],
    ['#/kit', { place: 'kit', id: '' }],
    ['#/kit/two-piece', { place: 'kit', id: 'two-piece' }],
    ['#/debrief', { place: 'debrief' }],
    ['#/show/hilltop', { place: 'show', id: 'hilltop' }],
    ['#/tables', { place: 'tables' }],
    ['#/watch/hover--over-corrector', { place: 'watch', id: 'hover', by: 'over-corrector' }],
  ])('addressOf() and hashOf(): %s stands for a place, and the place for it', (hash, address) => {
    expect(addressOf(hash)).toEqual(address);
    expect(hashOf(address)).toBe(hash);
  });

  test.each([
    '',
    '#',
    '#/nowhere',
    '#/kit/a/b',
    '#/kit/../x',
    '#/lessons/<b>',
    '#/column/7',
    '#/KIT',
    '#/kit/%2e',
    '#/show',
    '#/show/a/b',
    '#/tables/hover',
    '#/watch/hover',
  ])('addressOf(): %s is the start', (hash) => expect(addressOf(hash)).toEqual({ place: 'start' }));

  test('shownAddress() names the lesson while it is flown, and the debrief after it', () => {
    expect(shownAddress({ ...FIRST_VIEW, place: 'lesson' }, 'first-dive')).toEqual({
      place: 'lesson',
      id: 'first-dive',
    });
    const bench = { lesson: { id: 'five-stones' } } as PageView['bench'];
    expect(shownAddress({ ...FIRST_VIEW, place: 'bench', bench }, null)).toEqual({
      place: 'lesson',
      id: 'five-stones',
    });
    expect(shownAddress({ ...FIRST_VIEW, place: 'debrief' }, 'first-dive')).toEqual({ place: 'debrief' });
    expect(shownAddress({ ...FIRST_VIEW, place: 'fly' }, null)).toEqual({ place: 'column' });
    const presenting = { shown: 'hilltop' } as PageView['presenting'];
    expect(shownAddress({ ...FIRST_VIEW, place: 'fly', presenting }, null)).toEqual({ place: 'show', id: 'hilltop' });
    expect(shownAddress({ ...FIRST_VIEW, place: 'learn', presenting }, null)).toEqual({ place: 'lessons' });
  });
});
