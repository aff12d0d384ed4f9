import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();
const template = readFileSync(new URL('../../lessons/bench/template.yaml', import.meta.url), 'utf8');

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
        await text(page, '.task h2', /^The lump$/);
        expect(await name(page, 'five stones').count()).toBe(0);
        await name(page, 'spring balance').tap();
        for (let i = 0; i < 7; i++) await name(page, 'carry down').tap();
        await text(page, '.task h2', /^The tray$/);
        await page.reload();
        await text(page, '.task h2', /^The tray$/);
        await name(page, 'tray').tap();
        await name(page, 'let go').tap();
        await text(page, '.came', /met: the tray floats/);
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
      await text(page, '.came', /What was asked[^]*It came to 2\.0 kPa/);
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

  test('a file of one’s own: what is wrong is told with its line; mended, it is begun, tried, and there after a reload', async () => {
    await visit('./#/lessons', async (page) => {
      const open = (text: string) =>
        page
          .locator('lesson-list input[type=file]')
          .setInputFiles({ name: 'mine.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
      await page.waitForSelector('lesson-list input[type=file]', { state: 'attached' });
      await open(template.replace('what: hung,', 'what: hungg,'));
      await text(page, 'problem-list', /mine\.yaml was not opened: one problem.*hung/s);
      await open(template);
      await text(page, 'lesson-list', /It can be begun, and its proof comes as it says/);
      await name(page, 'begin My lesson at the bench').click();
      await text(page, 'question-sheet h2', /How much room does it take up/);
      await name(page, 'lock it').click();
      await text(page, '.task h2', /^Under water$/);
      await page.reload();
      await text(page, '.task h2', /^Under water$/);
      await name(page, 'go on without').click();
      await text(page, '.came', /not met: Under water/);
      // What comes next is at hand: nothing is scrolled to it.
      for (const words of ['again', 'lessons'])
        expect(
          await name(page, words).evaluate((one) => {
            const { bottom } = one.closest('.deck')!.getBoundingClientRect();
            return one.getBoundingClientRect().bottom <= bottom + 1;
          }),
        ).toBe(true);
    });
  });
});
