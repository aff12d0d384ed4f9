import type { Page } from 'playwright';
import { beforeAll, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { buildStagePage, stagePage } from './stage-page/build.ts';
import type { Harness } from './stage-page/main.ts';

declare const harness: Harness;

beforeAll(buildStagePage);

const visit = useChromium(stagePage);
const laptop = { viewport: { width: 1095, height: 488 } };
const band = { fromS: 5, toS: null, topM: 7, bottomM: 9, words: 'stay between 7 and 9 m' };

/** How many colours a coarse grid of the picture's pixels has: one where nothing was drawn. */
async function coloursOf(page: Page): Promise<number> {
  const picture = await page.screenshot();
  return page.evaluate(
    async (bytes) => {
      const image = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }));
      const canvas = new OffscreenCanvas(image.width, image.height);
      const context = canvas.getContext('2d')!;
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, image.width, image.height);
      const seen = new Set<number>();
      for (let i = 0; i < data.length; i += 4 * 37) seen.add((data[i]! << 16) | (data[i + 1]! << 8) | data[i + 2]!);
      return seen.size;
    },
    [...picture],
  );
}

for (const renderer of ['canvas', 'webgl'] as const)
  test(`Stage draws every script with ${renderer} under the strict content policy, without a fault`, async () => {
    await visit(
      './',
      async (page) => {
        for (const script of ['hover', 'surface', 'descent', 'drop', 'loop', 'drysuit', 'twin', 'noSuit', 'bottom']) {
          const kind = await page.evaluate(
            async ([renderer, script]) => {
              await harness.open({ renderer });
              harness.show(script, 12);
              harness.fly(5);
              return harness.stage!.renderer;
            },
            [renderer, script] as const,
          );
          expect(kind).toBe(renderer);
        }
        expect(await coloursOf(page)).toBeGreaterThan(30);
      },
      laptop,
    );
  });

test('Stage keeps 9 m/min at 45° at every size, for the page beside it too', async () => {
  for (const [width, height] of [
    [1095, 488],
    [1480, 930],
    [360, 368],
  ] as const)
    await visit(
      './',
      async (page) => {
        const { across, down, chest } = await page.evaluate(async () => {
          await harness.open({ renderer: 'canvas' });
          harness.show('hover', 10);
          const { stage, scripted } = harness;
          const { depthM } = scripted!.dive.state;
          return {
            across: stage!.secondsToX(70) - stage!.secondsToX(10),
            down: stage!.depthToY(depthM + 9) - stage!.depthToY(depthM),
            chest: stage!.depthToY(depthM),
          };
        });
        expect(across / down).toBeCloseTo(1, 9);
        expect(chest).toBeGreaterThan(0);
        expect(chest).toBeLessThan(height);
      },
      { viewport: { width, height } },
    );
});

test('Stage writes words only when they change: a picture drawn again writes none', async () => {
  await visit(
    './',
    async (page) => {
      const { still, moving } = await page.evaluate(
        async (bands) => {
          await harness.open({ renderer: 'canvas' });
          harness.show('hover', 10, { bands });
          harness.fly(2, { bands });
          let written = 0;
          for (const context of [CanvasRenderingContext2D.prototype, OffscreenCanvasRenderingContext2D.prototype]) {
            const write = context.fillText;
            context.fillText = function (...words: Parameters<typeof write>) {
              written++;
              return write.apply(this, words);
            };
          }
          for (let i = 0; i < 50; i++) harness.again({ bands });
          const still = written;
          harness.fly(200, { bands });
          return { still, moving: written - still };
        },
        [band],
      );
      expect(still).toBe(0);
      // Ten seconds of flight: time ticks each second, the forecast's depth by the tenth of a metre.
      expect(moving).toBeGreaterThan(0);
      expect(moving).toBeLessThan(400);
    },
    laptop,
  );
});

test('Stage goes on with canvas when WebGL is lost', async () => {
  await visit(
    './',
    async (page) => {
      await page.evaluate(async () => {
        await harness.open({ renderer: 'webgl' });
        harness.show('hover', 12);
        const canvas = document.querySelector('canvas')!;
        canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext();
      });
      await page.waitForFunction(() => harness.stage!.renderer === 'canvas');
      const pxPerM = await page.evaluate(() => {
        harness.fly(10);
        return harness.stage!.pxPerM;
      });
      expect(pxPerM).toBeGreaterThan(0);
      expect(await page.locator('canvas').count()).toBe(1);
      expect(await coloursOf(page)).toBeGreaterThan(30);
    },
    laptop,
  );
});

test('Stage chooses canvas by itself where WebGL is drawn by software', async () => {
  await visit('./', async (page) => {
    const kind = await page.evaluate(async () => {
      await harness.open();
      return harness.stage!.renderer;
    });
    expect(kind).toBe('canvas');
  });
});

test('Stage shows the same picture of the same moment after going back to it', async () => {
  await visit(
    './',
    async (page) => {
      const picture = async (seconds: number) => {
        await page.evaluate((seconds) => harness.show('hover', seconds), seconds);
        return page.screenshot();
      };
      await page.evaluate(() => harness.open({ renderer: 'canvas' }));
      const first = await picture(12);
      await picture(30);
      expect((await picture(12)).equals(first)).toBe(true);
    },
    laptop,
  );
});
