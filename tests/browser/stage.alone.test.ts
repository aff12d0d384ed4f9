import { beforeAll, expect, test } from 'vitest';
import type { FrameCost } from '../../src/stage/index.ts';
import { useChromium } from './chromium.ts';
import { buildStagePage, stagePage } from './stage-page/build.ts';
import type { Harness } from './stage-page/main.ts';
import { overlayViews, showWith } from './stage-page/overlays.ts';
import { slowness } from './pace.ts';

declare const harness: Harness;

beforeAll(buildStagePage);

const visit = useChromium(stagePage);
const laptop = { viewport: { width: 1095, height: 488 } };
const band = { fromS: 5, toS: null, topM: 7, bottomM: 9, words: 'stay between 7 and 9 m' };

test('Stage composes a frame with everything on in 1 ms at the median and 3 ms at the 95th percentile', async () => {
  await visit(
    './',
    async (page) => {
      const { composed, rendered } = await page.evaluate(
        async (bands) => {
          await harness.open({ renderer: 'canvas' });
          const wish = { bands, limitTaught: true, rings: [{ atS: 6, number: 1 }] };
          harness.show('hover', 20, wish);
          harness.fly(60, wish);
          const costs: FrameCost[] = [];
          for (let i = 0; i < 300; i++) {
            costs.push(...harness.fly(1, wish));
            if (i % 4 === 0) await new Promise(requestAnimationFrame);
          }
          const at = (name: 'composedMs' | 'renderedMs', share: number) =>
            costs.map((cost) => cost[name]).sort((a, b) => a - b)[Math.floor(costs.length * share)]!;
          return {
            composed: [at('composedMs', 0.5), at('composedMs', 0.95)],
            rendered: [at('renderedMs', 0.5), at('renderedMs', 0.95)],
          };
        },
        [band],
      );
      const told = (ms: readonly number[]) => ms.map((each) => each.toFixed(2)).join(' / ');
      process.stdout.write(`stage, ms at 50 % / 95 %: composed ${told(composed)}, canvas rendered ${told(rendered)}\n`);
      const slow = await slowness(page);
      expect(composed[0]).toBeLessThanOrEqual(slow);
      expect(composed[1]).toBeLessThanOrEqual(3 * slow);
    },
    laptop,
  );
});

test('Stage composes a frame with any overlay in 1.5 ms at the median, a new map ten times a second included', async () => {
  await visit(
    './',
    async (page) => {
      await page.evaluate(() => harness.open({ renderer: 'canvas' }));
      const slow = await slowness(page);
      for (const [name, wish] of Object.entries(overlayViews)) {
        await showWith(page, wish);
        const { composed, rendered } = await page.evaluate(async (wish) => {
          harness.fly(30, wish);
          const costs: FrameCost[] = [];
          for (let i = 0; i < 100; i++) {
            // Six frames in a row share a map: maps come ten times a second, frames sixty times.
            const overlay =
              wish.overlay?.kind === 'map' && i % 6 === 0
                ? { ...wish.overlay, maps: wish.overlay.maps.map((map) => ({ ...map })) }
                : wish.overlay;
            costs.push(...harness.fly(1, { ...wish, overlay: overlay ?? null }));
            if (i % 4 === 0) await new Promise(requestAnimationFrame);
          }
          const at = (part: 'composedMs' | 'renderedMs', share: number) =>
            costs.map((cost) => cost[part]).sort((a, b) => a - b)[Math.floor(costs.length * share)]!;
          return {
            composed: [at('composedMs', 0.5), at('composedMs', 0.95)],
            rendered: [at('renderedMs', 0.5), at('renderedMs', 0.95)],
          };
        }, wish);
        const told = (ms: readonly number[]) => ms.map((each) => each.toFixed(2)).join(' / ');
        process.stdout.write(
          `stage with ${name}, ms at 50 % / 95 %: composed ${told(composed)}, rendered ${told(rendered)}\n`,
        );
        expect(composed[0]).toBeLessThanOrEqual(1.5 * slow);
      }
    },
    laptop,
  );
});
