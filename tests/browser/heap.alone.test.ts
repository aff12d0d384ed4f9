import type { CDPSession, Page } from 'playwright';
import { expect, test } from 'vitest';
import { RECORDED } from '../../src/dive/index.ts';
import type { TracesView } from '../../src/panels/index.ts';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';

const visit = useChromium();

const named = (page: Page, words: string) => page.getByRole('button', { name: words, exact: true });

/** What is in use after what nobody holds any more was let go, bytes: objects, and the stores of typed arrays beside them. */
async function inUse(cdp: CDPSession): Promise<{ objects: number; stores: number }> {
  for (let i = 0; i < 3; i++) await cdp.send('HeapProfiler.collectGarbage');
  const { usedSize, backingStorageSize } = await cdp.send('Runtime.getHeapUsage');
  return { objects: usedSize, stores: backingStorageSize };
}

/** Bytes that a recording of so many rows takes: it doubles when it is full. */
const recordingBytes = (rows: number) => 256 * 2 ** Math.ceil(Math.log2(rows / 256)) * RECORDED.length * 8;

/** Rise of the straight line that lies closest to values at even steps. */
function slope(values: readonly number[]): number {
  const middle = (values.length - 1) / 2;
  const above = values.reduce((sum, value, i) => sum + (i - middle) * value, 0);
  return above / values.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
}

/** How often it is measured, and the seconds of running between. */
const TIMES = 5;
const BETWEEN_S = 120;

test('heap: an hour of running at double speed, traces and a look open, adds less than 5 MB beside the recording', async () => {
  await visit(
    './',
    async (page) => {
      await page.waitForSelector('practice-deck button.act');
      await named(page, 'I have read this').click();
      await named(page, 'fly').click();
      for (const key of ['KeyK', 'ArrowDown']) await page.keyboard.down(key);
      await pass(page, 10);
      for (const key of ['KeyK', 'ArrowDown']) await page.keyboard.up(key);
      for (const key of ['Digit1', 'KeyT', 'Equal']) await page.keyboard.press(key);
      await page.locator('trace-panel section').waitFor();
      await named(page, '×2').click();
      await pass(page, 200, 250);

      const rows = () =>
        page
          .locator('trace-panel')
          .evaluate((panel) => (panel as unknown as { traces: TracesView }).traces.recording.rows);
      const cdp = await page.context().newCDPSession(page);
      const rowsBefore = await rows();
      const measured = [await inUse(cdp)];
      while (measured.length < TIMES) {
        // What was drawn is let go by the browser in its own time.
        await pass(page, BETWEEN_S, 250);
        await page.waitForTimeout(100);
        measured.push(await inUse(cdp));
      }
      const rowsAfter = await rows();
      expect(rowsAfter - rowsBefore).toBeGreaterThan(BETWEEN_S * (TIMES - 1) * 2 * 9);

      const perHour = (slope(measured.map(({ objects }) => objects)) * 3600) / BETWEEN_S;
      const stores = measured.at(-1)!.stores - measured[0]!.stores;
      const recorded = recordingBytes(rowsAfter) - recordingBytes(rowsBefore);
      process.stdout.write(
        `heap: ${(perHour / 1e6).toFixed(2)} MB an hour of running; typed arrays ${(stores / 1e6).toFixed(2)} MB in ${rowsAfter - rowsBefore} rows, of that the recording ${(recorded / 1e6).toFixed(2)}\n`,
      );
      expect(perHour).toBeLessThan(5e6);
      // Beside the recording, which doubles by itself, no store of numbers grows by more than 5 MB an hour either.
      expect(stores - recorded).toBeLessThan((5e6 * BETWEEN_S * (TIMES - 1)) / 3600);
    },
    { madeTime: true, viewport: { width: 1280, height: 720 } },
  );
});
