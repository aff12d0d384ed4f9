import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { writeRun } from '../../src/dive/file.ts';
import type { TimeView } from '../../src/panels/index.ts';
import { busyDive, readyRig } from '../dive/run-file-fixture.ts';
import { Chance } from '../reference/chance.ts';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';
import { breaches } from './wcag.ts';

const visit = useChromium();

const named = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const strip = (page: Page) => page.locator('time-strip .strip');
const depth = async (page: Page) => parseFloat(await page.locator('lane-numbers .depth').innerText());

/** What the strip is told; the page shows nothing else of it. */
const told = (page: Page) =>
  page.locator('time-strip').evaluate((strip) => (strip as unknown as { time: TimeView | null }).time!);

/** A page on which a diver has let all his gas out and sinks for some seconds, frozen. */
async function runaway(page: Page): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await named(page, 'I have read this').click();
  await named(page, 'fly').click();
  await page.keyboard.down('KeyK');
  await page.keyboard.down('ArrowDown');
  await pass(page, 8);
  await page.keyboard.up('KeyK');
  await page.keyboard.up('ArrowDown');
  await pass(page, 6);
  await page.keyboard.press('KeyP');
  await pass(page, 0.2);
  await strip(page).waitFor();
}

async function back(page: Page, seconds: number): Promise<void> {
  for (let i = 0; i < seconds; i++) await page.keyboard.press('Shift+BracketLeft');
  await pass(page, 0.2);
}

/** Takes over at the moment that is looked at, and flies on with a key held down. */
async function flyOn(page: Page, key: string, seconds: number): Promise<void> {
  await page.keyboard.press('KeyV');
  await page.keyboard.down(key);
  await pass(page, seconds);
  await page.keyboard.up(key);
  await page.keyboard.press('KeyP');
  await pass(page, 0.2);
}

async function press(page: Page, name: string): Promise<void> {
  await named(page, name).focus();
  await page.keyboard.press('Enter');
  await pass(page, 0.2);
}

test('by keys: a runaway descent frozen, rewound, taken over, branched twice, switched; a ghost kept; all of it back after a reload', async () => {
  await visit(
    './',
    async (page) => {
      await runaway(page);
      const first = await told(page);
      const deep = await depth(page);
      await back(page, 5);
      const rewound = await told(page);
      expect(rewound.atS).toBeCloseTo(first.toS - 5, 6);
      expect(rewound).toMatchObject({ lookedBack: true, canTakeOver: true, toS: first.toS });
      expect(await depth(page)).toBeLessThan(deep - 1);
      await page.keyboard.press('KeyM');

      await flyOn(page, 'KeyI', 3);
      const once = await told(page);
      expect(once.lines).toMatchObject([{ letter: 'A', shown: true }]);
      expect(once.lines[0]!.knotS).toBeCloseTo(rewound.atS, 1);
      expect(once.marks).toMatchObject([{ number: 1, atS: once.lines[0]!.knotS }]);
      await back(page, 2);
      await flyOn(page, 'ArrowUp', 4);
      expect((await told(page)).lines.map(({ letter }) => letter)).toEqual(['A', 'B']);

      await press(page, 'lines');
      await press(page, 'fly line A');
      const switched = await told(page);
      expect(switched.toS).toBeCloseTo(first.toS, 6);
      expect(switched.lines.map(({ letter }) => letter)).toEqual(['A', 'B']);
      expect(await depth(page)).toBeCloseTo(deep, 1);
      await page.getByLabel('name of line B').fill('kicked up');
      await page.keyboard.press('Tab');
      await page.getByLabel('name of bookmark 1').fill('gas too late');
      await page.keyboard.press('Tab');
      await press(page, 'keep this dive as a ghost');
      const { lines, marks, ghost } = await told(page);
      expect(lines[1]!.name).toBe('kicked up');
      expect(marks[0]!.name).toBe('gas too late');
      expect(ghost).toMatchObject({ shown: true });
      await press(page, 'close the lines');
      await page.keyboard.press('KeyA');
      expect((await told(page)).atS).toBe(marks[0]!.atS);

      const beside = () =>
        page.evaluate(
          () =>
            new Promise<{ others?: unknown[]; ghost?: unknown }>((resolve) => {
              const opening = indexedDB.open('midwater');
              opening.onsuccess = () => {
                const asking = opening.result.transaction('beside').objectStore('beside').getAll();
                asking.onsuccess = () => {
                  opening.result.close();
                  resolve((asking.result[0] ?? {}) as object);
                };
              };
            }),
        );
      await expect.poll(async () => (await beside()).ghost).toBeTruthy();
      await page.reload();
      await page.locator('kept-note aside').waitFor();
      // What came back can be rewound at once; the note says that it is back, and lies off the strip.
      await strip(page).waitFor();
      const noteBox = (await page.locator('kept-note aside').boundingBox())!;
      expect(noteBox.y + noteBox.height).toBeLessThanOrEqual((await strip(page).boundingBox())!.y);
      const again = await told(page);
      expect({ lines: again.lines, marks: again.marks, ghost: again.ghost }).toEqual({ lines, marks, ghost });
    },
    { madeTime: true },
  );
});

test('a saved dive that was opened is flown on from an earlier moment', async () => {
  await visit(
    './',
    async (page) => {
      const chance = new Chance(4);
      const dive = busyDive(readyRig('twin'), 20, () => chance.between(0, 1), 6);
      const buffer = Buffer.from(writeRun(dive.run(), { name: 'twin', endHash: dive.hash() }));
      await page.waitForSelector('practice-deck button.act');
      await named(page, 'I have read this').click();
      await named(page, 'more').click();
      const file = { name: 'own.midwater', mimeType: 'application/octet-stream', buffer };
      await page.getByLabel('open a setup or a saved dive').setInputFiles(file);
      await strip(page).waitFor();
      expect(await told(page)).toMatchObject({ toS: 20, atS: 20, canTakeOver: false });
      await back(page, 8);
      await flyOn(page, 'KeyI', 2);
      const { toS, lines } = await told(page);
      expect(toS).toBeCloseTo(14, 0);
      expect(lines).toMatchObject([{ letter: 'A', knotS: 12 }]);
      expect(lines[0]!.name).toContain('at 0:20');
    },
    { madeTime: true },
  );
});

test('a demonstration is flown on from an earlier moment', async () => {
  await visit(
    './',
    async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await named(page, 'I have read this').click();
      await named(page, 'teach a class').click();
      await page.locator('show-list .option').first().waitFor();
      await page.locator('show-list .option').first().click();
      await expect
        .poll(async () => {
          await page.keyboard.press('PageDown');
          await pass(page, 3);
          return page.locator('question-sheet section').count();
        })
        .toBe(1);
      await page.keyboard.press('PageDown');
      await pass(page, 3);
      await back(page, 1);
      expect(await told(page)).toMatchObject({ lookedBack: true, canTakeOver: true, lines: [] });
      await flyOn(page, 'KeyI', 1);
      expect((await told(page)).lines).toMatchObject([{ letter: 'A' }]);
    },
    { madeTime: true },
  );
});

const SIZES = [
  { colorScheme: 'dark', viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
  { colorScheme: 'light', viewport: { width: 1024, height: 768 }, hasTouch: true },
] as const;

test.each(SIZES)('by touch, and no rule of WCAG 2.2 AA broken: $viewport.width wide, $colorScheme', async (size) => {
  await visit(
    './',
    async (page) => {
      await runaway(page);
      const { toS } = await told(page);
      const ruler = (await page.getByRole('slider', { name: 'Moment of the dive' }).boundingBox())!;
      await page.touchscreen.tap(ruler.x + ruler.width / 2, ruler.y + ruler.height / 2);
      await pass(page, 0.2);
      expect((await told(page)).atS).toBeCloseTo(toS / 2, 0);
      await named(page, 'a tenth of a second on').tap();
      // A phone has one row: what else there is stands in the list.
      if (size.viewport.width < 500) {
        await named(page, 'lines').tap();
        await named(page, 'bookmark this moment').tap();
        await named(page, 'close the lines').tap();
      } else await named(page, 'bookmark').tap();
      await named(page, 'take over from here').or(named(page, 'take over')).tap();
      await pass(page, 2);
      await named(page, 'freeze').tap();
      await pass(page, 0.2);
      await named(page, 'lines').tap();
      await pass(page, 0.2);
      expect(await breaches(page)).toEqual([]);
      const small = await page.locator('time-strip :is(button, label, .ruler, input[type=text])').evaluateAll((all) =>
        all
          .map((one) => ({ box: one.getBoundingClientRect(), words: one.textContent || one.ariaLabel }))
          .filter(({ box }) => box.height > 0 && box.height < 48)
          .map(({ words }) => words),
      );
      expect(small).toEqual([]);
      await page.getByRole('button', { name: 'go to bookmark 1', exact: false }).tap();
      await named(page, 'close the lines').tap();
      await named(page, 'look').tap();
      await page.getByRole('button', { name: 'traces' }).first().tap();
      await page.locator('trace-panel section').waitFor();
      await pass(page, 0.3);
      await expect.poll(() => pass(page, 0.1).then(() => places(page))).toMatchObject({ diverCovered: false, cut: [] });
      expect(await breaches(page)).toEqual([]);
    },
    { ...size, madeTime: true },
  );
});

/** Whether the strip covers the diver, and which of its parts are cut at the edge of the page. */
const places = (page: Page) =>
  page.evaluate(() => {
    const box = (one: string) => document.querySelector(one)!.getBoundingClientRect();
    const diverY =
      box('#stage').top +
      parseFloat(document.querySelector<HTMLElement>('[style*="--diver-y"]')!.style.getPropertyValue('--diver-y'));
    const { left, right, top, bottom } = box('time-strip .strip');
    const cut = [...document.querySelectorAll('time-strip .strip button')].filter((one) => {
      const at = one.getBoundingClientRect();
      return at.width > 0 && (at.left < left || at.right > right || at.top < top || at.bottom > bottom);
    });
    return { diverCovered: diverY > top - 20, cut: cut.map((one) => one.textContent) };
  });
