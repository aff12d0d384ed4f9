import type { BrowserContextOptions, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { LEARN_STATES } from './learn-states.ts';
import { pass } from './made-time.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();

const named = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const more = async (page: Page) => {
  await named(page, 'more').click();
  await page.waitForSelector('more-sheet dialog[open]');
};
const inMore = (page: Page, words: string) =>
  page.locator('more-sheet').getByRole('button', { name: words, exact: true });

/** Lets time pass until something is there: the page is told by its frames. */
async function until(page: Page, selector: string): Promise<void> {
  await expect
    .poll(async () => {
      await pass(page, 0.1);
      return page.locator(selector).count();
    })
    .toBeGreaterThan(0);
}

/** Opens all that a sheet folds away. */
const openAll = (page: Page, sheet: string) =>
  page.locator(`${sheet} details`).evaluateAll((all) => {
    for (const one of all as HTMLDetailsElement[]) one.open = true;
  });

/** Every place and state, in an order in which each is reached from the one before. */
const STATES: readonly { readonly state: string; readonly reach: (page: Page) => Promise<unknown> }[] = [
  {
    state: 'first screen',
    async reach(page) {
      await page.waitForSelector('practice-deck button.act');
      await page.waitForFunction(
        () => document.querySelector<HTMLElement & { presenting?: unknown }>('more-sheet')?.presenting,
      );
    },
  },
  {
    state: 'free dive',
    async reach(page) {
      await named(page, 'I have read this').click();
      await named(page, 'fly').click();
      await page.waitForSelector('[data-act=kick-up]');
      await page.keyboard.down('KeyK');
      await pass(page, 6);
      await page.keyboard.up('KeyK');
    },
  },
  {
    state: 'lead that is about to go',
    async reach(page) {
      await page.keyboard.press('KeyX');
      await pass(page, 0.2);
      await page.waitForSelector('.confirm', { state: 'attached' });
    },
  },
  {
    state: 'frozen, with its strip of time and its lines',
    async reach(page) {
      await page.keyboard.press('KeyP');
      await pass(page, 3);
      await page.keyboard.press('KeyM');
      await page.locator('time-strip button', { hasText: 'lines' }).click();
      await pass(page, 0.2);
    },
  },
  {
    state: 'two divers, the hill and the breath reach',
    async reach(page) {
      await page.locator('time-strip button[aria-expanded=true]').click();
      for (const key of ['Quote', 'Digit1', 'Digit3']) await page.keyboard.press(key);
      await until(page, 'pair-strip section');
      await pass(page, 0.3);
      await until(page, 'hilltop-card svg');
    },
  },
  {
    state: 'look menu over the recovery map',
    async reach(page) {
      await page.keyboard.press('Digit5');
      await pass(page, 0.3);
      await named(page, 'look').click();
      await until(page, 'look-menu button');
    },
  },
  {
    state: 'traces with their numbers',
    async reach(page) {
      await page.keyboard.press('Escape');
      await page.keyboard.press('Digit5');
      await page.keyboard.press('Quote');
      await page.keyboard.press('KeyT');
      await pass(page, 0.3);
      await named(page, 'numbers').click();
      await until(page, 'trace-panel table');
    },
  },
  {
    state: 'more, with all of it open',
    async reach(page) {
      await page.keyboard.press('KeyT');
      await pass(page, 0.3);
      await more(page);
      await openAll(page, 'more-sheet');
    },
  },
  {
    state: 'kit and water, one change at a time',
    async reach(page) {
      await inMore(page, 'kit and water').click();
      await page.waitForSelector('kit-diver section');
      await page.locator('.change:not(.now)').first().click();
      await page.waitForSelector('.change[aria-pressed=true]');
    },
  },
  { state: 'kit and water, at the surface', reach: (page) => named(page, 'at the surface').click() },
  { state: 'kit and water, over the depth', reach: (page) => named(page, 'over the depth').click() },
  {
    state: 'lessons',
    async reach(page) {
      await more(page);
      await inMore(page, 'lessons').click();
      await page.waitForSelector('lesson-list section');
    },
  },
  {
    state: 'question of a lesson',
    async reach(page) {
      await named(page, 'begin First dive').click();
      await until(page, 'question-sheet section');
    },
  },
  {
    state: 'lesson',
    async reach(page) {
      await page.locator('.option').first().click();
      await page.locator('question-sheet .main').click();
      await pass(page, 2);
      await page.waitForSelector('question-sheet section', { state: 'detached' });
    },
  },
  {
    state: 'debrief, with its moments open',
    async reach(page) {
      const debriefed = page.locator('debrief-sheet section');
      for (let turns = 0; turns < 60 && (await debriefed.count()) === 0; turns++) {
        if ((await page.locator('question-sheet section').count()) > 0) {
          const choice = page.locator('.option').first();
          if ((await choice.count()) > 0) await choice.click();
          await page.locator('question-sheet .main').click();
        }
        await pass(page, 10, 250);
      }
      await debriefed.waitFor();
      await openAll(page, 'debrief-sheet');
      await pass(page, 0.3);
    },
  },
];

/** Those of a class, on a page of their own. */
const CLASS_STATES: typeof STATES = [
  STATES[0]!,
  {
    state: 'list of demonstrations',
    async reach(page) {
      await page.keyboard.press('PageDown');
      await until(page, 'show-list section');
    },
  },
  {
    state: 'demonstration, with its strip and its question',
    async reach(page) {
      await page.locator('show-list .option').first().click();
      await until(page, 'presenter-strip section');
      await page.keyboard.press('PageDown');
      await until(page, 'question-sheet section');
    },
  },
  {
    state: 'trouble with a file',
    async reach(page) {
      await more(page);
      const file = {
        name: 'mine.yaml',
        mimeType: 'text/yaml',
        buffer: Buffer.from('format: 1\nwater:\n  bottomM: deep\n'),
      };
      await page.locator('more-sheet input[type=file]').first().setInputFiles(file);
      await until(page, 'problem-list li');
    },
  },
];

/** Screens: usual ones, half of one as at 200 % zoom, a phone. */
const SCREENS: readonly { readonly screen: string; readonly options: BrowserContextOptions }[] = [
  { screen: 'light, 1280 × 720', options: { colorScheme: 'light', viewport: { width: 1280, height: 720 } } },
  { screen: 'dark, 1280 × 720', options: { colorScheme: 'dark', viewport: { width: 1280, height: 720 } } },
  { screen: 'light, at 200 % zoom', options: { colorScheme: 'light', viewport: { width: 640, height: 360 } } },
  {
    screen: 'dark, a phone',
    options: { colorScheme: 'dark', viewport: { width: 360, height: 740 }, hasTouch: true },
  },
];

const TOURS = [
  { tour: 'a dive, kit, a lesson', states: STATES },
  { tour: 'what there is to learn', states: [STATES[0]!, ...LEARN_STATES] },
  { tour: 'a class', states: CLASS_STATES },
];

/** What a thumb would miss on a phone, and what reaches out sideways. */
const unhandy = (page: Page) =>
  page.evaluate(() => {
    const shown = [...document.querySelectorAll('button, select, summary, input, [role=slider]')].filter((one) =>
      one.checkVisibility({ visibilityProperty: true, opacityProperty: true }),
    );
    return shown.flatMap((one) => {
      // A box to tick is as large as the words beside it.
      const target = one.matches('input') ? (one.closest('label') ?? one) : one;
      const { left, right, width, height } = target.getBoundingClientRect();
      if (width <= 1 || height <= 1) return [];
      const called = `${one.tagName} ${(one.getAttribute('aria-label') ?? target.textContent ?? '').trim().slice(0, 40)}`;
      const small = width < 47.5 || height < 47.5 ? [`${called}: ${width.toFixed(0)} × ${height.toFixed(0)} px`] : [];
      // What may be pulled sideways within itself is within reach.
      let pulled = false;
      for (let above = one.parentElement; above; above = above.parentElement)
        pulled ||= /auto|scroll/.test(getComputedStyle(above).overflowX);
      const out = (left < -0.5 || right > innerWidth + 0.5) && !pulled ? [`${called}: ${left}–${right}`] : [];
      return [...small, ...out];
    });
  });

describe.each(SCREENS)('$screen', ({ screen, options }) => {
  test.each(TOURS)(
    '$tour: no place and state breaks a rule of WCAG 2.2 AA, none scrolls sideways, and a thumb meets everything on a phone',
    { timeout: 180_000 },
    async ({ states }) => {
      await visit(
        './',
        async (page) => {
          for (const { state, reach } of states) {
            await reach(page);
            expect.soft(await breaches(page), state).toEqual([]);
            const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
            expect.soft(sideways, `${state}: pixels to scroll sideways`).toBeLessThanOrEqual(0);
            if (screen.includes('phone')) expect.soft(await unhandy(page), state).toEqual([]);
          }
        },
        { ...options, madeTime: true },
      );
    },
  );
});

test.each(TOURS)(
  '$tour: by keyboard alone every stop of every place is seen: marked, and in the window',
  { timeout: 180_000 },
  async ({ states }) => {
    await visit(
      './',
      async (page) => {
        for (const { state, reach } of states) {
          await reach(page);
          const unseen = new Set<string>();
          let stops = 0;
          for (; stops < 160; stops++) {
            await page.keyboard.press('Tab');
            const stop = await page.evaluate(() => {
              const one = document.activeElement;
              if (!one || one === document.body) return null;
              const again = one.hasAttribute('data-toured');
              one.setAttribute('data-toured', '');
              // A box that is drawn by its label is marked there.
              const marked = [one, one.closest('label')].some((each) => {
                if (!each) return false;
                const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(each);
                return (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) || boxShadow !== 'none';
              });
              const { left, right, top, bottom } = one.getBoundingClientRect();
              const inside = right > 0 && left < innerWidth && bottom > 0 && top < innerHeight;
              const called = `${one.tagName} ${(one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 40)}`;
              return {
                again,
                trouble: marked ? (inside ? '' : `${called}: out of the window`) : `${called}: not marked`,
              };
            });
            if (stop?.again) break;
            if (stop?.trouble) unseen.add(stop.trouble);
          }
          expect.soft(stops, `${state}: stops`).toBeGreaterThan(1);
          expect.soft(stops, `${state}: the tour comes round`).toBeLessThan(160);
          expect.soft([...unseen], state).toEqual([]);
          await page.evaluate(() => {
            for (const one of document.querySelectorAll('[data-toured]')) one.removeAttribute('data-toured');
            (document.activeElement as HTMLElement | null)?.blur();
          });
        }
      },
      { viewport: { width: 1280, height: 720 }, madeTime: true },
    );
  },
);
