import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();
const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const hash = (page: Page) => page.evaluate(() => location.hash);

test('kit and water of the ready setup that is flown has its address, and comes back after a reload', async () => {
  await visit('./#/column', async (page) => {
    await page.waitForSelector('practice-deck button.act');
    await name(page, 'I have read this').click();
    await page.locator('title-bar select').selectOption('two-piece');
    await page.waitForFunction(
      () => document.querySelector<HTMLSelectElement>('title-bar select')?.value === 'two-piece',
    );
    await name(page, 'more').click();
    await name(page, 'kit and water').click();
    await page.waitForSelector('kit-diver section');
    const needed = await page.locator('.lead-needed').innerText();
    await expect.poll(() => hash(page)).toBe('#/kit/two-piece');
    await page.reload();
    await page.waitForSelector('kit-diver section');
    await expect.poll(() => page.locator('.lead-needed').innerText()).toBe(needed);
    await expect.poll(() => page.locator('kit-diver select').inputValue()).toBe('two-piece');
  });
});

test.each([
  { width: 1280, height: 720 },
  { width: 360, height: 740 },
  { width: 740, height: 360 },
])('what is no setup is said in plain words, above the first caution, and leaves the address: %o', async (viewport) => {
  await visit(
    './#/kit/nonsense',
    async (page) => {
      await page.waitForSelector('problem-list aside');
      await expect
        .poll(() => page.locator('problem-list strong').innerText())
        .toBe('There is no setup called nonsense.');
      await expect.poll(() => hash(page)).toBe('#/');
      const [said, caution] = await Promise.all(
        ['problem-list aside', 'start-note aside'].map((box) => page.locator(box).boundingBox()),
      );
      const apart =
        said!.y + said!.height <= caution!.y ||
        caution!.y + caution!.height <= said!.y ||
        caution!.x + caution!.width <= said!.x;
      expect(apart).toBe(true);
    },
    { viewport },
  );
});
