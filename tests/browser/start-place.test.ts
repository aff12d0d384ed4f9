import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const at = (page: Page, place: string) => page.waitForSelector(`html[data-place=${place}]`, { state: 'attached' });
const hash = (page: Page) => page.evaluate(() => location.hash);
const depth = (page: Page) => page.locator('lane-numbers .depth').innerText();

test('the start is one press away from everywhere; a dive stands there, and fly and back find it as it was left', async () => {
  await visit('./', async (page) => {
    await page.waitForSelector('practice-deck button.act');
    await name(page, 'I have read this').click();
    await page.keyboard.down('KeyK');
    await at(page, 'fly');
    await page.waitForTimeout(1500);
    await page.keyboard.up('KeyK');
    const back = async (press: () => Promise<void>) => {
      await press();
      await at(page, 'start');
      await expect.poll(() => hash(page)).toBe('#/');
      await expect.poll(() => page.locator('title-bar h1').innerText()).toBe('Your dive stands still.');
    };
    const byKey = () => page.keyboard.press('F4');
    await back(() => name(page, 'start').click());
    const left = await depth(page);
    // No key flies from here.
    await page.keyboard.press('KeyK');
    await page.waitForTimeout(400);
    expect([await depth(page), await page.locator('practice-deck').count()]).toEqual([left, 0]);
    await name(page, 'fly').click();
    await page.waitForSelector('.freeze:has-text("go on")');
    expect(await depth(page)).toBe(left);
    for (const [place, reach] of [
      ['bench', () => page.keyboard.press('F2')],
      ['kit', () => name(page, 'kit and water').click()],
      ['learn', () => name(page, 'learn in order').click()],
    ] as const) {
      await back(byKey);
      await reach();
      await at(page, place);
    }
    await back(() => name(page, 'start').click());
    await page.goBack();
    await at(page, 'learn');
    // The dive of a demonstration is nobody's: after it a diver floats.
    await page.goto('./#/show/hilltop');
    await page.waitForSelector('presenter-strip section');
    await byKey();
    await page.waitForSelector('.afloat-words');
    await page.keyboard.press('KeyK');
    await at(page, 'fly');
  });
});
