import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { keepFlight } from './kept-flight.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();

/** Comes back to a flown lesson that was kept, in its debrief. */
async function debriefOf(page: Page, by: 'learner' | 'able', attempt: number): Promise<void> {
  await keepFlight(page, 'first-dive', by, attempt);
  await page.goto('about:blank');
  await page.goto('./#/debrief');
  await page.waitForSelector('debrief-sheet .next');
}

/** Names of the ghosts that are kept beside dives. */
const ghosts = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<string[]>((resolve) => {
        const opening = indexedDB.open('midwater');
        opening.onsuccess = () => {
          const db = opening.result;
          const asking = db.transaction('beside').objectStore('beside').getAll();
          asking.onsuccess = () => {
            db.close();
            resolve((asking.result as { ghost: { name: string } | null }[]).flatMap(({ ghost }) => ghost?.name ?? []));
          };
        };
      }),
  );

test('a debrief keeps the word beside its result, reports over two flights, and flies a simulated diver beside it', async () => {
  await visit('./#/column', async (page) => {
    await page.waitForFunction(async () => (await indexedDB.databases()).some(({ name }) => name === 'midwater'));
    await page.waitForSelector('practice-deck button.act');
    await page.getByRole('button', { name: 'I have read this' }).click();
    await debriefOf(page, 'learner', 1);
    const debrief = page.locator('debrief-sheet');
    const word = debrief.locator('textarea');
    await word.fill('Wait for the breath.');
    await debrief.getByText('Kept in this browser.').waitFor();
    expect(await debrief.locator('thead th').allInnerTexts()).toEqual(['mark', 'this flight', 'reported']);

    // The same flight once more is the same result, with its word.
    await page.reload();
    await expect.poll(() => word.inputValue().catch(() => '')).toBe('Wait for the breath.');
    expect(await debrief.locator('.earlier').count()).toBe(0);

    await debriefOf(page, 'able', 3);
    await expect.poll(() => debrief.locator('.earlier .word').allInnerTexts()).toEqual(['“Wait for the breath.”']);
    await debrief.locator('select').selectOption('pilot:steady');
    await expect
      .poll(() => debrief.locator('thead th').allInnerTexts())
      .toEqual(['mark', 'this flight', 'last 2 flights', 'steady, simulated']);
    await debrief.getByText('A simulated diver. Trims with slow breaths').waitFor();
    // Which is kept with the dive.
    await expect.poll(() => ghosts(page)).toEqual(['steady, simulated']);
    await page.reload();
    await expect.poll(() => debrief.locator('td.beside').count()).toBe(3);
    expect(await breaches(page)).toEqual([]);

    await page.setViewportSize({ width: 360, height: 740 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    await page.setViewportSize({ width: 1280, height: 720 });
    // After the third flight gauges are gone, and can be had again.
    await debrief.getByRole('button', { name: 'again', exact: true }).click();
    await page.getByText('No gauges: you flew this before.').waitFor();
    expect(await page.locator('lane-numbers p').count()).toBe(0);
    await page.getByRole('button', { name: 'begin with all gauges' }).click();
    await expect.poll(() => page.locator('lane-numbers .depth').count()).toBe(1);
  });
}, 60_000);
