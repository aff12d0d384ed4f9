import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { yamlModules } from '../../tools/yaml-modules.ts';
import { useChromium } from './chromium.ts';
import { useFirefox } from './firefox.ts';
import type { Engine } from './replay-page/main.ts';
import { recorded, replayed, type Proof } from './replay-page/proof.ts';
import { SCRIPT_NAMES } from './replay-page/scripts.ts';

// A page of the model alone, built for this test: dives recorded in one engine must come out the same, to the bit, in others.
const folder = mkdtempSync(join(tmpdir(), 'midwater-replay-'));
beforeAll(async () => {
  await build({
    root: fileURLToPath(new URL('./replay-page', import.meta.url)),
    configFile: false,
    base: './',
    plugins: [yamlModules()],
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
  });
});
afterAll(() => rmSync(folder, { recursive: true }));

const inChromium = useChromium(folder);
const inFirefox = useFirefox(folder);

const engines: Record<string, Engine> = {
  node: { record: recorded, replay: (bytes) => replayed(Uint8Array.from(bytes)) },
  chromium: {
    record: (script) => visited(inChromium, (page) => page.evaluate((name) => window.dives.record(name), script)),
    replay: (bytes) => visited(inChromium, (page) => page.evaluate((given) => window.dives.replay(given), bytes)),
  },
  firefox: {
    record: (script) => visited(inFirefox, (page) => page.evaluate((name) => window.dives.record(name), script)),
    replay: (bytes) => visited(inFirefox, (page) => page.evaluate((given) => window.dives.replay(given), bytes)),
  },
};

/** What a page answers during one visit. */
async function visited<Page>(
  visit: (path: string, use: (page: Page) => Promise<void>) => Promise<void>,
  ask: (page: Page) => Promise<Proof>,
): Promise<Proof> {
  let proof: Proof | undefined;
  await visit('./', async (page) => {
    proof = await ask(page);
  });
  return proof!;
}

describe.each(Object.keys(engines))('a run recorded in %s', (home) => {
  test.each(SCRIPT_NAMES)('replays to the same bits everywhere: %s', { timeout: 120_000 }, async (script) => {
    const { bytes, ...there } = await engines[home].record(script);
    for (const [name, engine] of Object.entries(engines)) {
      const { bytes: _same, ...here } = await engine.replay(bytes);
      expect(here, `replayed in ${name}`).toEqual(there);
    }
  });
});

test('the scripts make happen what could tell engines apart', async () => {
  const kinds = (proof: Proof) => (JSON.parse(proof.events) as { kind: string }[]).map(({ kind }) => kind);
  const all = await recorded('everything');
  expect(all.rows).toBe(1801);
  for (const kind of [
    'lead-released',
    'lung-overpressure',
    'ledge-touched',
    'bottom-touched',
    'head-out',
    'suit-squeeze',
  ])
    expect(kinds(all)).toContain(kind);
  expect(kinds(await recorded('loop'))).toContain('loop-below-minimum');
  const twin = kinds(await recorded('twin'));
  for (const kind of ['nudged-down', 'nudged-up', 'down-current', 'up-current', 'current-end', 'gas-lost'])
    expect(twin).toContain(kind);
});
