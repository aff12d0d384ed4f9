import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();

const ready = (page: Page) => page.waitForSelector('practice-deck button.act');
const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });

const sizes = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
  { width: 1024, height: 768 },
  { width: 360, height: 740 },
  { width: 740, height: 360 },
] as const;

describe('the first screen', () => {
  test('offers vent and out alone, the three ways in, and the caution, which blocks nothing', async () => {
    await visit('./', async (page) => {
      await ready(page);
      expect(await page.locator('practice-deck button.act').allInnerTexts()).toEqual([
        expect.stringContaining('vent'),
        expect.stringContaining('out'),
      ]);
      for (const words of ['fly', 'teach a class', 'learn in order'])
        await expect.poll(() => name(page, words).isVisible()).toBe(true);
      await expect.poll(() => page.locator('footer').innerText()).toContain('Never hold your breath on scuba');
      await page.keyboard.down('KeyK');
      await page.waitForSelector('[data-act=kick-up]');
      await page.keyboard.up('KeyK');
      await expect.poll(() => page.locator('title-bar .freeze').isVisible()).toBe(true);
    });
  });

  test.each(sizes)('fits %o: nothing sticks out, and every button can be hit', async (viewport) => {
    await visit(
      './',
      async (page) => {
        await ready(page);
        await name(page, 'I have read this').click();
        await name(page, 'fly').click();
        await page.waitForSelector('[data-act=kick-up]');
        const out = await page.evaluate(() =>
          [...document.querySelectorAll('button, footer, lane-numbers p')].flatMap((element) => {
            const { left, right, top, bottom, width, height } = element.getBoundingClientRect();
            if (width === 0) return [];
            const inside = left >= 0 && top >= 0 && right <= innerWidth + 0.5 && bottom <= innerHeight + 0.5;
            const large = !element.matches('.act') || (width >= 48 && height >= 48);
            return inside && large ? [] : [`${element.className} ${element.textContent?.trim()} ${width} × ${height}`];
          }),
        );
        expect(out).toEqual([]);
        const over = await page.evaluate(() => {
          const boxes = [...document.querySelectorAll('button.act')]
            .map((button) => ({ word: button.textContent?.trim() ?? '', box: button.getBoundingClientRect() }))
            .filter(({ box }) => box.width > 0);
          return boxes.flatMap((a, i) =>
            boxes
              .slice(i + 1)
              .filter(({ box: b }) => {
                const across = Math.min(a.box.right, b.right) - Math.max(a.box.left, b.left);
                const along = Math.min(a.box.bottom, b.bottom) - Math.max(a.box.top, b.top);
                return across > 0.5 && along > 0.5;
              })
              .map((b) => `${a.word} lies over ${b.word}`),
          );
        });
        expect(over).toEqual([]);
      },
      { viewport },
    );
  });
});

describe('the page breaks no rule of WCAG 2.2 AA', () => {
  test('and the checker hears a button without a name', async () => {
    await visit('./', async (page) => {
      await ready(page);
      await page.evaluate(() => document.querySelector('footer')!.append(document.createElement('button')));
      expect(await breaches(page)).toEqual([expect.stringMatching(/^button-name/)]);
    });
  });
});

test('a choice of theme and units is kept over a reload', async () => {
  await visit('./', async (page) => {
    await ready(page);
    await name(page, 'more').click();
    await page.getByLabel('light').selectOption('dark');
    await page.getByLabel('units').selectOption('imperial');
    await page.reload();
    await ready(page);
    await expect.poll(() => page.locator('html').getAttribute('data-theme')).toBe('dark');
    await expect.poll(() => page.locator('lane-numbers .depth').innerText()).toContain('ft');
  });
});

test('a class at 1080 lines reads a title of 48 px and three numbers of 65 px', async () => {
  await visit(
    './',
    async (page) => {
      await ready(page);
      await name(page, 'teach a class').click();
      const px = (selector: string) =>
        page.locator(selector).evaluate((element) => parseFloat(getComputedStyle(element).fontSize));
      expect(await px('title-bar h1')).toBeGreaterThanOrEqual(48);
      for (const part of ['depth', 'rate', 'weight'])
        expect(await px(`lane-numbers .${part}`)).toBeGreaterThanOrEqual(65);
      expect(await px('footer')).toBeGreaterThanOrEqual(1080 / 50);
    },
    { viewport: { width: 1920, height: 1080 } },
  );
});

test('a setup file with problems is refused with its lines, and the dive goes on as it was', async () => {
  await visit('./', async (page) => {
    await ready(page);
    await name(page, 'more').click();
    const file = (text: string) => ({ name: 'mine.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
    await page.getByLabel('open a setup or a saved dive').setInputFiles(file('format: 1\nwater:\n  bottomM: deep\n'));
    await page.waitForSelector('problem-list li');
    await expect.poll(() => page.locator('problem-list').innerText()).toMatch(/Line 3.*bottomM.*deep/s);
    await name(page, 'close').click();
    await name(page, 'more').click();
    await page.getByLabel('open a setup or a saved dive').setInputFiles(file('format: 1\nname: My own sea\n'));
    await page.waitForSelector('title-bar option:has-text("own file")', { state: 'attached' });
    await expect.poll(() => page.locator('problem-list aside').count()).toBe(0);
  });
});

test('lead goes only at the second of two presses', async () => {
  await visit('./', async (page) => {
    await ready(page);
    await page.keyboard.press('KeyS');
    await page.waitForSelector('lead-release');
    await page.keyboard.press('KeyX');
    await page.waitForSelector('.confirm');
    await expect.poll(() => page.locator('.confirm').innerText()).toContain('let all 2 go');
    await page.keyboard.press('KeyX');
    await page.waitForSelector('.confirm', { state: 'detached' });
    await page.keyboard.press('KeyX');
    await page.waitForSelector('.confirm');
    await expect.poll(() => page.locator('.confirm').innerText()).not.toContain('let all');
  });
});
