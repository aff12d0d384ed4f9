// @vitest-environment happy-dom
import { beforeEach, describe, expect, test } from 'vitest';
import { keepAddress } from '../../src/app/address.ts';
import { FIRST_VIEW, type PageView } from '../../src/app/page-view.ts';
import type { Shell } from '../../src/app/shell.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

/** A shell that shows places and hears wishes, and a history that counts its steps. */
function kept(hash = '') {
  const steps: string[] = [hash];
  const location = { hash };
  const root = document.createElement('div');
  const heard: Wish[] = [];
  root.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  let popped = (): void => undefined;
  const write = (url: string) => (location.hash = url);
  const view = {
    location,
    history: {
      pushState: (_: unknown, __: string, url: string) => steps.push(write(url)),
      replaceState: (_: unknown, __: string, url: string) => steps.splice(-1, 1, write(url)),
    },
    addEventListener: (_: string, listener: () => void) => (popped = listener),
  };
  const shell = { window: view, root, view: FIRST_VIEW, onPlace: (): void => undefined };
  let lessonId: string | null = null;
  keepAddress(shell as unknown as Shell, () => lessonId);
  return {
    steps,
    heard,
    show(change: Partial<PageView>, lesson: string | null = lessonId) {
      lessonId = lesson;
      shell.view = { ...shell.view, ...change };
      shell.onPlace();
    },
    back() {
      steps.pop();
      location.hash = steps.at(-1)!;
      popped();
    },
  };
}

describe('keepAddress()', () => {
  let page: ReturnType<typeof kept>;
  beforeEach(() => {
    page = kept();
    page.show({ place: 'fly' });
  });

  test('the start that goes on to the column, and another setup in the same place, are no step', () => {
    expect(page.steps).toEqual(['#/column']);
    page.show({ place: 'fly', setupId: 'pool' });
    page.show({ place: 'kit' });
    page.show({ place: 'kit' });
    expect(page.steps).toEqual(['#/column', '#/kit']);
  });

  test('the end of a lesson is no step: back from the debrief leads out of the lesson', () => {
    page.show({ place: 'learn' });
    page.show({ place: 'lesson' }, 'first-dive');
    page.show({ place: 'debrief' });
    expect(page.steps).toEqual(['#/column', '#/lessons', '#/debrief']);
    page.back();
    expect(page.heard).toEqual([{ kind: 'place', place: 'learn' }]);
  });

  test('back asks for the place once, and what it brings is no further step', () => {
    page.show({ place: 'kit' });
    page.back();
    expect(page.heard).toEqual([{ kind: 'place', place: 'column' }]);
    page.show({ place: 'fly' });
    expect(page.steps).toEqual(['#/column']);
  });

  test('back to a lesson goes on with it, never begins it anew', () => {
    page.show({ place: 'lesson' }, 'first-dive');
    page.show({ place: 'kit' });
    page.back();
    expect(page.heard).toEqual([{ kind: 'lesson', id: 'first-dive', resumed: true }]);
  });

  test('a place that answers otherwise is said by the address in the same step: a debrief without a run', () => {
    const linked = kept('#/debrief');
    expect(linked.heard).toEqual([{ kind: 'place', place: 'debrief' }]);
    linked.show({ place: 'fly' });
    expect(linked.steps).toEqual(['#/column']);
  });

  test('nothing is written where nothing was linked and nothing was done', () => {
    const fresh = kept();
    fresh.show({ place: 'start' });
    expect(fresh.steps).toEqual(['']);
  });
});
