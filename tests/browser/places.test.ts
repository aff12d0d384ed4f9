import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const at = (page: Page, place: string) => page.waitForSelector(`html[data-place=${place}]`, { state: 'attached' });
const hash = (page: Page) => page.evaluate(() => location.hash);
const noted = (page: Page) => name(page, 'I have read this').click();
/** Depth as it is read in the lane. */
const depth = (page: Page) => page.locator('lane-numbers .depth').innerText();

/** Lets gas out for a while, so that there is a dive to lose. */
async function dive(page: Page): Promise<void> {
  await page.keyboard.down('KeyK');
  await at(page, 'fly');
  await page.waitForTimeout(2500);
  await page.keyboard.up('KeyK');
  await page.waitForTimeout(300);
}

describe('addresses', () => {
  test('the first press makes the column of the start, without a step of its own for back', async () => {
    await visit('./', async (page) => {
      await page.waitForSelector('practice-deck button.act');
      const steps = await page.evaluate(() => history.length);
      await page.keyboard.press('KeyS');
      await at(page, 'fly');
      // Keys are heard before the part that writes addresses has come.
      await expect.poll(() => hash(page)).toBe('#/column');
      expect(await page.evaluate(() => history.length)).toBe(steps);
    });
  });

  test('going to kit and water and back by the browser finds the dive where it was left, standing still', async () => {
    await visit('./', async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await noted(page);
      await dive(page);
      await page.keyboard.press('KeyP');
      await page.waitForSelector('.freeze:has-text("go on")');
      const before = await depth(page);
      await page.keyboard.press('KeyP');
      await name(page, 'more').click();
      await name(page, 'kit and water').click();
      await page.waitForSelector('kit-diver section');
      await expect.poll(() => hash(page)).toBe('#/kit/first-dive');
      await page.waitForTimeout(1500);
      await page.goBack();
      await at(page, 'fly');
      await expect.poll(() => hash(page)).toBe('#/column');
      await page.waitForSelector('.freeze:has-text("go on")');
      const after = await depth(page);
      await page.waitForTimeout(700);
      expect(await depth(page)).toBe(after);
      // The few frames between the keys are all that was flown.
      expect(Math.abs(parseFloat(after) - parseFloat(before))).toBeLessThan(0.6);
      await page.goForward();
      await page.waitForSelector('kit-diver section');
      await name(page, 'leave').click();
      await at(page, 'fly');
      expect(await depth(page)).toBe(after);
    });
  });

  test('a lesson that is left by back is found again by forward, and the free dive meanwhile', async () => {
    await visit('./', async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await noted(page);
      await dive(page);
      const free = parseFloat(await depth(page));
      await name(page, 'more').click();
      await name(page, 'lessons').click();
      await name(page, 'begin First dive').click();
      await page.waitForSelector('question-sheet section');
      await expect.poll(() => hash(page)).toBe('#/lessons/first-dive');
      await name(page, 'more').click();
      await name(page, 'kit and water').click();
      await page.waitForSelector('problem-list aside:has-text("The prediction first")');
      await name(page, 'close').click();
      await expect.poll(() => hash(page)).toBe('#/lessons/first-dive');
      await page.locator('.option').first().click();
      await name(page, 'lock it').click();
      await page.waitForSelector('question-sheet section', { state: 'detached' });
      const title = await page.locator('title-bar h1').innerText();
      await page.goBack();
      await at(page, 'learn');
      await page.goBack();
      await at(page, 'fly');
      await page.waitForSelector('.freeze:has-text("go on")');
      expect(Math.abs(parseFloat(await depth(page)) - free)).toBeLessThan(1);
      await page.goForward();
      await at(page, 'learn');
      await page.goForward();
      await at(page, 'lesson');
      await page.waitForSelector('.freeze:has-text("go on")');
      await expect.poll(() => page.locator('question-sheet section').count()).toBe(0);
      expect((await page.locator('title-bar h1').innerText()).slice(0, 12)).toBe(title.slice(0, 12));
    });
  });

  test.each([
    ['#/column', 'fly', '[data-act=kick-up]'],
    ['#/lessons', 'learn', 'lesson-list section'],
    ['#/lessons/first-dive', 'lesson', 'question-sheet section'],
    ['#/kit/two-piece', 'kit', 'kit-diver section'],
    ['#/bench', 'bench', 'bench-tank svg'],
    ['#/bench/bottle', 'bench', 'bench-deep svg'],
  ])('%s can be linked, and survives a reload', async (address, place, shows) => {
    await visit(`./${address}`, async (page) => {
      await page.waitForSelector(shows);
      await at(page, place);
      await expect.poll(() => hash(page)).toBe(address);
      await page.reload();
      await page.waitForSelector(shows);
      await at(page, place);
      await expect.poll(() => hash(page)).toBe(address);
    });
  });

  test('a debrief without a run is the column; what is no place is the start; what is no lesson is said', async () => {
    await visit('./#/debrief', async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await page.waitForFunction(() => location.hash !== '#/debrief');
      expect(['#/', '#/column']).toContain(await hash(page));
    });
    await visit('./#/lessons/no-such-lesson', async (page) => {
      await page.waitForSelector('problem-list aside');
      await expect.poll(() => page.locator('problem-list').innerText()).toContain('no-such-lesson');
    });
  });
});

describe('kit and water', () => {
  test('by keyboard alone: choose, try, keep, undo, fly', async () => {
    await visit('./#/kit/temperate-sea', async (page) => {
      await page.waitForSelector('kit-diver section');
      await noted(page);
      const needed = () => page.locator('.lead-needed b').innerText();
      const before = await needed();
      const row = page.locator('.change', { hasText: 'fresh water' });
      await row.focus();
      await page.keyboard.press('Enter');
      await page.waitForSelector('.change[aria-pressed=true]');
      await expect
        .poll(() => page.locator('kit-diver .sentence').innerText())
        .toMatch(/fresh water.* you need \d\.\d\skg less\.$/);
      await expect.poll(() => needed()).not.toBe(before);
      await page.locator('kit-diver').getByRole('button', { name: 'keep' }).focus();
      await page.keyboard.press('Enter');
      await page.waitForSelector('.change[aria-pressed=true]', { state: 'detached' });
      await page.waitForSelector('.change:has-text("sea water instead of fresh water")');
      expect(await page.evaluate(() => document.activeElement?.textContent?.trim())).toBe('fly this');
      await page.locator('kit-diver').getByRole('button', { name: 'undo' }).focus();
      await page.keyboard.press('Enter');
      await page.waitForSelector('.change:has-text("fresh water instead of sea water")');
      await expect.poll(() => needed()).toBe(before);
      await page.locator('kit-diver').getByRole('button', { name: 'fly this' }).focus();
      await page.keyboard.press('Enter');
      await at(page, 'fly');
      await expect.poll(() => hash(page)).toBe('#/column');
      await expect.poll(() => page.locator('title-bar select').inputValue()).toBe('temperate-sea');
    });
  });

  test('a tried change is flown: heavier than before by what fresh water lifts less, when the lead stays', async () => {
    await visit('./#/kit/temperate-sea', async (page) => {
      await page.waitForSelector('kit-diver section');
      await noted(page);
      await page.locator('kit-changes input[type=checkbox]').uncheck();
      await page.locator('.change', { hasText: 'fresh water' }).click();
      await page.waitForSelector('.change[aria-pressed=true]');
      const tooMuch = parseFloat(/([\d.]+)\skg too much/.exec(await page.locator('.carried').innerText())![1]!);
      const less = parseFloat(
        /need ([\d.]+)\skg less/.exec(await page.locator('kit-diver .sentence').innerText())![1]!,
      );
      expect(Math.abs(tooMuch - less)).toBeLessThan(0.11);
      await page.locator('kit-diver').getByRole('button', { name: 'fly this' }).click();
      await at(page, 'fly');
      await expect.poll(() => page.locator('title-bar select').inputValue()).toBe('');
      await name(page, 'more').click();
      await name(page, 'kit and water').click();
      await page.waitForSelector('.change:has-text("sea water instead of fresh water")');
      await expect
        .poll(() => page.locator('kit-diver .note').textContent())
        .toContain('; fresh water instead of sea water');
    });
  });

  test('the footer warns of the diver who is looked at: a loop, or water under thinner air', async () => {
    await visit('./#/kit/closed-loop', async (page) => {
      await page.waitForSelector('kit-diver section');
      const footer = page.locator('footer');
      await expect.poll(() => footer.innerText()).toContain('Closed loop: concept only');
      await expect.poll(() => footer.innerText()).not.toContain('thought experiment');
      await page.locator('.change', { hasText: '2000 m of altitude' }).click();
      await page.waitForSelector('.change[aria-pressed=true]');
      await expect.poll(() => footer.innerText()).toContain('thought experiment');
    });
  });

  test('a setup file is taken as the diver; a bad one is refused with its lines', async () => {
    await visit('./#/kit', async (page) => {
      await page.waitForSelector('kit-diver section');
      const file = (text: string) => ({ name: 'mine.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
      const input = page.locator('kit-diver input[type=file]');
      await input.setInputFiles(file('format: 1\nwater:\n  bottomM: deep\n'));
      await page.waitForSelector('problem-list li');
      await name(page, 'close').click();
      await input.setInputFiles(file('format: 1\nname: Mine\nwater:\n  bottomM: 25\n'));
      await page.waitForSelector('kit-diver option:has-text("mine.yaml")', { state: 'attached' });
      await expect.poll(() => page.locator('kit-diver select').inputValue()).toBe('');
    });
  });

  const sizes = [
    { width: 360, height: 740 },
    { width: 740, height: 360 },
    { width: 1024, height: 768 },
    { width: 1280, height: 720 },
    { width: 1920, height: 1080 },
  ];
  test.each(sizes)('fits %o: nothing reaches out sideways, and thumbs hit everything on a phone', async (viewport) => {
    await visit(
      './#/kit/twin',
      async (page) => {
        await page.waitForSelector('kit-diver section');
        await noted(page);
        for (const words of ['at the surface', 'over the depth', 'one change at a time']) {
          await name(page, words).click();
          await page.waitForTimeout(100);
          const phone = viewport.width <= 760 || viewport.height <= 480;
          const wrong = await page.evaluate(
            (least) => {
              return [
                ...document.querySelectorAll('kit-sheet :is(button, select, p, td, th, svg, label, span)'),
              ].flatMap((element) => {
                const { left, right, width, height } = element.getBoundingClientRect();
                if (width <= 1) return [];
                const inside = left >= -0.5 && right <= innerWidth + 0.5;
                const large = !element.matches('button, select') || (width >= least && height >= least);
                return inside && large
                  ? []
                  : [`${element.tagName} ${element.textContent?.trim()} ${left} ${width} × ${height}`];
              });
            },
            phone ? 48 : 40,
          );
          expect(wrong).toEqual([]);
        }
      },
      { viewport },
    );
  });

  test('a class at 1080 lines reads every word at a fiftieth of the height', async () => {
    await visit(
      './',
      async (page) => {
        await page.waitForSelector('practice-deck button.act');
        await name(page, 'teach a class').click();
        await name(page, 'more').click();
        await name(page, 'kit and water').click();
        await page.waitForSelector('kit-diver section');
        await page.locator('.change:not(.now)').first().click();
        await page.waitForSelector('.change[aria-pressed=true]');
        const small = await page.evaluate(() =>
          [...document.querySelectorAll('kit-sheet :is(p, b, button, h2, h3, label, span, td, th)')].flatMap(
            (element) => {
              const px = parseFloat(getComputedStyle(element).fontSize);
              const seen = element.getClientRects().length > 0 && element.getBoundingClientRect().width > 1;
              return seen && px < innerHeight / 50 ? [`${element.className} ${element.textContent?.trim()} ${px}`] : [];
            },
          ),
        );
        expect(small).toEqual([]);
      },
      { viewport: { width: 1920, height: 1080 } },
    );
  });
});
