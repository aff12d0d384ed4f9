import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import type { PairView } from '../../src/panels/index.ts';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const strip = (page: Page) => page.locator('pair-strip section');

/** What the strip was told. */
const told = (page: Page) =>
  page.locator('pair-strip').evaluate((element) => (element as unknown as { pair: PairView }).pair);
const depths = async (page: Page) => (await told(page)).sides!.map(({ depthM }) => depthM) as [number, number];

/** Who is kept beside the dive in hand. */
const keptBeside = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<unknown>((resolve) => {
        const opening = indexedDB.open('midwater');
        opening.onsuccess = () => {
          const db = opening.result;
          const asking = db.transaction('dives').objectStore('dives').getAll();
          asking.onsuccess = () => {
            const lines = asking.result as { inHand: boolean; pair: unknown }[];
            db.close();
            resolve(lines.find(({ inHand }) => inHand)?.pair);
          };
        };
      }),
  );

async function begin(page: Page): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await name(page, 'I have read this').click();
  await name(page, 'fly').click();
}

/** Both lie within the page, and neither on the other. */
async function fits(page: Page): Promise<void> {
  const boxOf = async (of: string) => (await page.locator(of).boundingBox())!;
  const { width, height } = page.viewportSize()!;
  const [water, both, deck] = await Promise.all(['main.water', 'pair-strip section', 'practice-deck'].map(boxOf));
  expect(both!.x).toBeGreaterThanOrEqual(0);
  expect(both!.x + both!.width).toBeLessThanOrEqual(width);
  expect(both!.y).toBeGreaterThanOrEqual(water!.y + water!.height - 1);
  expect(both!.y + both!.height).toBeLessThanOrEqual(Math.max(deck!.y, 0) + (width < 761 ? height : 1));
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  const wide = await page.locator('pair-strip').evaluate((element) => element.scrollWidth - element.clientWidth);
  expect(wide).toBeLessThanOrEqual(0);
}

test('by keys alone two divers begin, dive on one axis of time, go back together, and change places', async () => {
  await visit(
    './',
    async (page) => {
      await begin(page);
      await page.keyboard.press('Quote');
      await strip(page).waitFor();
      await page.keyboard.press('Equal');
      for (const key of ['KeyK', 'KeyS']) await page.keyboard.down(key);
      await expect.poll(async () => (await depths(page))[0], { timeout: 30_000 }).toBeGreaterThan(3);
      for (const key of ['KeyK', 'KeyS']) await page.keyboard.up(key);
      await page.keyboard.press('KeyP');
      await page.locator('time-strip .strip').waitFor();

      const end = (await told(page)).sides!;
      const apartM = end[1].depthM - end[0].depthM;
      expect(apartM).toBeGreaterThan(0.3);
      expect(end[1].presses).toEqual(end[0].presses);
      expect(await page.locator('tr.beside td').first().innerText()).toBe(`${apartM.toFixed(1)}\u00a0m deeper`);
      expect(await page.locator('lane-numbers .depth').innerText()).toBe(`${end[0].depthM.toFixed(1)} m`);
      expect(await breaches(page)).toEqual([]);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await breaches(page)).toEqual([]);

      // Both go back, and come again to the very same.
      for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+BracketLeft');
      await expect.poll(async () => (await depths(page))[1]).toBeLessThan(end[1].depthM - 0.3);
      expect((await depths(page))[0]).toBeLessThan(end[0].depthM - 0.3);
      await page.getByRole('slider', { name: 'Moment of the dive' }).focus();
      await page.keyboard.press('End');
      await expect.poll(async () => (await told(page)).sides).toEqual(end);

      // The other one is flown from here, and where he is, is what the lane says.
      await page.keyboard.press('Semicolon');
      await expect.poll(async () => (await told(page)).words).toBe('2 kg less lead');
      await expect.poll(async () => Math.abs((await depths(page))[0] - end[1].depthM)).toBeLessThan(0.05);
      const [flown, left] = await depths(page);
      expect(left).toBeCloseTo(end[0].depthM, 1);
      await expect.poll(() => page.locator('lane-numbers .depth').innerText()).toBe(`${flown.toFixed(1)} m`);

      for (const [width, height] of [
        [1280, 720],
        [1024, 768],
        [1920, 1080],
      ] as const) {
        await page.setViewportSize({ width, height });
        await fits(page);
      }

      // After a reload both are there again.
      await page.waitForFunction(async () => {
        const { databases } = indexedDB;
        return (await databases.call(indexedDB)).length > 0;
      });
      await page.keyboard.press('BracketRight');
      await expect.poll(async () => (await depths(page))[0]).not.toBe(flown);
      await expect.poll(() => page.evaluate(() => sessionStorage.getItem('midwater-pair'))).toContain('"on":true');
      await page.reload();
      await strip(page).waitFor();
      await expect.poll(async () => (await told(page)).words).toBe('2 kg less lead');
      await expect.poll(async () => Math.abs((await depths(page))[0] - flown)).toBeLessThan(0.6);

      // So they are in another tab, which knew of nobody; who is sent away there is gone from what is kept.
      await page.close();
      const next = await page.context().newPage();
      await next.goto('./');
      await strip(next).waitFor();
      await expect.poll(async () => (await told(next)).words).toBe('2 kg less lead');
      await expect.poll(async () => Math.abs((await depths(next))[0] - flown)).toBeLessThan(0.6);
      await next.keyboard.press('Quote');
      await strip(next).waitFor({ state: 'detached' });
      await expect.poll(() => keptBeside(next)).toBeNull();
      await next.close();
      const alone = await page.context().newPage();
      await alone.goto('./');
      await alone.locator('kept-note aside').waitFor();
      await expect.poll(() => strip(alone).count()).toBe(0);
    },
    { viewport: { width: 1280, height: 720 } },
  );
});

test('two kilograms too many is shown as two divers, ready in two presses and walked by next alone', async () => {
  await visit(
    './',
    async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await page.getByRole('button', { name: 'I have read this', exact: true }).click();
      await page.getByRole('button', { name: 'teach a class', exact: true }).click();
      await page.locator('show-list .option').filter({ hasText: 'Two kilograms too many' }).click();
      await strip(page).waitFor();
      const begun = (await told(page)).sides!;
      expect(begun[1].depthM).toBeCloseTo(begun[0].depthM, 9);
      await page.keyboard.press('PageDown');
      await page.locator('question-sheet section').waitFor();
      await page.keyboard.press('PageDown');
      await pass(page, 40);
      const { sides, brought } = await told(page);
      expect(brought).toBe(true);
      expect(sides![0].depthM).toBeCloseTo(7, 1);
      expect(sides![0].depthM - sides![1].depthM).toBeGreaterThan(0.5);
      expect(await page.locator('title-bar').innerText()).toMatch(/A: at 7\sm after \d+\ss/);
      // They stay two: what would part them is not offered, and its keys do nothing.
      expect(await strip(page).getByRole('button').count()).toBe(1);
      await page.keyboard.press('Quote');
      await pass(page, 0.3);
      expect((await told(page)).sides).toEqual(sides);
    },
    { madeTime: true },
  );
});

test('by touch alone on a phone another diver is chosen, his looks are seen, and he is sent away', async () => {
  await visit(
    './',
    async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await name(page, 'I have read this').tap();
      await name(page, 'fly').tap();
      await name(page, 'more').tap();
      await page.locator('pair-list select.difference').waitFor();
      expect(await breaches(page)).toEqual([]);
      await page.locator('pair-list select.difference').selectOption({ label: '4 kg more lead' });
      await page.locator('pair-list select.by').selectOption('idler');
      await name(page, 'dive as two').tap();
      await strip(page).waitFor();
      expect(await strip(page).innerText()).toMatch(/^Diver 2 \(4.kg more lead\): /);
      await fits(page);
      expect(await breaches(page)).toEqual([]);
      const heightPx = (await page.locator('main.water').boundingBox())!.height;
      expect(heightPx).toBeGreaterThan(180);
      await name(page, 'table').tap();
      await fits(page);
      for (const button of await page.locator('pair-strip button:visible').all()) {
        const { width, height } = (await button.boundingBox())!;
        expect(Math.min(width, height)).toBeGreaterThanOrEqual(48);
      }
      await name(page, 'dive alone').tap();
      await strip(page).waitFor({ state: 'detached' });
    },
    { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
  );
});

test('a dive that is saved as a file comes back with its second diver where it is opened, in another browser too', async () => {
  await visit('./', async (page) => {
    await begin(page);
    await page.keyboard.press('Quote');
    await strip(page).waitFor();
    await page.keyboard.down('KeyK');
    await page.waitForTimeout(1500);
    await page.keyboard.up('KeyK');
    await page.keyboard.press('KeyP');
    await page.locator('time-strip .strip').waitFor();
    await expect.poll(async () => (await told(page)).sides).not.toBeNull();
    const both = (await told(page)).sides!.map(({ depthM }) => depthM);
    await name(page, 'more').click();
    const [download] = await Promise.all([page.waitForEvent('download'), name(page, 'save this dive').click()]);
    const file = { name: 'two.midwater', mimeType: '', buffer: await readFile(await download.path()) };
    await visit('./', async (other) => {
      await begin(other);
      await name(other, 'more').click();
      await other.getByLabel('open a setup or a saved dive').setInputFiles(file);
      await strip(other).waitFor();
      await expect.poll(async () => (await told(other)).sides?.map(({ depthM }) => depthM)).toEqual(both);
      expect(await other.locator('problem-list aside').count()).toBe(0);
    });
  });
});
