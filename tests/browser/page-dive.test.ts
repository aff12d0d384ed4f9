import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();

/** What a person at the screen reads: depth in metres, speed in metres a minute, down positive, kilograms light. */
async function read(page: Page): Promise<{ title: string; depthM: number; mpmin: number; lightKg: number }> {
  const [title, lane] = await page.evaluate(() => [
    document.querySelector('title-bar h1')?.textContent ?? '',
    document.querySelector('lane-numbers')?.textContent ?? '',
  ]);
  const number = (found: RegExpMatchArray | null) => Number(found?.[1] ?? 0);
  const mpmin = number(lane.match(/(?:rising|sinking)\s+(\d+)/)) * (lane.includes('rising') ? -1 : 1);
  const lightKg = number(lane.match(/(?:light|heavy)\s+([\d.]+)/)) * (lane.includes('heavy') ? -1 : 1);
  return { title: title.trim(), depthM: number(lane.match(/([\d.]+) m/)), mpmin, lightKg };
}

async function begin(page: Page): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await page.getByRole('button', { name: 'I have read this' }).click();
  await page.getByRole('button', { name: 'learn in order' }).click();
  await page.getByRole('button', { name: 'begin First dive' }).click();
  await page.waitForSelector('question-sheet section');
}

/** Seconds of the dive for each second of the test. */
const SPEED = 1;

/** Holds a key for a moment of the dive. */
async function press(page: Page, key: string, ms: number): Promise<void> {
  await page.keyboard.down(key);
  await page.waitForTimeout(ms / SPEED);
  await page.keyboard.up(key);
}

/** Depth that the title of the phase speaks of; 0 at the surface. */
function targetM(title: string): number {
  if (title.startsWith('Going down') || title.startsWith('Neutral')) return 8;
  return title.startsWith('Coming up') || title.startsWith('Stop') ? 5 : 0;
}

/** One decision of a plain pilot: wants a speed for the distance, and the gas that brings it about. */
async function decide(page: Page): Promise<void> {
  const { title, depthM, mpmin, lightKg } = await read(page);
  const target = targetM(title);
  if (title.startsWith('Positive') || title.includes('positive again')) {
    if (depthM > 0.7) {
      // On the way up: slower than 9 m/min, and gas once the head is out.
      if (mpmin < -6) await press(page, 'KeyK', 250);
      else if (mpmin > -3) await press(page, 'KeyI', 120);
    } else if (!title.startsWith('Positive:')) await press(page, 'KeyI', 1500);
    return;
  }
  if (depthM < 1.2) return press(page, 'KeyK', 400);
  const wanted = Math.max(Math.min((target - depthM) * 5, 10), -6);
  const off = wanted - mpmin;
  // A kilogram light slows by roughly ten metres a minute; lead the speed by the force that already works.
  const need = off + lightKg * 8;
  if (need > 4) await press(page, 'KeyK', Math.min(need * 16, 300));
  else if (need < -4) await press(page, 'KeyI', Math.min(-need * 16, 300));
}

test('First dive is flown by keyboard from the first prediction to the debrief', async () => {
  await visit('./', async (page) => {
    await begin(page);
    let answered = 0;
    const endMs = Date.now() + 560_000;
    while ((await page.locator('debrief-sheet section').count()) === 0) {
      expect(Date.now(), 'the dive came to no end').toBeLessThan(endMs);
      if ((await page.locator('question-sheet section').count()) > 0) {
        expect(await page.locator('lane-numbers .depth').count()).toBe(1);
        const choice = page.locator('.option').first();
        if ((await choice.count()) > 0) await choice.focus().then(() => page.keyboard.press('Enter'));
        await page.locator('question-sheet .main').focus();
        await page.keyboard.press('Enter');
        await page.waitForSelector('question-sheet section', { state: 'detached' });
        answered++;
      } else {
        await decide(page);
        await page.waitForTimeout(350);
      }
    }
    const debrief = page.locator('debrief-sheet');
    expect(answered).toBe(5);
    expect(await debrief.locator('.mark').count()).toBe(3);
    expect(await debrief.locator('.mark h3').allInnerTexts()).toEqual([
      expect.stringMatching(/descent (not yet|nearly|secure)/i),
      expect.stringMatching(/hover (not yet|nearly|secure)/i),
      expect.stringMatching(/ascent (not yet|nearly|secure)/i),
    ]);
    expect(await debrief.innerText()).toContain('It is no evidence of competence in water.');
    expect(await debrief.innerText()).toContain('What the water adds');
    await debrief.locator('summary').first().click();
    await debrief.locator('.moment').first().click();
    expect(await debrief.locator('.moment[aria-pressed=true]').count()).toBeGreaterThan(0);
  });
}, 450_000);

test('by touch: gas goes while the finger is down, a second one on the opposite button is ignored, a lost touch lets go', async () => {
  await visit(
    './',
    async (page) => {
      await begin(page);
      await page.locator('.option').first().tap();
      await page.locator('question-sheet .main').tap();
      await page.waitForSelector('question-sheet section', { state: 'detached' });
      const session = await page.context().newCDPSession(page);
      const middle = async (act: string, id: number) => {
        const box = (await page.locator(`[data-act=${act}]`).boundingBox())!;
        return { x: box.x + box.width / 2, y: box.y + box.height / 2, id };
      };
      const touch = (
        type: 'touchStart' | 'touchEnd' | 'touchCancel',
        touchPoints: { x: number; y: number; id: number }[],
      ) => session.send('Input.dispatchTouchEvent', { type, touchPoints });
      const isDown = (act: string) =>
        page.locator(`[data-act=${act}]`).evaluate((button) => button.classList.contains('is-down'));
      const settle = () => page.waitForTimeout(500);

      const [vent, add] = [await middle('vent', 1), await middle('add', 2)];
      await touch('touchStart', [vent]);
      await settle();
      expect(await isDown('vent')).toBe(true);
      await touch('touchStart', [vent, add]);
      await settle();
      expect(await isDown('add')).toBe(false);
      await touch('touchCancel', []);
      await settle();
      expect(await isDown('vent')).toBe(false);

      const out = await middle('out', 3);
      await touch('touchStart', [out]);
      await settle();
      expect(await isDown('out')).toBe(true);
      await touch('touchEnd', []);
      await settle();
      expect(await isDown('out')).toBe(false);
    },
    { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
  );
});
