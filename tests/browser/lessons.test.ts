import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { fiveMistakes, lineOf, mistakes } from '../fixtures/lessons/five-mistakes.ts';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();
const template = readFileSync(new URL('../../lessons/template.yaml', import.meta.url), 'utf8');

const named = (page: Page, words: string | RegExp) => page.getByRole('button', { name: words });
const hash = (page: Page) => page.evaluate(() => location.hash);
const file = (name: string, text: string) => ({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) });

/** The place of the lessons, with all that hears its wishes. */
async function whole(page: Page): Promise<void> {
  await page.waitForSelector('lesson-list .paths');
  await page.waitForFunction(() => customElements.get('presenter-strip') && customElements.get('time-strip'));
}

/** Lets time pass until something reads so: a page with made time is told by its frames. */
async function until(page: Page, read: () => Promise<string>, wanted: RegExp, stepS = 0.2): Promise<void> {
  await expect
    .poll(async () => {
      await pass(page, stepS);
      return read();
    })
    .toMatch(wanted);
}

describe('the place of the lessons', () => {
  test('the theory hour is begun and walked by a clicker: shown at the bench, asked, flown by a simulated diver, read, and the next lesson', async () => {
    await visit(
      './#/lessons',
      async (page) => {
        await whole(page);
        await pass(page, 0.3);
        await named(page, /^Theory hour/).click();
        await named(page, 'show it to a class').click();
        const next = () => page.locator('presenter-strip .main').innerText();
        const asked = () => page.locator('question-sheet h2').innerText();
        // At the bench the clicker reads on, passes questions over, and has hands show what is to be tried.
        const heading = () => page.locator('question-sheet h2, bench-sheet .task h2, .came h2').first().innerText();
        await until(page, () => hash(page), /^#\/lessons\/lump-and-tray$/);
        await until(page, heading, /One lump of putty/);
        for (const wanted of [/Which floats/, /What does the balance read/, /the tray, lowered/, /^The lump$/]) {
          await page.keyboard.press('PageDown');
          await until(page, heading, wanted);
        }
        for (const wanted of [/^The tray$/, /A lump and a tray: /]) {
          await page.keyboard.press('PageDown');
          await until(page, heading, wanted, 2);
        }
        expect(await page.locator('.came').innerText()).toMatch(/met: the tray floats/);
        // What comes next is said by the strip, once all has been read.
        const said = new Set<string>();
        for (let pages = 0; pages < 20 && (await hash(page)) === '#/lessons/lump-and-tray'; pages++) {
          said.add(await next());
          await page.keyboard.press('PageDown');
          await pass(page, 0.2);
        }
        expect([...said]).toEqual(['next: read on', 'next: positive, negative, neutral']);
        await until(page, next, /lock, go on/);
        expect(await hash(page)).toBe('#/watch/positive-negative-neutral--script');
        const first = await asked();
        await page.keyboard.press('PageDown');
        await until(page, asked, new RegExp(`^(?!${first.slice(0, 20)})`));
        await page.keyboard.press('PageDown');
        await until(page, next, /freeze/);
        expect(await page.locator('flown-by').innerText()).toMatch(/^Flown by a simulated diver/);
        await until(page, () => page.evaluate(() => document.documentElement.dataset.place!), /debrief/, 10);
        await until(page, next, /read on/);
        expect(await page.locator('debrief-sheet .flown-by').innerText()).toContain("nobody's result");
        for (let pages = 0; pages < 20 && (await next()) === 'next: read on'; pages++) {
          await page.keyboard.press('PageDown');
          await pass(page, 0.2);
        }
        expect(await next()).toBe('next: the hilltop');
        // Pressed twice, nothing is skipped.
        await page.keyboard.press('PageDown');
        await page.keyboard.press('PageDown');
        await until(page, () => hash(page), /^#\/watch\/hilltop--steady$/);
        await until(page, asked, /A swell lifts you 0\.3\sm/);
      },
      { madeTime: true, viewport: { width: 1280, height: 720 } },
    );
  });

  test('a reload before a class comes back where it was: in a question with its hands, in the flight, and in what came of it', async () => {
    await visit(
      './#/lessons',
      async (page) => {
        // The walk stands at its second stop.
        await page.evaluate(() => sessionStorage.setItem('midwater-walk', JSON.stringify({ path: 'theory', at: 1 })));
        await page.goto('./#/watch/positive-negative-neutral--script');
        const next = () => page.locator('presenter-strip .main').innerText();
        const asked = () => page.locator('question-sheet h2').innerText();
        const depth = () => page.locator('lane-numbers').innerText();
        const again = async () => {
          // What was kept a moment ago is what comes back.
          await page.waitForTimeout(500);
          await pass(page, 0.2);
          await page.reload();
          await page.waitForFunction(() => customElements.get('presenter-strip') && customElements.get('time-strip'));
        };
        await again();
        await until(page, next, /lock, go on/);
        await page.keyboard.press('Digit7');
        await pass(page, 0.2);
        await again();
        await page.waitForSelector('presenter-strip [aria-label^="B: 1"]');
        await page.keyboard.press('PageDown');
        await until(page, asked, /two kilograms heavy/);
        await again();
        await until(page, asked, /two kilograms heavy/);
        await page.keyboard.press('PageDown');
        await until(page, next, /freeze/);
        await until(page, depth, /light 1\.0\skg/);
        await again();
        await until(page, next, /go on/);
        expect(await depth()).toMatch(/light 1\.0\skg/);
        await page.keyboard.press('PageDown');
        await until(page, next, /freeze/);
        await until(page, () => page.evaluate(() => document.documentElement.dataset.place!), /debrief/, 10);
        await until(page, next, /read on/);
        await again();
        await until(page, next, /read on/);
        expect(await page.locator('debrief-sheet').innerText()).toContain('You said The gas in my jacket');
        for (let pages = 0; pages < 20 && (await next()) === 'next: read on'; pages++) {
          await page.keyboard.press('PageDown');
          await pass(page, 0.2);
        }
        expect(await next()).toBe('next: the hilltop');
      },
      { madeTime: true, viewport: { width: 1280, height: 720 } },
    );
  });

  test('at twice its size a page shown to a class keeps what is next in sight, and water to look at', async () => {
    await visit(
      './#/lessons',
      async (page) => {
        await whole(page);
        await pass(page, 0.3);
        await named(page, 'I have read this').click();
        await page.evaluate(() => sessionStorage.setItem('midwater-walk', JSON.stringify({ path: 'theory', at: 1 })));
        await page.goto('./#/watch/positive-negative-neutral--script');
        await page.reload();
        await page.waitForSelector('presenter-strip .main');
        const next = () => page.locator('presenter-strip .main').innerText();
        const onTop = () =>
          page.locator('presenter-strip .main').evaluate((button) => {
            const { left, right, top, bottom } = button.getBoundingClientRect();
            return [left + 4, (left + right) / 2, right - 4].every((x) =>
              button.contains(document.elementFromPoint(x, (top + bottom) / 2)),
            );
          });
        await until(page, next, /lock, go on/);
        expect(await onTop()).toBe(true);
        for (let i = 0; i < 2; i++) {
          await page.keyboard.press('PageDown');
          await pass(page, 0.3);
        }
        await until(page, next, /freeze/);
        expect(await onTop()).toBe(true);
        const { width, height } = (await page.locator('#stage').boundingBox())!;
        expect(height).toBeGreaterThan(90);
        expect(width).toBeGreaterThan(560);
      },
      { madeTime: true, viewport: { width: 640, height: 360 }, deviceScaleFactor: 2 },
    );
  });

  test('a lesson file on a phone: five mistakes are told with their lines; a good one is begun, and a reload asks on', async () => {
    await visit(
      './#/lessons',
      async (page) => {
        await whole(page);
        await named(page, 'I have read this').tap();
        const input = page.locator('lesson-list input[type=file]');
        await input.setInputFiles(file('five.yaml', fiveMistakes));
        const told = page.locator('problem-list li');
        await expect.poll(() => told.count()).toBe(mistakes.length);
        for (const [i, [path, , to]] of mistakes.entries())
          expect(await told.nth(i).innerText()).toMatch(
            new RegExp(`^Line ${lineOf(to)}, ${path.replace(/[[\].]/g, '\\$&')}: found .*allowed: .*\\. \\S`, 's'),
          );
        await named(page, /^close$/).tap();
        await input.setInputFiles(file('mine.yaml', template));
        await page.waitForSelector('lesson-list :text("its proof comes as it says")');
        await named(page, 'begin My lesson').tap();
        await page.waitForSelector('question-sheet :text("Before you begin")');
        await page.locator('question-sheet .main').tap();
        const question = page.locator('question-sheet h2');
        await expect.poll(() => question.innerText()).toMatch(/^How much gas/);
        const address = await hash(page);
        await page.waitForTimeout(600);
        await page.reload();
        await expect.poll(() => question.innerText()).toMatch(/^How much gas/);
        expect(await hash(page)).toBe(address);
        await named(page, 'more by 0.5 L').tap();
        await expect.poll(() => page.locator('question-sheet output').innerText()).toBe('5.5 L');
      },
      { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
    );
  });

  test('the tables have an address of their own, survive a reload, and back leads to the lessons; neither breaks a rule of WCAG 2.2 AA', async () => {
    await visit('./#/lessons', async (page) => {
      await whole(page);
      await named(page, 'see the tables').click();
      await page.waitForSelector('mark-tables table');
      await expect.poll(() => hash(page)).toBe('#/tables');
      await page.reload();
      await page.waitForSelector('mark-tables table');
      expect(await page.locator('mark-tables').innerText()).toContain('They say nothing about people');
      expect(await breaches(page)).toEqual([]);
      await page.goBack();
      await page.waitForSelector('lesson-list .paths');
      await expect.poll(() => hash(page)).toBe('#/lessons');
      await named(page, 'Self-study').click();
      await page.locator('watch-choice summary').first().click();
      expect(await breaches(page)).toEqual([]);
    });
  });
});
