import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { frameScriptMs } from './frame-script.ts';

const visit = useChromium();

const named = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });

/** A free dive that sinks at a quarter of the speed. */
async function sinking(page: Page): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await named(page, 'I have read this').click();
  await named(page, 'fly').click();
  await page.waitForSelector('[data-act=kick-up]');
  await page.keyboard.down('KeyK');
  await expect
    .poll(async () => parseFloat(await page.locator('lane-numbers .depth').innerText()), { timeout: 20_000 })
    .toBeGreaterThan(1.5);
  await page.keyboard.up('KeyK');
  await page.locator('title-bar .speeds button').first().click();
}

test('with a look live no frame takes more than 16 ms of script', async () => {
  await visit('./', async (page) => {
    await sinking(page);
    await page.keyboard.press('Digit1');
    const late: string[] = [];
    for (const key of ['Digit4', 'Digit5', 'Digit2']) {
      await page.keyboard.press(key);
      await page.waitForTimeout(1000);
      const sorted = await frameScriptMs(page, 5000);
      const over = sorted.filter((ms) => !(ms <= 16)).length;
      const at = (share: number) => sorted[Math.floor((sorted.length - 1) * share)]?.toFixed(1);
      const line = `${key}: ${over} of ${sorted.length} frames over 16 ms; p50 ${at(0.5)}, p95 ${at(0.95)}, longest ${at(1)} ms`;
      console.info(line);
      expect(sorted.length, line).toBeGreaterThanOrEqual(10);
      if (over > 0) late.push(line);
    }
    expect(late).toEqual([]);
  });
});

test('the time from a press to the diver is measured: a turn of the hands and a frame at the most, half of the time', async () => {
  await visit('./', async (page) => {
    await page.waitForSelector('practice-deck button.act');
    await page.waitForFunction(
      () => document.querySelector<HTMLElement & { presenting?: unknown }>('more-sheet')?.presenting,
    );
    await page.keyboard.press('KeyS');
    await page.waitForSelector('[data-act=kick-up]');
    for (let i = 0; i < 12; i++) {
      await page.keyboard.down(i % 2 ? 'KeyK' : 'KeyI');
      await page.waitForTimeout(90 + i * 7);
      await page.keyboard.up(i % 2 ? 'KeyK' : 'KeyI');
      await page.waitForTimeout(110);
    }
    await named(page, 'more').click();
    await page.locator('more-sheet summary', { hasText: 'How long' }).click();
    const words = await page.locator('more-sheet details[open]').innerText();
    const [, half, frame] = words.match(/half within (\d+) ms.*A frame takes (\d+) ms/s)!.map(Number);
    expect(half).toBeLessThanOrEqual(50 + 2 * frame!);
  });
});
