import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();

test('larger lungs reach as far once they are kept as while they were tried, and as far as before once put back', async () => {
  await visit('./#/kit/two-piece', async (page) => {
    await page.getByRole('button', { name: 'I have read this', exact: true }).click();
    await page.waitForSelector('kit-diver section');
    const reach = () => page.locator('kit-changes figure p').first().innerText();
    const how = () => page.locator('kit-changes .how').innerText();
    const before = await reach();
    await expect
      .poll(() => how())
      .toMatch(/lungs of 1\.8 to 5\.8\sL alone .*; lungs a fifth larger: 2\.2 to 7\.0\sL\./);
    await page.locator('.change', { hasText: 'lungs a fifth larger' }).click();
    await page.waitForSelector('.change[aria-pressed=true]');
    await expect
      .poll(() => page.locator('kit-diver kit-tried').innerText())
      .toMatch(/Breath alone, then of 2\.2 to 7\.0\sL,/);
    const tried = await page.locator('kit-changes figure .gas-words').innerText();
    expect(tried.replace('then ', 'now ')).not.toBe(before);
    await page.locator('kit-diver').getByRole('button', { name: 'keep' }).click();
    await page.waitForSelector('.change[aria-pressed=true]', { state: 'detached' });
    await expect.poll(() => reach()).toBe(tried.replace('then ', 'now '));
    await expect.poll(() => how()).toMatch(/lungs of 2\.2 to 7\.0\sL alone /);
    await page.locator('kit-diver').getByRole('button', { name: 'undo' }).click();
    await page.waitForFunction(
      (was) => document.querySelector('kit-changes figure p')?.textContent?.trim() === was,
      before,
    );
    await expect.poll(() => how()).toMatch(/lungs of 1\.8 to 5\.8\sL alone /);
  });
});
