import type { Page } from 'playwright';
import { pass } from './made-time.ts';

const named = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });

/** Places and states of whoever chooses what to learn, after the first screen. */
export const LEARN_STATES: readonly { readonly state: string; readonly reach: (page: Page) => Promise<unknown> }[] = [
  {
    state: 'path through the lessons',
    async reach(page) {
      await named(page, 'I have read this').click();
      await named(page, 'learn in order').click();
      await page.getByRole('button', { name: /^Self-study/ }).click();
      await page.waitForSelector('lesson-list .stops');
    },
  },
  {
    state: 'tables of how the marks were tried',
    async reach(page) {
      await named(page, 'see the tables').click();
      await page.waitForSelector('mark-tables table');
    },
  },
  {
    state: 'lesson at the bench',
    async reach(page) {
      await page.goto('./#/lessons/five-stones');
      await page.waitForSelector('bench-sheet section');
    },
  },
  {
    state: 'lesson that a simulated diver flies',
    async reach(page) {
      await page.goto('./#/watch/hover--latecomer');
      await page.waitForSelector('html[data-place=lesson]', { state: 'attached' });
      await pass(page, 2);
      await page.waitForSelector('flown-by button');
    },
  },
];
