import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { replay } from '../../src/dive/index.ts';
import { readRun } from '../../src/dive/file.ts';
import { Chance } from '../reference/chance.ts';
import { useChromium } from './chromium.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const ready = (page: Page) => page.waitForSelector('practice-deck button.act');
const note = (page: Page) => page.locator('kept-note aside');
/** Twenty-one pages are opened one after the other; where others use the machine too that takes its time. */
const KILLS_MS = 240_000;
const small = { viewport: { width: 900, height: 560 } };

/** What is in the database, asked past the program. */
const stored = (page: Page, store = 'dives') =>
  page.evaluate(
    (from) =>
      new Promise<Record<string, unknown>[]>((resolve) => {
        const opening = indexedDB.open('midwater');
        opening.onsuccess = () => {
          const db = opening.result;
          const close = (all: Record<string, unknown>[]) => (db.close(), resolve(all));
          if (!db.objectStoreNames.contains(from)) return close([]);
          const asking = db.transaction(from).objectStore(from).getAll();
          asking.onsuccess = () => close(asking.result as Record<string, unknown>[]);
        };
      }),
    store,
  );

/** Begins to fly, and waits until something of it is kept. */
async function begun(page: Page): Promise<void> {
  await ready(page);
  await name(page, 'I have read this').click();
  await name(page, 'fly').click();
  await page.keyboard.press('KeyK');
  await expect.poll(async () => (await stored(page)).length).toBe(1);
}

/** Ends a page as a crash does, or as somebody does who closes it. */
async function kill(page: Page, crash: boolean): Promise<void> {
  if (!crash) return page.close();
  const crashed = page.waitForEvent('crash');
  const session = await page.context().newCDPSession(page);
  void session.send('Page.crash').catch(() => undefined);
  await crashed;
  await page.close();
}

/** Another page of the same browser. */
async function another(page: Page, path: string): Promise<Page> {
  const next = await page.context().newPage();
  await next.goto(path);
  await ready(next);
  return next;
}

/** Ticks that were recorded so far, with the traces open. */
const recorded = (page: Page) =>
  page.locator('trace-panel').evaluate((panel) => {
    const { traces } = panel as unknown as { traces: { recording: { rows: number } } };
    return (traces.recording.rows - 1) * 12;
  });

test(
  'killed at twenty moments by chance, it resumes each time within a second of where it was, on the same hash',
  async () => {
    await visit(
      './',
      async (first) => {
        const chance = new Chance(11);
        await begun(first);
        let page = first;
        let worst = 0;
        for (let i = 0; i < 20; i++) {
          await page.keyboard.press('KeyT');
          await page.locator('trace-panel section').waitFor();
          const held = ['KeyK', 'KeyI', 'ArrowDown', 'ArrowUp', 'KeyS', 'KeyW'][chance.whole(0, 5)]!;
          await page.keyboard.down(held);
          await page.waitForTimeout(chance.whole(50, 500));
          const ticks = await recorded(page);
          await kill(page, i % 2 === 0);
          page = await another(first, './#/column');
          await note(page).waitFor();
          await expect.poll(() => note(page).innerText()).toMatch(/^Your dive is back, as it was at \d:\d\d\.\n/);
          const [line] = await stored(page);
          worst = Math.max(worst, ticks - (line!.ticks as number));
          await name(page, 'go on').first().click();
        }
        expect(worst).toBeLessThanOrEqual(120);
        await page.keyboard.press('KeyP');
        await name(page, 'more').click();
        await page.locator('kept-list li').waitFor();
        const [download] = await Promise.all([page.waitForEvent('download'), page.getByLabel(/^save as file/).click()]);
        const read = readRun(await readFile(await download.path()));
        expect(read).toHaveProperty('file');
        if ('file' in read) expect(replay(read.file.run).hash()).toBe(read.file.endHash);
      },
      small,
    );
  },
  KILLS_MS,
);

test('a lesson comes back in the same phase, with its answers, and goes on from there', async () => {
  await visit(
    './#/lessons/first-dive',
    async (first) => {
      await name(first, 'I have read this').click();
      await first.locator('question-sheet .option').first().click();
      await first.locator('question-sheet .main').click();
      await expect
        .poll(() => first.locator('title-bar h1').innerText(), { timeout: 30_000 })
        .toMatch(/head clear.*[1-9] s so far/);
      await first.keyboard.press('KeyP');
      await expect.poll(async () => (await stored(first))[0]?.given).toEqual(['stays-clear']);
      await first.waitForSelector('.freeze:has-text("go on")');
      // What was frozen is kept to its last tick, within half a second.
      let before = NaN;
      await expect
        .poll(
          async () => {
            const now = (await stored(first))[0]?.ticks;
            const still = now === before;
            before = Number(now);
            return still;
          },
          { interval: 1200 },
        )
        .toBe(true);
      const title = await first.locator('title-bar h1').innerText();
      const lane = await first.locator('lane-numbers').innerText();
      expect(title).toMatch(/head clear.*so far/);
      await kill(first, true);
      const page = await another(first, './#/lessons/first-dive');
      await note(page).waitFor();
      await expect.poll(() => note(page).innerText()).toContain('Your lesson is back, as it was at 0:0');
      await expect.poll(() => page.locator('title-bar h1').innerText()).toBe(title);
      await expect.poll(() => page.locator('lane-numbers').innerText()).toBe(lane);
      await expect.poll(() => page.locator('question-sheet section').count()).toBe(0);
      await name(page, 'go on').first().click();
      await note(page).waitFor({ state: 'detached' });
      await expect.poll(() => page.locator('title-bar h1').innerText(), { timeout: 15_000 }).not.toBe(title);
    },
    small,
  );
});

test('begin anew begins anew; the dive that was left is in the list: opened, saved, removed', async () => {
  await visit('./', async (first) => {
    await begun(first);
    await expect.poll(async () => (await stored(first))[0]?.ticks, { timeout: 30_000 }).toBeGreaterThan(600);
    await first.close();
    const page = await another(first, './');
    await note(page).waitFor();
    expect(new URL(page.url()).hash).toBe('#/column');
    await name(page, 'begin anew').click();
    await note(page).waitFor({ state: 'detached' });
    await name(page, 'more').click();
    await page.getByLabel(/^open: 5 mm, 1 kg too much/).click();
    await note(page).waitFor();
    await expect.poll(() => note(page).innerText()).toContain('as it was at 0:0');
    await name(page, 'begin anew').click();
    await name(page, 'more').click();
    await page.getByLabel(/^remove: 5 mm, 1 kg too much/).click();
    await page.getByText('None is kept now.').waitFor();
    expect([...(await stored(page)), ...(await stored(page, 'starts')), ...(await stored(page, 'pieces'))]).toEqual([]);
  });
});

test('erase all asks once more, empties database and settings, and says so; the dive in hand flies on and is not kept', async () => {
  await visit('./', async (page) => {
    await begun(page);
    expect(await page.evaluate(() => localStorage.length)).toBeGreaterThan(0);
    await name(page, 'more').click();
    await name(page, 'erase all').click();
    await name(page, 'keep them').click();
    expect(await stored(page)).toHaveLength(1);
    await name(page, 'erase all').click();
    await name(page, 'yes, erase all').click();
    await page.getByText('Erased: every kept dive, every result and every setting.').waitFor();
    expect(await page.evaluate(() => localStorage.length)).toBe(0);
    expect(
      await page.evaluate(() => indexedDB.databases().then((all) => all.filter(({ version }) => version))),
    ).toEqual([]);
    await page.locator('more-sheet').getByRole('button', { name: 'close', exact: true }).click();
    await page.keyboard.press('KeyK');
    await page.waitForTimeout(900);
    expect(await stored(page)).toEqual([]);
    const next = await another(page, './');
    await name(next, 'fly').waitFor();
    await expect.poll(() => note(next).count()).toBe(0);
  });
});

test('a second tab leaves the dive to the first, which flies it; one that was kept long ago is offered and not put in the way', async () => {
  await visit('./', async (first) => {
    await begun(first);
    const second = await another(first, './');
    await second.waitForTimeout(800);
    await expect.poll(() => note(second).count()).toBe(0);
    await expect.poll(() => name(second, 'fly').isVisible()).toBe(true);
    await second.close();
    await first.keyboard.press('KeyP');
    await first.waitForTimeout(900);
    await first.close();
    const page = await first.context().newPage();
    await page.clock.setFixedTime(Date.now() + 3 * 3600_000);
    await page.goto('./');
    await ready(page);
    await note(page).waitFor();
    await expect.poll(() => note(page).innerText()).toContain('Your last dive is kept, as it was at 0:0');
    await expect.poll(() => name(page, 'fly').isVisible()).toBe(true);
    await name(page, 'bring it back').click();
    await expect.poll(() => note(page).innerText()).toContain('Your dive is back');
  });
});

test('where nothing can be kept the dive flies on, and that is said once', async () => {
  await visit('./', async (page) => {
    await page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));
    await page.reload();
    await ready(page);
    await name(page, 'I have read this').click();
    await name(page, 'fly').click();
    await page.keyboard.press('KeyK');
    await page.getByRole('alert').getByText('This browser keeps nothing for us').waitFor();
    await page.getByRole('alert').getByRole('button').click();
    const before = await page.locator('lane-numbers').innerText();
    await page.keyboard.down('ArrowDown');
    await expect.poll(() => page.locator('lane-numbers').innerText()).not.toBe(before);
    await page.waitForTimeout(600);
    await expect.poll(() => page.locator('problem-list aside').count()).toBe(0);
  });
});

test.each([
  { colorScheme: 'light', width: 1280, height: 720 },
  { colorScheme: 'dark', width: 360, height: 740 },
] as const)('note and list break no rule of WCAG 2.2 AA: %o', async ({ colorScheme, width, height }) => {
  await visit(
    './',
    async (first) => {
      await begun(first);
      await first.close();
      const page = await another(first, './');
      await note(page).waitFor();
      expect(await breaches(page)).toEqual([]);
      await name(page, 'more').click();
      await name(page, 'erase all').click();
      await page.locator('kept-list li').waitFor();
      expect(await breaches(page)).toEqual([]);
      const low = await page
        .locator('kept-note button, kept-list button')
        .evaluateAll((all) =>
          all.filter((one) => one.getBoundingClientRect().height < 48).map((one) => one.textContent),
        );
      expect(low).toEqual([]);
    },
    { colorScheme, viewport: { width, height } },
  );
});
