import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const text = (page: Page, what: string, words: RegExp) =>
  expect.poll(() => page.locator(what).first().innerText(), { timeout: 15_000 }).toMatch(words);

describe('a lesson at the bench', () => {
  test('by one finger on a phone: asked before it moves, tried until it is seen, told beside what was said; a reload keeps the answers', async () => {
    await visit(
      './#/lessons/lump-and-tray',
      async (page) => {
        await text(page, 'question-sheet h2', /One lump of putty/);
        await name(page, 'I have read this').tap();
        await name(page, 'go on').tap();
        // Nothing tells the answer, and nothing can be let go.
        expect(await name(page, 'let go').count()).toBe(0);
        await name(page, 'Only the tray').tap();
        expect(await breaches(page)).toEqual([]);
        for (let i = 0; i < 3; i++) await name(page, 'lock it').tap();
        await text(page, '.task h2', /^The ball$/);
        expect(await name(page, 'five stones').count()).toBe(0);
        await name(page, 'spring balance').tap();
        for (let i = 0; i < 7; i++) await name(page, 'carry down').tap();
        await text(page, '.task h2', /^The tray$/);
        await page.reload();
        await text(page, '.task h2', /^The tray$/);
        await name(page, 'tray').tap();
        await name(page, 'let go').tap();
        await text(page, '.came', /met: The tray, the tray floats/);
        expect(await page.locator('.came').innerText()).toMatch(
          /You said Only the tray; it came to Only the tray: as you said\./,
        );
        expect(await breaches(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
        await name(page, 'lessons').tap();
        await page.waitForSelector('lesson-list');
        await expect.poll(() => page.url()).toMatch(/#\/lessons$/);
      },
      { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
    );
  });

  test('by a clicker from its first word to its last', async () => {
    await visit('./#/lessons/bottle-diver', async (page) => {
      await text(page, 'question-sheet h2', /A bottle with a bubble/);
      const seen = ['question-sheet h2', 'question-sheet h2', '.task h2', '.task h2', 'question-sheet h2', '.task h2'];
      for (const what of seen) {
        await page.waitForSelector(what);
        await page.keyboard.press('PageDown');
      }
      await text(page, '.came', /You passed it over; it came to 2\.0 kPa/);
    });
  });

  test('sketched first, then seen: the gas of the bag', async () => {
    await visit('./#/bench/deep', async (page) => {
      await name(page, 'sketch the curve first').click();
      await name(page, 'lock it').click();
      await name(page, 'to 20 m').click();
      await expect.poll(() => page.locator('bench-deep circle.sketched').count()).toBe(4);
      await text(page, 'bench-sheet .sentence', /Held at 20\.0 m/);
    });
  });
});
