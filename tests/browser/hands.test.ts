import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();
const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const down = (page: Page, act: string) =>
  page.waitForFunction((one) => document.querySelector(`[data-act=${one}]`)?.classList.contains('is-down'), act);
const next = (page: Page) => page.locator('presenter-strip .main').innerText();

/** The page with all that is fetched while nothing else is to do. */
async function whole(page: Page): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await page.waitForFunction(
    () => document.querySelector<HTMLElement & { presenting?: unknown }>('more-sheet')?.presenting,
  );
}

async function more(page: Page, summary: string): Promise<void> {
  await name(page, 'more').click();
  await page.locator('more-sheet summary', { hasText: summary }).click();
}

describe('by a clicker alone', () => {
  test('a class is taught from the first screen on: list, diver, question, run, freeze, back', async () => {
    await visit('./', async (page) => {
      await whole(page);
      await page.keyboard.press('PageDown');
      await page.waitForSelector('show-list section');
      await page.keyboard.press('PageDown');
      await page.waitForSelector('presenter-strip section');
      await page.waitForFunction(() =>
        document.querySelector('title-bar h1')?.textContent?.includes('neutral at 10\u00a0m'),
      );
      await expect.poll(() => next(page)).toBe('next: ask');
      await page.keyboard.press('PageDown');
      await page.waitForSelector('question-sheet section');
      await page.keyboard.press('Digit8');
      await page.waitForSelector('presenter-strip [aria-label="C: 1, one more"]');
      await page.keyboard.press('PageDown');
      await page.waitForSelector('question-sheet section', { state: 'detached' });
      await page.waitForFunction(() => document.querySelector('presenter-strip .main')?.textContent === 'next: freeze');
      await page.keyboard.press('PageDown');
      await page.waitForFunction(() => document.querySelector('presenter-strip .main')?.textContent === 'next: go on');
      await page.keyboard.press('PageUp');
      await page.waitForSelector('question-sheet section');
      await expect.poll(() => page.locator('lane-numbers .depth').innerText()).toBe('9.7 m');
      await page.keyboard.press('PageUp');
      await page.waitForSelector('question-sheet section', { state: 'detached' });
      await expect.poll(() => next(page)).toBe('next: ask');
    });
  });

  test('a lesson of a class is walked too, with what most hands said; who learns alone is not let past a question', async () => {
    await visit('./#/lessons/first-dive', async (page) => {
      await whole(page);
      const asked = page.locator('question-sheet section');
      await asked.waitFor();
      await page.keyboard.press('PageDown');
      await page.waitForTimeout(300);
      await expect.poll(() => asked.count()).toBe(1);
      await more(page, 'Keys');
      await page.getByLabel('projector').check();
      await name(page, 'close').click();
      await page.keyboard.press('Digit6');
      await page.waitForSelector('presenter-strip [aria-label="A: 1, one more"]');
      await page.keyboard.press('PageDown');
      await asked.waitFor({ state: 'detached' });
      await page.keyboard.press('PageDown');
      await page.waitForFunction(() =>
        document.querySelector('title-bar .freeze')?.textContent?.trim().startsWith('go on'),
      );
    });
  });

  test('the runaway descent is two presses away, freezes at 10 m by itself, and asks', async () => {
    await visit('./', async (page) => {
      await whole(page);
      await name(page, 'teach a class').click();
      await page.locator('show-list .option', { hasText: 'Runaway descent' }).click();
      await page.waitForSelector('presenter-strip section');
      await page.locator('title-bar .one-speed').click();
      await page.keyboard.press('PageDown');
      await page.waitForSelector('question-sheet section', { timeout: 20_000 });
      await expect.poll(() => page.locator('lane-numbers .depth').innerText()).toBe('10.0 m');
    });
  });

  test('blank paper covers everything, keeps the dive where it was, and comes away; F5 and Escape change nothing', async () => {
    await visit('./', async (page) => {
      await whole(page);
      await page.keyboard.press('KeyS');
      await page.waitForSelector('[data-act=kick-up]');
      await page.evaluate(() =>
        addEventListener(
          'keydown',
          ({ code, defaultPrevented }) => code === 'F5' && Object.assign(window, { caught: defaultPrevented }),
        ),
      );
      await page.keyboard.press('KeyB');
      await page.waitForSelector('.blank-paper');
      const covered = await page.evaluate(() =>
        [0.02, 0.5, 0.98].flatMap((x) =>
          [0.02, 0.5, 0.98].map((y) => document.elementFromPoint(x * innerWidth, y * innerHeight)?.className),
        ),
      );
      expect(new Set(covered)).toEqual(new Set(['blank-paper']));
      expect(await breaches(page)).toEqual([]);
      await page.keyboard.press('KeyK');
      await page.keyboard.press('Escape');
      await page.keyboard.press('F5');
      await page.waitForFunction('window.caught === true');
      await expect.poll(() => page.locator('.blank-paper').count()).toBe(1);
      await page.keyboard.press('Period');
      await page.waitForSelector('.blank-paper', { state: 'detached' });
      await expect.poll(() => page.locator('title-bar .freeze').innerText()).toMatch(/^freeze/);
    });
  });
});

test('a key is moved, says what was there, and is still moved after a reload', async () => {
  await visit('./', async (page) => {
    await whole(page);
    await page.keyboard.press('KeyS');
    await page.waitForSelector('[data-act=kick-up]');
    await more(page, 'Keys');
    await page.locator('.keys li button').first().click();
    await page.keyboard.press('KeyK');
    await expect
      .poll(() => page.locator('.keys .key-words').innerText())
      .toContain('“jacket vent”, which was there, is on I');
    await page.reload();
    await whole(page);
    await page.keyboard.press('KeyS');
    await page.waitForSelector('[data-act=add]');
    await expect.poll(() => page.locator('[data-act=add] kbd').innerText()).toBe('K');
    await page.keyboard.down('KeyK');
    await down(page, 'add');
    await page.keyboard.up('KeyK');
  });
});

test('a gamepad that is plugged in during a dive flies it, and *more* says what it does', async () => {
  await visit('./', async (page) => {
    await page.evaluate(() => {
      const pad = {
        connected: true,
        axes: [0, 0, 0, 0],
        buttons: Array.from({ length: 17 }, () => ({ pressed: false, value: 0 })),
      };
      navigator.getGamepads = () => [((window as { pad?: unknown }).pad as Gamepad | null) ?? null];
      Object.assign(window, {
        plug: () => Object.assign(window, { pad }),
        push: (i: number, pressed: boolean) => (pad.buttons[i]!.pressed = pressed),
      });
    });
    await whole(page);
    await page.keyboard.press('KeyS');
    await page.waitForSelector('[data-act=kick-up]');
    await page.evaluate('plug(); push(7, true)');
    await down(page, 'add');
    await page.evaluate('push(7, false)');
    await page.waitForFunction(() => !document.querySelector('[data-act=add]')!.classList.contains('is-down'));
    await more(page, 'Gamepad: one is there');
    await expect.poll(() => page.locator('more-sheet .pad').innerText()).toMatch(/jacket add\s+button 8/);
  });
});

test('one button: down breathes in, up breathes out, by key and by a press on the water', async () => {
  await visit('./', async (page) => {
    await whole(page);
    await name(page, 'fly').click();
    await name(page, 'I have read this').click();
    await name(page, 'more').click();
    await page.getByLabel('breathe by one button').check();
    await name(page, 'begin neutral at 8 m').click();
    await page.waitForSelector('more-sheet dialog[open]', { state: 'detached' });
    await name(page, 'go on').click();
    await page.keyboard.down('Space');
    await down(page, 'in');
    await page.keyboard.up('Space');
    await down(page, 'out');
    await page.mouse.move(300, 300);
    await page.mouse.down();
    await down(page, 'in');
    await page.mouse.up();
    await down(page, 'out');
  });
});
