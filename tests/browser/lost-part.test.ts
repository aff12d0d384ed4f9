import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();

test('a part of the program that does not come is told, the dive flies on, and it is had once the connection is back', async () => {
  await visit('./', async (page, watch) => {
    await page.waitForSelector('practice-deck button.act');
    // Whatever was not fetched by now is cut off, as on a train in a tunnel.
    watch.foresee(/^console: Failed to load resource: net::ERR_(FAILED|INTERNET_DISCONNECTED) /);
    await page.context().setOffline(true);
    await page.route(/\/assets\//, (route) => route.abort());
    await page.keyboard.down('KeyK');
    await page.waitForTimeout(300);
    await page.keyboard.up('KeyK');
    const ask = () => page.getByRole('button', { name: 'kit and water', exact: true });
    expect(await ask().count()).toBe(0);
    await page.keyboard.press('F4');
    await ask().click();
    const trouble = page.locator('problem-list');
    await expect
      .poll(() => trouble.innerText())
      .toContain('That did not work, and nothing was lost: a part of the program was not loaded.');
    expect(new URL(page.url()).hash).not.toContain('kit');
    await page.unroute(/\/assets\//);
    await page.context().setOffline(false);
    await ask().click();
    await page.locator('kit-sheet').waitFor();
    expect(await trouble.locator('aside').count()).toBe(0);
  });
});
