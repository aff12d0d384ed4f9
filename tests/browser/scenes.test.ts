import type { Page } from 'playwright';
import { beforeAll, describe, expect, test } from 'vitest';
import type { StageView } from '../../src/stage/index.ts';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';
import { MOST_OFF, cellsOf, differences, keepScene, troubleWith, type Cells } from './scene-picture.ts';
import { buildStagePage, stagePage } from './stage-page/build.ts';
import type { Beside, Harness } from './stage-page/main.ts';
import { band, dark, projector, scenes, sizes, type Scene } from './stage-scenes.ts';

declare const harness: Harness;

const renew = process.env['MIDWATER_SCENES'] === 'renew';

/** The page as it looks once nothing of it changes any more, by cells. */
async function look(page: Page): Promise<Cells> {
  let last = await page.screenshot({ animations: 'disabled', caret: 'hide' });
  for (let i = 0; i < 40; i++) {
    await page.waitForTimeout(60);
    const now = await page.screenshot({ animations: 'disabled', caret: 'hide' });
    if (now.equals(last)) return cellsOf(now);
    last = now;
  }
  throw new Error('the scene never stands still');
}

/** Compares a scene with its kept picture, or keeps it. */
async function meet(name: string, page: Page): Promise<void> {
  const cells = await look(page);
  if (renew) keepScene(name, cells);
  expect.soft(troubleWith(name, cells)).toBeNull();
}

describe('the stage', () => {
  beforeAll(buildStagePage);
  const visit = useChromium(stagePage);

  test(`looks as it did in ${Object.keys(scenes).length} fixed states`, { timeout: 180_000, retry: 0 }, async () => {
    for (const size of Object.keys(sizes) as (keyof typeof sizes)[])
      await visit(
        './',
        async (page) => {
          await page.evaluate(() => harness.open({ renderer: 'canvas' }));
          for (const [name, scene] of Object.entries(scenes)) {
            if ((scene.size ?? 'laptop') !== size) continue;
            await page.evaluate(
              ({ script, atS, wish, beside }) => harness.show(script, atS, wish, beside),
              scene as Required<Scene>,
            );
            await meet(name, page);
          }
        },
        { viewport: sizes[size] },
      );
  });

  test('whole lines of flown lessons look as they did', { timeout: 60_000, retry: 0 }, async () => {
    const sheets = {
      'whole line': ['first-dive', 'dumper', {}, 16, { width: 470, height: 560 }],
      'whole line on a phone in the dark': ['hover', 'learner', dark, 16, { width: 312, height: 260 }],
      'whole line for a class': ['first-dive', 'kicker', projector, 23, { width: 720, height: 760 }],
    } as const;
    for (const [name, [id, pilot, wish, textPx, viewport]] of Object.entries(sheets))
      await visit(
        './',
        async (page) => {
          await page.evaluate(() => document.fonts.load("500 16px 'Figtree Variable'"));
          await page.evaluate(([lesson, by, otherwise, size]) => harness.sheet(lesson, by, otherwise, size), [
            id,
            pilot,
            wish,
            textPx,
          ] as const);
          await meet(name, page);
        },
        { viewport },
      );
  });

  test('looks different when a line is gone, a label is gone, or a diver is 0.3 m deeper; and never by being drawn again', async () => {
    await visit(
      './',
      async (page) => {
        await page.evaluate(() => harness.open({ renderer: 'canvas' }));
        const other: Beside = { script: 'descent', as: 'branch' };
        const shown = async (wish: Partial<StageView>, beside: readonly Beside[] = [other]) => {
          const whole = { bands: [band], ...wish };
          await page.evaluate(({ whole, beside }) => harness.show('hover', 20, whole, beside), { whole, beside });
          return look(page);
        };
        const usual = await shown({});
        const off = async (...otherwise: Parameters<typeof shown>) =>
          differences(usual, await shown(...otherwise)).length;
        expect(await off({}, [])).toBeGreaterThan(MOST_OFF);
        expect(await off({ bands: [{ ...band, words: '' }] })).toBeGreaterThan(MOST_OFF);
        expect(await off({ forecastM: null })).toBeGreaterThan(MOST_OFF);
        expect(await off({ depthM: 8.3 })).toBeGreaterThan(MOST_OFF);
        expect(await off({})).toBe(0);
      },
      { viewport: sizes.laptop },
    );
  });
});

describe('the page', () => {
  const visit = useChromium();
  const laptop = { width: 1280, height: 720 };
  const phone = { width: 360, height: 740 };
  const large = { width: 1920, height: 1080 };
  const named = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
  const noted = (page: Page) => named(page, 'I have read this').click();

  /** Flies free for some seconds of made time and freezes. */
  async function flown(page: Page, seconds: number): Promise<void> {
    await page.waitForSelector('practice-deck button.act');
    await noted(page);
    await named(page, 'fly').click();
    await page.waitForSelector('[data-act=kick-up]');
    // From here on time is made: a press in the world's time would begin the dive some frames before.
    await pass(page, 0.1);
    await page.keyboard.down('KeyK');
    await pass(page, seconds);
    await page.keyboard.up('KeyK');
    await page.keyboard.press('KeyP');
    await pass(page, 0.2);
  }

  const places: readonly {
    readonly name: string;
    readonly viewport: { readonly width: number; readonly height: number };
    readonly colorScheme?: 'light' | 'dark';
    readonly path?: string;
    readonly go: (page: Page) => Promise<unknown>;
  }[] = [
    { name: 'first screen', viewport: laptop, go: (page) => page.waitForSelector('practice-deck button.act') },
    {
      name: 'first screen on a phone in the dark',
      viewport: phone,
      colorScheme: 'dark',
      go: (page) => page.waitForSelector('practice-deck button.act'),
    },
    { name: 'free dive', viewport: laptop, go: (page) => flown(page, 4) },
    { name: 'free dive on a phone', viewport: phone, go: (page) => flown(page, 4) },
    {
      name: 'question',
      viewport: laptop,
      path: './#/lessons/first-dive',
      go: (page) => page.waitForSelector('question-sheet section'),
    },
    {
      name: 'question for a class in the dark',
      viewport: large,
      colorScheme: 'dark',
      path: './#/lessons/first-dive',
      async go(page) {
        await page.waitForSelector('question-sheet section');
        await noted(page);
        await named(page, 'more').click();
        await page.locator('more-sheet summary', { hasText: 'Keys' }).click();
        await page.getByLabel('projector').check();
        await named(page, 'close').click();
      },
    },
    {
      name: 'lessons',
      viewport: laptop,
      path: './#/lessons',
      go: (page) => page.waitForSelector('lesson-list section'),
    },
    {
      name: 'kit and water in the dark',
      viewport: laptop,
      colorScheme: 'dark',
      path: './#/kit/two-piece',
      go: (page) => page.waitForSelector('kit-diver section'),
    },
    {
      name: 'traces',
      viewport: laptop,
      async go(page) {
        await flown(page, 8);
        await page.keyboard.press('KeyT');
        await page.waitForSelector('trace-panel canvas');
        await pass(page, 1);
      },
    },
  ];

  test(`looks as it did in ${places.length} places`, { timeout: 180_000, retry: 1 }, async () => {
    for (const { name, viewport, colorScheme = 'light', path = './', go } of places)
      await visit(
        path,
        async (page) => {
          await go(page);
          await meet(name, page);
        },
        { viewport, colorScheme, madeTime: true },
      );
  });
});
