import { symlinkSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serve } from '../../tools/serve.mjs';
import { withTree } from '../rooms/fixture.ts';

/** One request with its path sent as written: `fetch` would tidy the dots away. */
function ask(url: string, path: string, method = 'GET') {
  return new Promise<{ status: number; headers: Record<string, unknown>; text: string }>((resolve, reject) => {
    const { port } = new URL(url);
    const sent = request({ host: '127.0.0.1', port, path, method }, (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (part: string) => (text += part));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }));
    });
    sent.on('error', reject).end();
  });
}

const files = {
  'dist/index.html': '<!doctype html>',
  'dist/assets/a b.js': 'export {};',
  'dist/face.woff2': 'wOF2',
  'dist/.vite/manifest.json': '{}',
  'dist-other/secret.txt': 'secret',
  'secret.txt': 'secret',
};
let url = '';
let done: () => void = () => undefined;
let gone: Promise<void>;

beforeAll(async () => {
  await new Promise<void>((ready, failed) => {
    gone = withTree(files, async (root) => {
      symlinkSync(join(root, 'secret.txt'), join(root, 'dist/link.txt'));
      const served = await serve(join(root, 'dist'));
      url = served.url;
      ready();
      await new Promise<void>((end) => (done = end));
      await served.close();
    });
    gone.catch(failed);
  });
});

afterAll(async () => {
  done();
  await gone;
});

describe('serve()', () => {
  test('sends the strict policy, with the page and with every error', async () => {
    const policy =
      "default-src 'self'; img-src 'self' data: blob:; worker-src 'self' blob:; object-src 'none'; " +
      "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    for (const path of ['/', '/assets/a%20b.js', '/gone']) {
      expect((await ask(url, path)).headers, path).toMatchObject({ 'content-security-policy': policy });
    }
  });

  test.each([
    ['/', 'text/html; charset=utf-8'],
    ['/?place=bench', 'text/html; charset=utf-8'],
    ['/assets/a%20b.js', 'text/javascript; charset=utf-8'],
    ['/face.woff2', 'font/woff2'],
  ])('%s is sent as %s', async (path, type) => {
    const { status, headers } = await ask(url, path);
    expect([status, headers['content-type']]).toEqual([200, type]);
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/..%5csecret.txt',
    '/../dist-other/secret.txt',
    '/assets/../../secret.txt',
    '//../secret.txt',
    '/link.txt',
    '/.vite/manifest.json',
    '/secret.txt%00.html',
    '/%ff',
    '/assets',
  ])('%s is not there', async (path) => {
    const { status, text } = await ask(url, path);
    expect([status, text]).toEqual([404, 'Not here.\n']);
  });

  test('refuses to be written to', async () => {
    expect((await ask(url, '/', 'POST')).status).toBe(405);
  });

  test('takes another port when the wanted one is taken', async () => {
    await withTree({ 'index.html': '' }, async (root) => {
      const taken = Number(new URL(url).port);
      const second = await serve(root, taken);
      const port = Number(new URL(second.url).port);
      await second.close();
      expect(port).toBeGreaterThan(0);
      expect(port).not.toBe(taken);
    });
  });
});
