import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright';
import { afterAll, beforeAll } from 'vitest';
import { findChromium } from '../../tools/browsers.mjs';
import { serve } from '../../tools/serve.mjs';
import { makeTime } from './made-time.ts';
import { dist, needsBuild, reportPolicyBreaches, Watch } from './watch.ts';

/**
 * Frozen: pictures differ between sets of flags. Without a card, putting pages together through GL drawn by software takes most
 * of the time of a frame; WebGL itself is still there, drawn by software, for what asks for it.
 */
const args = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-gpu',
];

interface VisitOptions extends BrowserContextOptions {
  /** The page's frames come only when the test lets time `pass`. */
  readonly madeTime?: boolean;
}

/** A page of its own, with nothing stored, watched from before its first request until `use` is done. */
type Visit = (path: string, use: (page: Page, watch: Watch) => Promise<void>, options?: VisitOptions) => Promise<void>;

/**
 * Call at the top of a test file: serves the build and starts chromium before its tests, ends both after them.
 * @param folder what to serve; the build unless the test brings pages of its own
 * @returns `visit`, which rejects on an error on the console, an uncaught exception, a breach of the content policy
 * or a request to another origin, also when `use` was content
 */
export function useChromium(folder = dist): Visit {
  let browser: Browser | undefined;
  let server: Awaited<ReturnType<typeof serve>> | undefined;

  beforeAll(async () => {
    needsBuild(folder);
    const executablePath = findChromium();
    if (!executablePath) throw new Error('chromium is not installed; npm test says how to get it');
    server = await serve(folder);
    browser = await chromium.launch({ executablePath, args });
  });

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  return async (path, use, { madeTime, ...options } = {}) => {
    if (!browser || !server) throw new Error('visit: call it inside a test');
    const context = await browser.newContext({ baseURL: server.url, ...options });
    const watch = new Watch(server.url);
    context.on('request', (request) => watch.request(request.url()));
    context.on('weberror', (problem) => watch.fault(String(problem.error())));
    context.on('console', (message) => {
      if (message.type() === 'error') watch.fault(`console: ${message.text()} ${message.location().url}`);
    });
    try {
      await context.addInitScript(reportPolicyBreaches);
      if (madeTime) await context.addInitScript(makeTime);
      const page = await context.newPage();
      page.on('websocket', (socket) => watch.request(socket.url()));
      await page.goto(path);
      await use(page, watch);
    } finally {
      await context.close();
    }
    watch.end();
  };
}
