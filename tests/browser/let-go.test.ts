import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { keepFlight } from './kept-flight.ts';

const visit = useChromium();

/** What the deck shows as held down. */
const held = (page: Page) =>
  page.locator('practice-deck .is-down').evaluateAll((all) => all.map((one) => (one as HTMLElement).dataset.act));

test('the first press of all lasts as long as the pointer is down, though the whole deck comes under it', async () => {
  await visit('./', async (page) => {
    await page.waitForSelector('practice-deck button.act');
    const box = (await page.locator('[data-act=vent]').boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.waitForSelector('[data-act=kick-up]');
    expect(await held(page)).toEqual(['vent']);
    await page.mouse.up();
    await expect.poll(() => held(page)).toEqual([]);
  });
});

test('a key that goes up at the bench or among the lessons has let go, and the lessons have their own title', async () => {
  await visit('./', async (page) => {
    await page.waitForSelector('practice-deck button.act');
    for (const [covers, there, back] of [
      ['bench-sheet .deck', () => page.keyboard.press('F2'), () => page.getByRole('button', { name: 'leave' }).click()],
      [
        'lesson-list section',
        () => page.evaluate(() => (location.hash = '#/lessons')),
        () => page.getByRole('button', { name: 'back to the water' }).click(),
      ],
    ] as const) {
      await page.keyboard.down('KeyI');
      await expect.poll(() => held(page)).toEqual(['add']);
      await there();
      await page.waitForSelector(covers);
      await page.keyboard.up('KeyI');
      await back();
      await page.waitForSelector('html[data-place=fly]', { state: 'attached' });
      await expect.poll(() => held(page)).toEqual([]);
    }
    await page.evaluate(() => (location.hash = '#/show/hilltop'));
    await page.waitForFunction(() => /neutral at 10\sm/.test(document.querySelector('h1')?.textContent ?? ''));
    await page.evaluate(() => (location.hash = '#/lessons'));
    await page.waitForSelector('lesson-list section');
    await expect.poll(() => page.locator('h1').innerText()).toBe('Lessons');
  });
});

test('a debrief is scrolled by arrows, and keeps a word that is left in the middle', async () => {
  await visit('./#/column', async (page) => {
    await page.waitForFunction(async () => (await indexedDB.databases()).some(({ name }) => name === 'midwater'));
    await page.waitForSelector('practice-deck button.act');
    await page.getByRole('button', { name: 'I have read this' }).click();
    await keepFlight(page, 'first-dive', 'able', 1);
    await page.goto('about:blank');
    await page.goto('./#/debrief');
    const word = page.locator('debrief-sheet textarea:enabled');
    await word.waitFor();
    const down = () => page.locator('debrief-sheet').evaluate((one) => one.scrollTop);
    await page
      .locator('debrief-sheet select')
      .first()
      .evaluate((one) => one.closest('section')!.querySelector('button')!.focus());
    const before = await down();
    await page.keyboard.press('ArrowDown');
    await expect.poll(down).toBeGreaterThan(before);
    await word.fill('Wait for the breath.');
    // Nothing takes the focus from the word when the browser goes back.
    await page.evaluate(() => (location.hash = '#/lessons'));
    await page.waitForSelector('lesson-list section');
    await page.evaluate(() => (location.hash = '#/debrief'));
    await expect.poll(() => word.inputValue().catch(() => '')).toBe('Wait for the breath.');
  });
});
