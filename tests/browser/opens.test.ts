import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { pagePolicy } from '../../tools/policy.mjs';
import { useChromium } from './chromium.ts';
import { useFirefox } from './firefox.ts';
import { dist } from './watch.ts';

const inChromium = useChromium();
const inFirefox = useFirefox();

test('the built page holds no inline script or style', () => {
  const page = readFileSync(join(dist, 'index.html'), 'utf8');
  expect(page.match(/<script(?![^>]*\ssrc=)|<style|\sstyle=|\son\w+=|javascript:/gi)).toBeNull();
});

test('chromium opens the built page, which states the content policy, without a fault', async () => {
  await inChromium('./', async (page) => {
    expect(await page.title()).toContain('Midwater');
    const policy = page.locator('meta[http-equiv="Content-Security-Policy"]');
    expect(await policy.getAttribute('content')).toBe(pagePolicy);
  });
});

test('firefox opens the built page without a fault', async () => {
  await inFirefox('./', async (page) => expect(await page.title()).toContain('Midwater'));
});
