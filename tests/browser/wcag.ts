import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Rules of WCAG 2.2 A and AA that the page breaks now, with where. */
export async function breaches(page: Page): Promise<string[]> {
  // The policy lets nothing in that the page did not bring: the checker comes in over the debugger.
  const session = await page.context().newCDPSession(page);
  await session.send('Runtime.evaluate', { expression: axeSource });
  const { result } = await session.send('Runtime.evaluate', {
    expression: `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] })
      .then((found) => found.violations.map((one) => one.id + ': ' + one.nodes.map((node) => node.html).join(' | ')))`,
    awaitPromise: true,
    returnByValue: true,
  });
  return result.value as string[];
}
