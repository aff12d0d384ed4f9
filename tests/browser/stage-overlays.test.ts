import type { Page } from 'playwright';
import { beforeAll, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { buildStagePage, stagePage } from './stage-page/build.ts';
import type { Harness } from './stage-page/main.ts';
import { overlayViews, showWith } from './stage-page/overlays.ts';

declare const harness: Harness;

beforeAll(buildStagePage);

const visit = useChromium(stagePage);
const sizes = [
  { viewport: { width: 1095, height: 488 } },
  { viewport: { width: 1480, height: 930 } },
  { viewport: { width: 360, height: 368 } },
];
const isLoaded = (page: Page) =>
  page.evaluate(() => performance.getEntriesByType('resource').some(({ name }) => name.includes('overlays')));

test('Stage loads what lies over the water when a view first has some of it, and draws it then by itself', async () => {
  await visit(
    './',
    async (page) => {
      await page.evaluate(async () => {
        await harness.open({ renderer: 'canvas' });
        harness.show('hover', 20);
      });
      expect(await isLoaded(page)).toBe(false);
      const bare = await page.screenshot();
      await page.evaluate((wish) => harness.again(wish), overlayViews['forces']!);
      await expect.poll(() => isLoaded(page)).toBe(true);
      await expect.poll(async () => (await page.screenshot()).equals(bare)).toBe(false);
      await page.evaluate(() => harness.again());
      expect((await page.screenshot()).equals(bare)).toBe(true);
    },
    sizes[0],
  );
});

for (const renderer of ['canvas', 'webgl'] as const)
  test(`Stage draws every overlay with ${renderer} in both themes, without a fault`, async () => {
    // Software WebGL is slow; what differs by size is laid out before a renderer sees it.
    for (const size of renderer === 'canvas' ? sizes : sizes.slice(0, 1))
      await visit(
        './',
        async (page) => {
          await page.evaluate((renderer) => harness.open({ renderer }), renderer);
          for (const wish of Object.values(overlayViews))
            for (const theme of ['light', 'dark'] as const) {
              const whole = { ...wish, theme, projector: size.viewport.width > 1400 };
              await showWith(page, whole);
              const bare = { ...whole, overlay: null, neutral: [], breathReachM: null };
              const over = await page.screenshot();
              await page.evaluate((bare) => harness.again(bare), bare);
              expect((await page.screenshot()).equals(over)).toBe(false);
            }
        },
        size,
      );
  });

test('Stage writes no words while a picture with an overlay is drawn again', async () => {
  await visit(
    './',
    async (page) => {
      await page.evaluate(() => harness.open({ renderer: 'canvas' }));
      for (const wish of Object.values(overlayViews)) {
        await showWith(page, wish);
        const written = await page.evaluate((wish) => {
          let count = 0;
          const undo: (() => void)[] = [];
          for (const context of [CanvasRenderingContext2D.prototype, OffscreenCanvasRenderingContext2D.prototype]) {
            const write = context.fillText;
            context.fillText = function (...words: Parameters<typeof write>) {
              count++;
              return write.apply(this, words);
            };
            undo.push(() => (context.fillText = write));
          }
          for (let i = 0; i < 50; i++) harness.again(wish);
          for (const each of undo) each();
          return count;
        }, wish);
        expect(written).toBe(0);
      }
    },
    sizes[0],
  );
});
