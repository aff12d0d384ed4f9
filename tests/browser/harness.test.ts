import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { useFirefox } from './firefox.ts';

// Whether the harness itself hears what it must: pages that do wrong, on purpose.
const pages: Record<string, string> = {
  good: "document.title = 'good';",
  console: "console.error('not as it should be');",
  exception: "setTimeout(() => { throw new RangeError('nobody caught this'); });",
  rejection: "Promise.reject(new TypeError('nobody awaited this'));",
  elsewhere: "fetch('http://127.0.0.1:9/').catch(() => undefined);",
  evaluated: "try { (0, eval)('1'); } catch { /* the policy refuses */ }",
  styled: "document.body.setAttribute('style', 'color: red');",
};
const folder = mkdtempSync(join(tmpdir(), 'midwater-pages-'));
for (const [name, text] of Object.entries(pages)) {
  const head =
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>page</title><link rel="icon" href="data:,"></head>';
  writeFileSync(
    join(folder, `${name}.html`),
    `${head}<body><p>page</p><script src="${name}.js"></script></body></html>`,
  );
  writeFileSync(join(folder, `${name}.js`), text);
}
afterAll(() => rmSync(folder, { recursive: true }));

const faults: [page: string, says: RegExp][] = [
  ['console', /not as it should be/],
  ['exception', /nobody caught this/],
  ['rejection', /nobody awaited this/],
  ['elsewhere', /127\.0\.0\.1:9/],
  ['evaluated', /content policy: script-src/],
  ['styled', /content policy: style-src/],
];

const settle = () => new Promise<void>((done) => setTimeout(done, 300));

describe('useChromium()', () => {
  const visit = useChromium(folder);

  test('is content with a page that does nothing wrong, and says what it loaded', async () => {
    await visit('good.html', async (page, watch) => {
      expect(await page.title()).toBe('good');
      expect(watch.paths).toEqual(['/good.html', '/good.js']);
    });
  });

  test.each(faults)('rejects a visit to the page %s', async (name, says) => {
    await expect(visit(`${name}.html`, settle)).rejects.toThrow(says);
  });

  test('takes a picture without breaking the policy', async () => {
    await visit('good.html', async (page) => {
      expect((await page.screenshot()).length).toBeGreaterThan(100);
    });
  });
});

describe('useFirefox()', () => {
  const visit = useFirefox(folder);

  test('is content with a page that does nothing wrong, and says what it loaded', async () => {
    await visit('good.html', async (page, watch) => {
      expect(await page.title()).toBe('good');
      expect(watch.paths.filter((path) => path !== '/favicon.ico')).toEqual(['/good.html', '/good.js']);
    });
  });

  test.each(faults)('rejects a visit to the page %s', async (name, says) => {
    await expect(visit(`${name}.html`, settle)).rejects.toThrow(says);
  });
});
