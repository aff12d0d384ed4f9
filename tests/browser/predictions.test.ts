import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();
const output = (page: Page) => page.locator('question-sheet output').innerText();
const pin = (page: Page) => page.locator('.water-pin');

/** Lets time pass until a page reads so: it is told by its frames. */
async function until(page: Page, read: () => Promise<string>, wanted: RegExp, stepS = 0.3): Promise<void> {
  await expect
    .poll(async () => {
      await pass(page, stepS);
      return read();
    })
    .toMatch(wanted);
}

test('a depth is said by buttons, arrow keys and the pin in the water, all in step; what came of it is said as its moment passes, also after a reload', async () => {
  await visit(
    './#/lessons/hover',
    async (page) => {
      const spoken = () => page.locator('[role=status].hidden').innerText();
      await page.waitForSelector('question-sheet output');
      await page.getByRole('button', { name: 'I have read this' }).click();
      await until(page, () => output(page), /^8\.0 m$/);
      await until(page, async () => String(await pin(page).count()), /^1$/);
      const place = async () => (await pin(page).boundingBox())!.y;
      const before = await place();
      await page.getByRole('button', { name: 'more by 0.5 m' }).click();
      await until(page, () => pin(page).getAttribute('aria-valuetext').then(String), /^8\.5 m$/);
      await expect.poll(async () => (await pass(page, 0.1), place())).toBeGreaterThan(before + 8);
      await pin(page).focus();
      for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowUp');
      await until(page, () => output(page), /^8\.0 m$/);
      expect(Math.abs((await place()) - before)).toBeLessThanOrEqual(1);
      // Dragged by two metres of the scale beside it.
      const { x, y, width } = (await pin(page).boundingBox())!;
      await page.mouse.move(x + width / 2, y + width / 2);
      await page.mouse.down();
      await page.mouse.move(x + width / 2, y + width / 2 - 40);
      await page.mouse.up();
      await until(page, () => output(page), /^[67]\.\d m$/);
      const saidM = parseFloat(await output(page));
      expect(await breaches(page)).toEqual([]);
      await page.locator('question-sheet .main').click();
      await until(page, () => page.locator('question-sheet h2').innerText(), /gentlest/);
      expect(await pin(page).count()).toBe(0);
      // Nothing is drawn of what is no motion, and its answers bear no letters.
      expect(await page.locator('question-sheet .letter').count()).toBe(0);
      await page.getByRole('button', { name: 'A breath' }).click();
      await page.locator('question-sheet .main').click();
      await pass(page, 4);
      await page.waitForTimeout(900);
      await page.reload();
      await page.locator('title-bar .freeze').click();
      await until(page, spoken, /^you said/);
      const words = /^you said (\d\.\d) m; as asked it came to (\d\.\d) m: (\d\.\d) m deeper$/.exec(await spoken())!;
      expect(Number(words[1])).toBe(saidM);
      expect(Math.abs(Number(words[2]) - saidM - Number(words[3]))).toBeLessThan(0.11);
    },
    { madeTime: true, viewport: { width: 1280, height: 720 } },
  );
});

test('where a fan is drawn its answers bear letters and say so, in a class and alone', async () => {
  await visit(
    './#/show/hilltop',
    async (page) => {
      const letters = () => page.locator('question-sheet .letter').allInnerTexts();
      await page.waitForSelector('presenter-strip section');
      await pass(page, 0.5);
      await page.keyboard.press('PageDown');
      await until(page, async () => (await letters()).join(''), /^ABCD$/);
      expect(await page.locator('question-sheet .drawn').innerText()).toContain('25 s ahead');
    },
    { madeTime: true, viewport: { width: 1280, height: 720 } },
  );
});
