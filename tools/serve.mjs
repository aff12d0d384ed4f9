import { createReadStream } from 'node:fs';
import { realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';
import { servedPolicy } from './policy.mjs';

/** @type {Record<string, string>} */
const kinds = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.yaml': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.mp3': 'audio/mpeg',
  '.ogg': 'audio/ogg',
};

const headers = {
  'Content-Security-Policy': servedPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cache-Control': 'no-cache',
};

/**
 * The file that a request asks for, or undefined when there is none inside the folder: climbing out by dots, encoded
 * dots, backslashes or links ends here, and so do hidden files.
 * @param {string} root a real path
 * @param {string} target as sent, query and all
 */
async function fileFor(root, target) {
  try {
    const path = decodeURIComponent((target.split(/[?#]/)[0] ?? '').replace(/^\/+/, ''));
    const parts = path.split('/');
    if (/[\\\0]/.test(path) || parts.some((part) => part.startsWith('.'))) return undefined;
    const file = await realpath(join(root, path.endsWith('/') || path === '' ? `${path}index.html` : path));
    const found = await stat(file);
    return file.startsWith(root + sep) && found.isFile() ? { file, bytes: found.size } : undefined;
  } catch {
    return undefined;
  }
}

/**
 * Serves a folder on this machine's own loopback address and nowhere else.
 * @param {string} folder for instance `dist`
 * @param {number} [port] when taken, and by default, any free one
 * @returns {Promise<{ url: string, close: () => Promise<void> }>} `url` ends in a slash
 */
export async function serve(folder, port = 0) {
  const root = await realpath(folder);
  const server = createServer(async (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { ...headers, Allow: 'GET, HEAD' }).end();
      return;
    }
    const found = await fileFor(root, request.url ?? '/');
    if (!found) {
      response.writeHead(404, { ...headers, 'Content-Type': 'text/plain; charset=utf-8' }).end('Not here.\n');
      return;
    }
    const type = kinds[extname(found.file).toLowerCase()] ?? 'application/octet-stream';
    response.writeHead(200, { ...headers, 'Content-Type': type, 'Content-Length': found.bytes });
    if (request.method === 'HEAD') response.end();
    else
      createReadStream(found.file)
        .on('error', () => response.destroy())
        .pipe(response);
  });
  const at = await listen(server, port).catch((problem) => {
    if (port !== 0 && (problem.code === 'EADDRINUSE' || problem.code === 'EACCES')) return listen(server, 0);
    throw problem;
  });
  return {
    url: `http://127.0.0.1:${at}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/**
 * @param {import('node:http').Server} server
 * @param {number} port
 * @returns {Promise<number>} the port it listens on
 */
function listen(server, port) {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });
}
