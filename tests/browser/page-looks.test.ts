import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const says = (page: Page) => page.locator('.says');

/** The diver with four kilograms too much, let go at 2 m with an empty jacket, frozen. */
async function letGo(page: Page): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await name(page, 'I have read this').click();
  await name(page, 'fly').click();
  await name(page, 'more').click();
  await page.locator('more-sheet select').first().selectOption('two-piece-heavy');
  await page.waitForSelector('more-sheet dialog[open]', { state: 'detached' });
  await name(page, 'more').click();
  await name(page, 'let go').click();
  await page.waitForSelector('title-bar .freeze:has-text("go on")');
}

/** Depth of the lane, metres. */
const depthM = async (page: Page) => parseFloat(await page.locator('lane-numbers .depth').innerText());

describe('the looks over the water', () => {
  test('digits turn them on and off, one at a time; the sentence goes with them', async () => {
    await visit('./', async (page) => {
      await letGo(page);
      await expect.poll(() => says(page).count()).toBe(0);
      await page.keyboard.press('Digit4');
      await says(page)
        .filter({ hasText: /^Too late for breath; fins stop you at 2\.9/ })
        .waitFor();
      await page.keyboard.press('Digit2');
      await says(page).filter({ hasText: 'heavy all the way down' }).waitFor();
      await page.keyboard.press('Digit3');
      await says(page)
        .filter({ hasText: /^A drift of 10.cm becomes 20.cm in [\d.]+.s; \d+.% of that is the suit/ })
        .waitFor();
      await expect.poll(() => page.locator('hilltop-card circle').count()).toBe(1);
      await page.keyboard.press('Digit3');
      await says(page).waitFor({ state: 'detached' });
      await expect.poll(() => page.locator('hilltop-card').count()).toBe(0);
    });
  });

  test('the recovery map is reckoned in a worker of our own', async () => {
    await visit('./', async (page, watch) => {
      await letGo(page);
      await page.keyboard.press('Digit5');
      await says(page)
        .filter({
          hasText: /^Breath alone brings you back no more; with 4.kg less lead it would, from [\d.]+.m; fins do/,
        })
        .waitFor();
      expect(watch.paths.filter((path) => path.includes('look-worker'))).toHaveLength(1);
      expect(page.workers()).toHaveLength(1);
    });
  });

  test('the choice is kept over a reload, and shows itself once somebody flies', async () => {
    await visit('./', async (page) => {
      await letGo(page);
      await page.keyboard.press('Digit1');
      await page.keyboard.press('Digit4');
      await page.goto('./');
      await page.reload();
      await page.waitForSelector('practice-deck button.act');
      await page.waitForTimeout(500);
      await expect.poll(() => says(page).count()).toBe(0);
      await page.keyboard.press('KeyK');
      await says(page).waitFor();
      await name(page, 'look').click();
      expect(await page.locator('look-menu .looks [aria-pressed=true]').allInnerTexts()).toEqual([
        expect.stringContaining('breath reach'),
        expect.stringContaining('what still stops you'),
        expect.stringContaining('bands and limits'),
        expect.stringContaining('ten seconds ahead'),
      ]);
    });
  });

  test('by touch on a phone: the menu opens, its buttons are 48 px and more, a choice closes it', async () => {
    await visit(
      './',
      async (page) => {
        await letGo(page);
        await name(page, 'look').tap();
        await page.waitForSelector('look-menu button');
        const small = await page.locator('look-menu button').evaluateAll((buttons) =>
          buttons.flatMap((button) => {
            const { width, height, left, right } = button.getBoundingClientRect();
            return width >= 48 && height >= 48 && left >= 0 && right <= innerWidth ? [] : [button.textContent];
          }),
        );
        expect(small).toEqual([]);
        await name(page, 'why you drift: the hilltop').tap();
        await page.waitForSelector('look-menu section', { state: 'detached' });
        await page.locator('hilltop-card svg').waitFor();
      },
      { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
    );
  });

  test('by keys alone: a choice, and Escape, give the focus back to what opened the menu', async () => {
    await visit('./', async (page) => {
      await letGo(page);
      const focused = () => page.evaluate(() => document.activeElement?.textContent?.trim());
      for (const key of ['Enter', 'Escape']) {
        await name(page, 'look').focus();
        await page.keyboard.press('Enter');
        await page.waitForSelector('look-menu button');
        await page.keyboard.press('Tab');
        expect(await focused()).toContain('forces by depth');
        await page.keyboard.press(key);
        await page.waitForSelector('look-menu section', { state: 'detached' });
        expect(await focused()).toBe('look');
      }
    });
  });

  test('stay in the water: neither kit and water nor the lessons show anything of them', async () => {
    await visit('./', async (page) => {
      await letGo(page);
      await page.keyboard.press('Digit3');
      await page.waitForSelector('hilltop-card svg');
      await name(page, 'look').click();
      await page.waitForSelector('look-menu button');
      for (const place of ['kit and water', 'lessons']) {
        await name(page, 'more').click();
        await page.locator('more-sheet').getByRole('button', { name: place, exact: true }).click();
        await page.waitForSelector(place === 'lessons' ? 'lesson-list section' : 'kit-sheet section');
        await expect
          .poll(() => page.locator('.says, look-menu section, hilltop-card, title-bar .look').count())
          .toBe(0);
      }
    });
  });

  test('nothing is shown, and nothing can be chosen, while something is asked', async () => {
    await visit('./', async (page) => {
      await letGo(page);
      await page.keyboard.press('Digit1');
      await page.keyboard.press('Digit4');
      await says(page).waitFor();
      await name(page, 'more').click();
      await name(page, 'lessons').click();
      await name(page, 'begin First dive').click();
      await page.waitForSelector('question-sheet section');
      await expect.poll(() => says(page).count()).toBe(0);
      await expect.poll(() => page.locator('title-bar .look').count()).toBe(0);
      await expect.poll(() => page.locator('[role=status]').innerText()).not.toContain('stop');
      await page.keyboard.press('Digit3');
      await page.waitForTimeout(300);
      await expect.poll(() => page.locator('hilltop-card').count()).toBe(0);
      expect(await page.evaluate(() => localStorage.getItem('midwater-looks'))).toContain('"look":"stops"');
    });
  });
});

test('what stops him, and where, is said before it happens, and then it happens so', async () => {
  await visit(
    './',
    async (page) => {
      await letGo(page);
      await page.keyboard.press('Digit4');
      await page.keyboard.press('KeyP');
      for (let turns = 0; turns < 400 && (await depthM(page)) <= 4; turns++) await pass(page, 0.1);
      await page.keyboard.press('KeyP');
      await pass(page, 0.2);
      const nowM = await depthM(page);
      expect(nowM).toBeGreaterThan(4);
      await says(page).filter({ hasText: 'the jacket stops you' }).waitFor();
      const saidM = Number((await says(page).innerText()).match(/the jacket stops you at ([\d.]+)/)![1]);
      expect(saidM).toBeGreaterThan(nowM + 1);
      // The second that it takes to react, then gas, held until he rises.
      await page.keyboard.press('KeyP');
      await pass(page, 1);
      await page.keyboard.down('KeyI');
      let deepestM = nowM;
      for (let turns = 0; turns < 400; turns++) {
        await pass(page, 0.1);
        const hereM = await depthM(page);
        if (hereM < deepestM - 0.1) break;
        deepestM = Math.max(deepestM, hereM);
      }
      await page.keyboard.up('KeyI');
      // Each second costs half a metre: a breath more or less when the gas comes stays below.
      expect(Math.abs(deepestM - saidM)).toBeLessThan(0.4);
    },
    { madeTime: true },
  );
});

test('a class gets one sentence, in the title, and one look', async () => {
  await visit(
    './',
    async (page) => {
      await letGo(page);
      await page.keyboard.press('Digit1');
      await page.keyboard.press('Digit4');
      await name(page, 'more').click();
      await page.getByLabel('projector').check();
      await name(page, 'close').click();
      const title = page.locator('title-bar h1');
      await title.filter({ hasText: /^\s*Too late for breath; fins stop you at/ }).waitFor();
      await expect.poll(() => says(page).count()).toBe(0);
      expect(await title.evaluate((words) => parseFloat(getComputedStyle(words).fontSize))).toBeGreaterThanOrEqual(48);
    },
    { viewport: { width: 1920, height: 1080 } },
  );
});

test.each([
  { width: 1280, height: 720 },
  { width: 1024, height: 768 },
  { width: 360, height: 740 },
  { width: 740, height: 360 },
])('menu, sentence and hill fit %o', async (viewport) => {
  await visit(
    './',
    async (page) => {
      await letGo(page);
      await page.keyboard.press('Digit3');
      await page.waitForSelector('hilltop-card svg');
      await name(page, 'look').click();
      await page.waitForSelector('look-menu button');
      const out = await page.evaluate(() => {
        const water = document.querySelector('main.water')!.getBoundingClientRect();
        return [
          ...document.querySelectorAll('look-menu section, look-menu button, hilltop-card section, .says, button.act'),
        ].flatMap((element) => {
          const { left, right, top, bottom, width } = element.getBoundingClientRect();
          const room = element.closest('main') ? water : new DOMRect(0, 0, innerWidth, innerHeight);
          // Where the water is low the menu is pulled within itself.
          const { top: roomTop, bottom: roomBottom } =
            element.closest('look-menu') && !element.matches('section') ? new DOMRect(0, -1e4, 0, 2e4) : room;
          const inside =
            left >= room.left && top >= roomTop - 0.5 && right <= room.right + 0.5 && bottom <= roomBottom + 0.5;
          return width === 0 || inside ? [] : [`${element.className} ${element.textContent?.trim()} ${top}–${bottom}`];
        });
      });
      expect(out).toEqual([]);
    },
    { viewport },
  );
});
