import { expect, test } from 'vitest';
import { sayingTrouble, troubleWords } from '../../src/app/trouble-words.ts';
import type { Shell } from '../../src/app/shell.ts';

test.each([
  'Failed to fetch dynamically imported module: https://example.org/assets/show-DW2x.js',
  'error loading dynamically imported module: https://example.org/assets/show-DW2x.js',
  'Importing a module script failed.',
  'Unable to preload CSS for /assets/show-DW2x.css',
])('troubleWords() of %s say what can be done, and no address', (message) => {
  const words = troubleWords(new TypeError(message));
  expect(words).toMatch(/not loaded. Check the connection and try again, or load the page again\.$/);
  expect(words).not.toContain('assets');
});

test('troubleWords() of anything else are its own, without the name of who threw', () => {
  expect(troubleWords(new RangeError('there is no lesson x'))).toMatch(/: there is no lesson x$/);
  expect(troubleWords('Dives: no more')).toMatch(/: no more$/);
});

test('sayingTrouble() says what fails where one is, and nothing of what works', async () => {
  const shown: unknown[] = [];
  const shell = { view: { place: 'learn' }, show: (change: unknown) => void shown.push(change) } as unknown as Shell;
  await sayingTrouble(shell, Promise.resolve());
  expect(shown).toEqual([]);
  await sayingTrouble(shell, Promise.reject(new Error('it is gone')));
  expect(shown).toEqual([{ place: 'learn', trouble: troubleWords(new Error('it is gone')) }]);
});
