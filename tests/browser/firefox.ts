import puppeteer, { type Browser, type Page } from 'puppeteer-core';
import { afterAll, beforeAll } from 'vitest';
import { findFirefox } from '../../tools/browsers.mjs';
import { serve } from '../../tools/serve.mjs';
import { dist, needsBuild, reportPolicyBreaches, Watch } from './watch.ts';

/** A page of its own, with nothing stored, watched from before its first request until `use` is done. */
type Visit = (path: string, use: (page: Page, watch: Watch) => Promise<void>) => Promise<void>;

/**
 * The same as `useChromium`, in firefox over WebDriver BiDi: a second engine, with its own rounding and its own layout.
 * @param folder what to serve; the build unless the test brings pages of its own
 * @returns `visit`, which rejects on the same faults
 */
export function useFirefox(folder = dist): Visit {
  let browser: Browser | undefined;
  let server: Awaited<ReturnType<typeof serve>> | undefined;

  beforeAll(async () => {
    needsBuild(folder);
    const executablePath = findFirefox();
    if (!executablePath) throw new Error('firefox is not installed; npm test says how to get it');
    server = await serve(folder);
    browser = await puppeteer.launch({ browser: 'firefox', executablePath, headless: true });
  });

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  return async (path, use) => {
    if (!browser || !server) throw new Error('visit: call it inside a test');
    const context = await browser.createBrowserContext();
    const watch = new Watch(server.url);
    try {
      const page = await context.newPage();
      page.on('request', (request) => watch.request(request.url()));
      page.on('pageerror', (problem) => watch.fault(String(problem)));
      page.on('console', (message) => {
        if (message.type() === 'error') watch.fault(`console: ${message.text()}`);
      });
      await page.evaluateOnNewDocument(reportPolicyBreaches);
      await page.goto(new URL(path, server.url).href);
      await use(page, watch);
    } finally {
      await context.close();
    }
    watch.end();
  };
}
