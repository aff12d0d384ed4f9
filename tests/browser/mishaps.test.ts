import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import type { Readings } from '../../src/panels/index.ts';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';

const visit = useChromium();

const named = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const readings = (page: Page) =>
  page.locator('lane-numbers').evaluate((lane) => (lane as unknown as { readings: Readings }).readings);
const jacketL = async (page: Page) => (await readings(page)).gas.find(({ name }) => name === 'jacket')!.hereM3 * 1e3;

/** Makes something go wrong by its button in *more*, which closes; says what was said of it, and lets seconds pass. */
async function wrong(page: Page, button: string, seconds: number): Promise<string> {
  await named(page, 'more').click();
  await named(page, button).click();
  await page.locator('more-sheet dialog').waitFor({ state: 'hidden' });
  // What is said to those who hear the page gives way to the next thing soon.
  const said = await page.getByRole('status').allInnerTexts();
  await pass(page, seconds);
  return said.join(' ');
}

test('buttons in more: inflator and vent stick, a current takes the diver down, lead is lost; each is said and does what it says', async () => {
  await visit(
    './',
    async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await named(page, 'I have read this').click();
      await named(page, 'fly').click();
      for (const key of ['KeyK', 'ArrowDown']) await page.keyboard.down(key);
      await pass(page, 8);
      for (const key of ['KeyK', 'ArrowDown']) await page.keyboard.up(key);
      await pass(page, 1);

      const emptyL = await jacketL(page);
      expect(await wrong(page, 'inflator stuck open for 8 s', 3)).toContain('The inflator sticks open.');
      const filledL = await jacketL(page);
      expect(filledL).toBeGreaterThan(emptyL + 2);
      await pass(page, 6);

      const heldL = await jacketL(page);
      expect(await wrong(page, 'vent stuck open for 8 s', 4)).toContain('The vent sticks open.');
      expect(await jacketL(page)).toBeLessThan(heldL - 1);
      await pass(page, 5);

      const { speedMps } = await readings(page);
      await wrong(page, 'a down-current of 12 m/min for 10 s', 2);
      expect((await readings(page)).speedMps).toBeGreaterThan(speedMps + 0.1);

      const { down } = await readings(page);
      await wrong(page, 'a piece of lead is lost', 0.5);
      const lead = (pulls: Readings['down']) => pulls.find(({ name }) => name === 'lead')?.kg ?? 0;
      expect(lead((await readings(page)).down)).toBeLessThan(lead(down) - 0.5);
    },
    { madeTime: true },
  );
});
