import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });

/** What may lie on the water, or stand at its foot. */
const PIECES = [
  'kept-note aside',
  'hilltop-card section',
  'start-note aside',
  'time-strip .strip',
  'main > .says',
  'practice-deck',
  'title-bar',
];

/** Pairs of those that lie over one another. */
const overlaps = (page: Page) =>
  page.evaluate((pieces) => {
    const seen = pieces.flatMap((piece) => {
      const box = document.querySelector(piece)?.getBoundingClientRect();
      return box && box.width > 0 && box.height > 0 ? [{ piece, box }] : [];
    });
    return seen.flatMap(({ piece, box: a }, i) =>
      seen.slice(i + 1).flatMap(({ piece: other, box: b }) => {
        const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        return wide > 1 && high > 1 ? [`${piece} over ${other}`] : [];
      }),
    );
  }, PIECES);

const stripTop = (page: Page) =>
  page.evaluate(() => document.querySelector('time-strip .strip')?.getBoundingClientRect().top);

test.each([
  { width: 1280, height: 720 },
  { width: 1024, height: 768 },
  { width: 360, height: 740 },
])(
  '$width × $height: looks do not move the strip of time, and after a reload one card at a time lies on the water',
  async (viewport) => {
    await visit(
      './',
      async (page) => {
        await page.waitForSelector('practice-deck button.act');
        await page.keyboard.down('KeyK');
        await page.waitForTimeout(1500);
        await page.keyboard.up('KeyK');
        await page.keyboard.press('KeyP');
        await expect.poll(() => overlaps(page)).toEqual([]);
        await expect.poll(() => stripTop(page)).toBeGreaterThan(0);
        const top = await stripTop(page);
        for (const key of [1, 2, 4, 7]) {
          await page.keyboard.press(`Digit${key}`);
          await page.locator('main > .says').waitFor();
          expect(await stripTop(page), `look ${key}`).toBe(top);
        }
        await page.keyboard.press('Digit3');
        await page.waitForTimeout(600);
        // As where settings are not kept.
        await page.evaluate(() => localStorage.removeItem('midwater-settings'));
        await page.reload();
        await page.locator('start-note aside').waitFor();
        await page.locator('time-strip .strip').waitFor();
        await expect.poll(() => overlaps(page)).toEqual([]);
        await name(page, 'I have read this').click();
        await page.locator('kept-note aside').waitFor();
        await expect.poll(() => overlaps(page)).toEqual([]);
        await name(page, 'close').click();
        await page.locator('hilltop-card section').waitFor();
        await expect.poll(() => overlaps(page)).toEqual([]);
      },
      { viewport },
    );
  },
);

test('time stands while a look is chosen; who flies on closes the menu; before a class it goes on', async () => {
  await visit('./', async (page) => {
    await page.waitForSelector('practice-deck button.act');
    await name(page, 'I have read this').click();
    await page.keyboard.down('KeyK');
    await page.waitForTimeout(1500);
    await page.keyboard.up('KeyK');
    const passed = async () => {
      const ticks = () =>
        page.evaluate(() => document.querySelector('lane-numbers')?.textContent?.replace(/\s+/g, ' ') ?? '');
      const before = await ticks();
      await page.waitForTimeout(700);
      return before !== (await ticks());
    };
    await name(page, 'look').click();
    await page.waitForSelector('look-menu section');
    expect(await passed()).toBe(false);
    await page.keyboard.down('KeyS');
    await page.waitForSelector('look-menu section', { state: 'detached' });
    await page.keyboard.up('KeyS');
    await expect.poll(passed).toBe(true);
    await name(page, 'more').click();
    await page.getByLabel('projector').check();
    await name(page, 'close').click();
    await name(page, 'look').click();
    await page.waitForSelector('look-menu section');
    await expect.poll(passed).toBe(true);
  });
});

test.each([
  { hand: 'a key', viewport: { width: 1280, height: 720 }, hasTouch: false },
  { hand: 'a thumb', viewport: { width: 360, height: 740 }, hasTouch: true },
])(
  'the first caution gives way to the first press of a control by $hand, and stays the line at the foot',
  async (how) => {
    await visit(
      './',
      async (page) => {
        await page.waitForSelector('practice-deck button.act');
        await page.locator('start-note aside').waitFor();
        if (how.hasTouch) await page.locator('[data-act=vent]').tap();
        else await page.keyboard.press('KeyK');
        await expect.poll(() => page.locator('start-note').count()).toBe(0);
        const words = /A teaching model\. Not for planning dives/;
        await expect.poll(() => page.locator('footer').innerText()).toMatch(words);
        await page.reload();
        await page.waitForSelector('practice-deck button.act');
        expect(await page.locator('start-note').count()).toBe(0);
        await expect.poll(() => page.locator('footer').innerText()).toMatch(words);
      },
      { viewport: how.viewport, hasTouch: how.hasTouch },
    );
  },
);

test.each([
  { width: 1280, height: 720 },
  { width: 360, height: 740 },
])(
  '$width × $height: another kit is another dive, at the usual speed; the one before is kept, said, and had again',
  async (viewport) => {
    await visit(
      './',
      async (page) => {
        await page.waitForSelector('practice-deck button.act');
        await page.keyboard.press('KeyK');
        await page.keyboard.press('Equal');
        const speed = () =>
          page.evaluate(() => (document.querySelector('title-bar') as unknown as { speed: number }).speed);
        const note = page.locator('kept-note aside');
        await expect.poll(speed).toBe(2);
        // Six seconds of the dive: shorter ones are not kept.
        await page.waitForTimeout(4500);
        await name(page, 'more').click();
        await page.locator('more-sheet select:has(option[value=pool])').first().selectOption('pool');
        await note.waitFor();
        await expect.poll(() => note.innerText()).toMatch(/Your dive before is kept, as it was at 0:\d\d/);
        expect(await speed()).toBe(1);
        expect(await overlaps(page)).toEqual([]);
        await name(page, 'back to that dive').click();
        await expect.poll(() => note.innerText()).toMatch(/Your dive is back, as it was at 0:/);
        expect(await speed()).toBe(1);
      },
      { viewport },
    );
  },
);
