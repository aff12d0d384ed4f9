import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';

const visit = useChromium();

const name = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });
const line = (page: Page) => page.getByRole('slider', { name: 'Reading line over the traces' });
const said = async (page: Page) => (await line(page).getAttribute('aria-valuetext')) ?? '';
const depthM = async (page: Page) => parseFloat(await page.locator('lane-numbers .depth').innerText());

/** Some seconds of sinking, with the traces open where they are asked for by their key. */
async function sink(page: Page, open = true): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await name(page, 'I have read this').click();
  await name(page, 'fly').click();
  await page.keyboard.down('KeyK');
  await page.waitForTimeout(1200);
  await page.keyboard.up('KeyK');
  if (!open) return;
  await page.keyboard.press('KeyT');
  await line(page).waitFor();
}

/** How many pixels of the plot are neither paper nor clear. */
const inked = (page: Page) =>
  page.locator('trace-panel canvas').evaluate((element) => {
    const canvas = element as HTMLCanvasElement;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let count = 0;
    for (let i = 3; i < data.length; i += 4) if (data[i]! > 0) count++;
    return count;
  });

test('T opens them under the water, which stays in sight; lines grow as the dive goes on; T closes them', async () => {
  await visit('./', async (page) => {
    await sink(page);
    const [water, traces] = await page.evaluate(() =>
      ['#stage', 'trace-panel section'].map((one) => document.querySelector(one)!.getBoundingClientRect().toJSON()),
    );
    expect(water.bottom).toBeLessThanOrEqual(traces.top + 1);
    expect(water.height).toBeGreaterThan(200);
    const before = await inked(page);
    expect(before).toBeGreaterThan(0);
    await expect.poll(() => inked(page)).toBeGreaterThan(before + 50);
    await expect.poll(() => page.locator('trace-panel text', { hasText: /^depth \d/ }).count()).toBe(1);
    await page.keyboard.press('KeyT');
    await line(page).waitFor({ state: 'detached' });
  });
});

test('by keyboard alone: a second and a tenth back, to the start, closer, and away; what is read is what the lane said', async () => {
  await visit('./', async (page) => {
    await sink(page);
    await page.keyboard.press('KeyP');
    await page.waitForSelector('.freeze:has-text("go on")');
    const nowM = await depthM(page);
    await line(page).focus();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => said(page)).toContain(`depth ${nowM.toFixed(1)} m`);
    const atS = async () => Number(await line(page).getAttribute('aria-valuenow'));
    const endS = await atS();
    await page.keyboard.press('Shift+ArrowLeft');
    expect(await atS()).toBeCloseTo(endS - 0.1, 6);
    await page.keyboard.press('Home');
    await expect.poll(() => said(page)).toMatch(/^0:00\.0: .*depth 0\.\d m.*jacket 8\.0 L/);
    await page.keyboard.press('+');
    await page.keyboard.press('Escape');
    await expect.poll(() => said(page)).toContain('end of the dive');
    // The line takes only what it needs: the diver is still flown.
    await page.keyboard.press('KeyP');
    await expect.poll(atS).toBeGreaterThan(endS);
  });
});

test('which traces are drawn is chosen, and kept over a reload; another unit is drawn at once', async () => {
  await visit('./', async (page) => {
    await sink(page);
    const ends = () =>
      page
        .locator('trace-panel text[font-weight="600"]')
        .allTextContents()
        .then((all) => all.join());
    await name(page, 'lungs').click();
    await name(page, 'depth').click();
    await expect.poll(async () => /lungs \d/.test(await ends()) && !/depth/.test(await ends())).toBe(true);
    await page.reload();
    await page.waitForSelector('practice-deck button.act');
    await page.keyboard.press('KeyK');
    await page.keyboard.press('KeyT');
    await line(page).waitFor();
    await expect.poll(() => name(page, 'lungs').getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => name(page, 'depth').getAttribute('aria-pressed')).toBe('false');
    await name(page, 'depth').click();
    await name(page, 'more').click();
    await page.getByLabel('units of the numbers').selectOption('imperial');
    await page.locator('more-sheet').getByRole('button', { name: 'close', exact: true }).click();
    await expect.poll(ends).toMatch(/depth \d+ ft/);
  });
});

test('files: CSV in SI says so in its head and has ten rows a second; the picture is a PNG as wide as the paper', async () => {
  await visit('./', async (page) => {
    await sink(page);
    await page.keyboard.press('KeyP');
    await name(page, 'numbers').click();
    const saved = async (button: string) => {
      const [download] = await Promise.all([page.waitForEvent('download'), name(page, button).click()]);
      return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
    };
    const si = await saved('save CSV in SI units');
    expect(si.name).toBe('traces-si.csv');
    const [head, ...rows] = si.bytes.toString('utf8').split('\r\n');
    expect(head).toContain('time (s),depth (m),"speed, downward positive (m/s)"');
    const endS = Number(await line(page).getAttribute('aria-valuemax'));
    expect(rows.filter(Boolean)).toHaveLength(Math.round(endS * 10) + 1);
    const shown = await saved('save CSV in the units shown');
    expect(shown.bytes.toString('utf8')).toContain('"speed, downward positive (m/min)"');
    const picture = await saved('save picture');
    expect(picture.bytes.subarray(1, 4).toString()).toBe('PNG');
    const widthPx = await page.locator('trace-panel .paper').evaluate((paper) => paper.clientWidth);
    expect(Math.abs(picture.bytes.readUInt32BE(16) - widthPx)).toBeLessThanOrEqual(2);
    await expect.poll(() => page.locator('trace-panel tbody tr').count()).toBeGreaterThan(10);
  });
});

test('by touch on a phone: opened from the look menu, one trace at a time, all of 48 px, read by a tap', async () => {
  await visit(
    './',
    async (page) => {
      await sink(page, false);
      await name(page, 'look').tap();
      await page.locator('look-menu').getByRole('button', { name: 'traces' }).tap();
      await line(page).waitFor();
      const trace = page.locator('trace-panel .one b');
      await expect.poll(() => trace.innerText()).toBe('depth');
      await name(page, 'the next trace').tap();
      await expect.poll(() => trace.innerText()).toBe('speed');
      const small = await page.locator('trace-panel button').evaluateAll((buttons) =>
        buttons.flatMap((button) => {
          const { width, height } = button.getBoundingClientRect();
          return width >= 48 && height >= 48 ? [] : [button.textContent];
        }),
      );
      expect(small).toEqual([]);
      const box = (await line(page).boundingBox())!;
      await page.touchscreen.tap(box.x + 70, box.y + box.height / 2);
      await expect.poll(() => said(page)).toMatch(/^0:0\d\.\d: depth/);
      await name(page, 'reading line away').tap();
      await name(page, 'close the traces').tap();
      await line(page).waitFor({ state: 'detached' });
    },
    { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
  );
});

test('nothing of them is shown while something is asked', async () => {
  await visit('./', async (page) => {
    await sink(page);
    await name(page, 'more').click();
    await name(page, 'lessons').click();
    await name(page, 'begin First dive').click();
    await page.waitForSelector('question-sheet section');
    await expect.poll(() => line(page).count()).toBe(0);
  });
});
